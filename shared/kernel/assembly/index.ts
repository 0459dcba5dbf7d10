/**
 * The hot loops of the performance model, compiled to WebAssembly with `npm run build:kernel`.
 *
 * Same bits as the TypeScript functions named in each file: every operation in the same order, two cells or faces side by
 * side. All state lies in the imported memory as shared/kernel/layout.ts says.
 */
import { firstStage } from './apply';
import { innerFluxes } from './flux';
import { recoverPrimitives } from './primitives';

export { applyCellSources } from './sources';
export { innerFluxes } from './flux';
export { recoverPrimitives } from './primitives';
export { prepare } from './prepare';
export { secondStage } from './apply';

/** From the fluxes of the first stage to those of the second. */
export function middleOfStep(n: i32): void {
  firstStage(n);
  recoverPrimitives(n);
  innerFluxes(n);
}
