/** shared/duct/limiter.ts for two cells: pmin(a, b) is b < a ? b : a, pmax(a, b) is a < b ? b : a. */
// @ts-ignore: decorator of AssemblyScript
@inline
export function limited(before: v128, here: v128, after: v128): v128 {
  const a = f64x2.sub(here, before);
  const b = f64x2.sub(after, here);
  const centred = f64x2.mul(f64x2.splat(0.5), f64x2.add(a, b));
  const aa = f64x2.add(a, a);
  const bb = f64x2.add(b, b);
  const zero = f64x2.splat(0);
  const rising = f64x2.pmin(f64x2.pmin(centred, aa), bb);
  const falling = f64x2.pmax(f64x2.pmax(centred, aa), bb);
  const s = v128.bitselect(rising, falling, f64x2.gt(centred, zero));
  return v128.and(s, f64x2.gt(f64x2.mul(a, b), zero));
}
