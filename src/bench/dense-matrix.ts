/** Inverse and Cholesky factor of small symmetric positive definite matrices. */
import { inv } from 'mathjs';

/** Inverse, made exactly symmetric. */
export function invert(a: number[][]): number[][] {
  const b = inv(a) as unknown as number[][];
  return b.map((row, i) => row.map((v, j) => 0.5 * (v + b[j][i])));
}

/**
 * Lower-triangular L with L Lᵀ = a.
 * @throws RangeError when a is not positive definite.
 */
export function choleskyFactor(a: readonly (readonly number[])[]): number[][] {
  const n = a.length;
  const l = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let s = a[i][j];
      for (let k = 0; k < j; k++) s -= l[i][k] * l[j][k];
      if (i === j) {
        if (!(s > 0)) throw new RangeError(`matrix is not positive definite at row ${i + 1}`);
        l[i][i] = Math.sqrt(s);
      } else {
        l[i][j] = s / l[j][j];
      }
    }
  }
  return l;
}
