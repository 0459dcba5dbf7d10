/** Designs drawn by chance, for whatever is tried or timed on many of them. */
import type { Random } from '../search/random.ts';
import type { Variable } from '../space/architecture.ts';
import type { DesignSpace } from '../space/architectures.ts';

/** The value at a share, 0 to 1, of a variable's range. */
export function valueAt(variable: Variable, share: number): number {
  if (variable.kind === 'real') return variable.low + share * (variable.high - variable.low);
  const low = variable.kind === 'integer' ? variable.low : 0;
  const count = variable.kind === 'integer' ? variable.high - variable.low + 1 : variable.options.length;
  return low + Math.min(count - 1, Math.floor(share * count));
}

/** Coordinates of a design, each uniform over its range; the geometry may forbid it. */
export function chanceDesign(space: DesignSpace, random: Random): number[] {
  return space.variables.map((variable) => valueAt(variable, random.uniform()));
}
