/** What thicker or better sheet would gain for a finalist, as the results keep it: without limit is null, since JSON has no infinity. */
import { sheetAlternatives } from '../../shared/durability/sheet-alternatives.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import type { RunningPerformance } from '../../shared/engine/performance.ts';
import type { SheetChoice } from './results.ts';

/** The present sheet first, then the next thicker, then the other materials. */
export function sheetChoices(engine: Engine, running: RunningPerformance): SheetChoice[] {
  return sheetAlternatives(engine, running).map(
    ({ name, thickness, gauge, present, yieldUse, oxidationLife, creepLife, overScalingLimit, massRatio }) => ({
      name,
      thickness,
      gauge,
      present,
      yieldUse,
      oxidationLife: Number.isFinite(oxidationLife) ? oxidationLife : null,
      creepLife: Number.isFinite(creepLife) ? creepLife : null,
      overScalingLimit,
      massRatio,
    }),
  );
}
