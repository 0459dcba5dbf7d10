/** shared/duct/limiter.ts, two cells at a time: pmin(a, b) is b < a ? b : a, pmax(a, b) is a < b ? b : a. */

/** Limited slopes of the array at byte offset q into the one at `slope`. */
export function limitSlopes(q: usize, slope: usize, cells: i32): void {
  const zero = f64x2.splat(0);
  const last = q + ((cells - 1) << 3);
  const shift = slope - q;
  let at = q;
  // The last pair may reach one cell too far; the end's slope is set to zero afterwards, and behind it is spare room.
  for (; at + 8 < last; at += 16) {
    const here = v128.load(at, 8);
    const a = f64x2.sub(here, v128.load(at));
    const b = f64x2.sub(v128.load(at, 16), here);
    const centred = f64x2.mul(f64x2.splat(0.5), f64x2.add(a, b));
    const aa = f64x2.add(a, a);
    const bb = f64x2.add(b, b);
    const rising = f64x2.pmin(f64x2.pmin(centred, aa), bb);
    const falling = f64x2.pmax(f64x2.pmax(centred, aa), bb);
    const s = v128.bitselect(rising, falling, f64x2.gt(centred, zero));
    v128.store(at + shift, v128.and(s, f64x2.gt(f64x2.mul(a, b), zero)), 8);
  }
  store<f64>(slope, 0);
  store<f64>(last + shift, 0);
}
