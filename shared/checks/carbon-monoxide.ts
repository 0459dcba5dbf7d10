import { IDLH_PPM, monoxideFlow, secondsToConcentration } from '../noise/carbon-monoxide.ts';
import { atLeast, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { duration } from './say.ts';

/** A two-car garage, m³. */
const GARAGE = 100;
/** Below this time to the danger level the caution stands, s. */
const LONG = 8 * 3600;
/** Share of carbon in fuel mass: propane 36/44, petrol about 0.86 (stoichiometry). */
const CARBON_SHARE = { propane: 0.817, petrol: 0.86 } as const;

export const carbonMonoxide: CheckRule = {
  id: 'carbon-monoxide',
  title: 'Carbon monoxide',
  source:
    'NIOSH Pocket Guide: IDLH 1200 ppm, 35 ppm recommended; OSHA 50 ppm over 8 h; carbon balance as an upper bound',
  binding: false,
  judge({ engine, running, airDensity }) {
    if (running === null) return notApplicable('The engine does not run.');
    const flow = monoxideFlow(running.fuelFlow, running.combustionEfficiency, CARBON_SHARE[engine.feed.fuel]);
    const value = secondsToConcentration(flow, GARAGE, IDLH_PPM, airDensity);
    const found = `In a shut ${GARAGE} m³ garage its carbon monoxide could reach ${IDLH_PPM} ppm, dangerous to life, within ${duration(value)}`;
    return noWorseThanCaution(
      atLeast(
        { value, limit: LONG, unit: 's', cautionMargin: 0 },
        {
          pass: `${found}; run it outdoors all the same.`,
          caution: `${found}: run it outdoors only.`,
          fail: `${found}: run it outdoors only, and stay upwind.`,
        },
      ),
    );
  },
};
