/**
 * Root of a continuous function that changes sign between low and high, to round-off.
 * Throws RangeError when it has the same sign at both ends.
 */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  const atLow = f(low);
  const atHigh = f(high);
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (atLow > 0 === atHigh > 0 || Number.isNaN(atLow) || Number.isNaN(atHigh)) {
    throw new RangeError(`No change of sign between ${low} and ${high}: the function is ${atLow} and ${atHigh} there.`);
  }
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i++) {
    const middle = 0.5 * (a + b);
    if (middle === a || middle === b) break;
    if (f(middle) > 0 === atLow > 0) a = middle;
    else b = middle;
  }
  return 0.5 * (a + b);
}
