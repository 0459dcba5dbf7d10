/** The air that the engine runs in: altitude or pressure, and temperature. */
import { z } from 'zod';
import type { Site } from '../../shared/engine/engine.ts';
import { standardAtmosphere } from './atmosphere.ts';
import { optionalQuantity } from './fields.ts';

/** Default: sea level, 15 degC. With an altitude and no temperature, the standard atmosphere's temperature there. */
export const siteSchema = z
  .strictObject({
    altitude: optionalQuantity('length', 'Height above sea level', { low: -500, high: 6000, positive: false }),
    pressure: optionalQuantity('absolute pressure', 'Air pressure at the site, not reduced to sea level'),
    temperature: optionalQuantity('temperature', 'Air temperature'),
  })
  .transform(({ altitude, pressure, temperature }): Site => {
    const standard = standardAtmosphere(altitude ?? 0);
    return { pressure: pressure ?? standard.pressure, temperature: temperature ?? standard.temperature };
  })
  .describe('The air that the engine runs in')
  .prefault({});
