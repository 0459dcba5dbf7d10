/**
 * The hot loops of the performance model, compiled to WebAssembly with `npm run build:kernel`.
 *
 * Same bits as the TypeScript functions named in each file: every operation in the same order, two cells or faces side by
 * side. All state lies in the imported memory as shared/kernel/layout.ts says.
 */
export { applyFluxes } from './apply';
export { applyCellSources } from './sources';
export { innerFluxes } from './flux';
export { predictHalfStep } from './half-step';
export { prepare, prepareSources } from './prepare';
export { recoverPrimitives } from './primitives';
