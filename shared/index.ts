/** The performance model's one door: engine in, performance out; performance and brief in, judgement out. */
export { assess } from './checks/assess.ts';
export type { Assessment, Band, Check, CheckInput, CheckVerdict, PartMass } from './checks/check.ts';
export type { Brief } from './engine/brief.ts';
export {
  calibratedConstants,
  constantsTable,
  drawConstants,
  MODEL_CONSTANT_NAMES,
  type ModelConstants,
} from './engine/constants.ts';
export type { Engine } from './engine/engine.ts';
export type { Performance, RunningPerformance } from './engine/performance.ts';
export {
  APPROACH_CELLS,
  APPROACH_CELLS_VALVELESS,
  approachCells,
  SHIPPED_CELLS,
  SHIPPED_CELLS_VALVELESS,
  shippedCells,
} from './engine/resolution.ts';
export { type SimulateOptions, simulate } from './engine/simulate.ts';
