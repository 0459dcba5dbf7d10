/** The two numbers of a vector. */

/** The larger one; the first when either is not a number. */
export function larger(pair: v128): f64 {
  const first = f64x2.extract_lane(pair, 0);
  const second = f64x2.extract_lane(pair, 1);
  return second > first ? second : first;
}
