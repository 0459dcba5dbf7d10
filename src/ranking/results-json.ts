/** The results as bytes: canonical, so that the same seed gives the same file. */
import { canonicalJson } from '../config/canonical.ts';
import type { StudyResults } from './results.ts';

/** Significant digits that are kept: far below any error of the model, far above the noise of the last bit. */
const DIGITS = 9;

/**
 * Text of results.json, ending with a line break.
 * @throws RangeError naming the place of a figure that is not finite.
 */
export function resultsJson(results: StudyResults): string {
  return `${canonicalJson(shortened(results), true)}\n`;
}

/** Numbers to nine significant digits; whole numbers stay. The study stays as the digest saw it. */
function shortened(value: unknown, key = ''): unknown {
  if (typeof value === 'number')
    return Number.isInteger(value) || !Number.isFinite(value) ? value : Number(value.toPrecision(DIGITS));
  if (Array.isArray(value)) return value.map((item) => shortened(item));
  if (typeof value !== 'object' || value === null || key === 'study' || key === 'x') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [
      name,
      name === 'x' || name === 'study' ? inner : shortened(inner, name),
    ]),
  );
}
