/**
 * Slope limiting for the second-order reconstruction (monotonised central, van Leer, J. Comput. Phys. 23 (1977) 276).
 *
 * slope = sign · min(2|a|, 2|b|, |a + b|/2) where the one-sided differences a and b agree in sign, else 0.
 */

/** Limited slopes of q per cell; zero in the first and last cell, whose outer neighbour is a boundary. */
export function limitSlopes(q: Float64Array, slope: Float64Array, cells: number): void {
  let a = q[1] - q[0];
  for (let i = 1; i < cells - 1; i++) {
    const b = q[i + 1] - q[i];
    let s = 0;
    if (a * b > 0) {
      s = 0.5 * (a + b);
      const aa = 2 * a;
      const bb = 2 * b;
      if (s > 0) {
        if (aa < s) s = aa;
        if (bb < s) s = bb;
      } else {
        if (aa > s) s = aa;
        if (bb > s) s = bb;
      }
    }
    slope[i] = s;
    a = b;
  }
  slope[0] = 0;
  slope[cells - 1] = 0;
}
