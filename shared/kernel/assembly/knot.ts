/** Looking up a table: the interval that holds x, found as JavaScript's `x | 0` finds it. */

/** JavaScript's ToInt32 of a number beyond the range of 32-bit integers: modulo 2³², infinities and NaN give 0. */
function wrapped(x: f64): i32 {
  const whole = Math.trunc(x);
  if (!(whole - whole == 0)) return 0;
  const high = Math.floor(whole * (1.0 / 4294967296.0)) * 4294967296.0;
  return <i32>(<u32>(whole - high));
}

/** x cut to an integer and held inside 0 … last. */
// @ts-ignore: decorator of AssemblyScript
@inline
export function knot(x: f64, last: i32): i32 {
  let j = <i32>x;
  if (j == i32.MAX_VALUE || j == i32.MIN_VALUE) j = wrapped(x);
  if (j > last) j = last;
  if (j < 0) j = 0;
  return j;
}
