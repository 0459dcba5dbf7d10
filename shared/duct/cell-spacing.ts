/**
 * Where the faces of the grid lie: equal cells, or finer ones up to a place and then wider and wider ones.
 *
 * The width of cells follows the place, not the number of the cell: w(x) = w₀ up to the place, then w₀ (1 + (H − 1) s/D) over the
 * distance s = 0 … D, then H w₀. Twice the cells halve every width, so that the scheme's differences, taken from cell to cell,
 * keep their second order (a smooth mapping of an even grid; Thompson, Warsi & Mastin, "Numerical Grid Generation", 1985, ch. 5).
 */

export interface FinerCells {
  /** m; a face lies exactly there. */
  to: number;
  /** H, wide cells over fine ones; below 1 the cells become finer instead. */
  ratio: number;
  /** D, over which cells widen, m. */
  over: number;
}

/** Positions of the faces from `start` to `end`, m; cells + 1. Throws RangeError when `finer.to` lies outside. */
export function cellFaces(cells: number, start: number, end: number, finer: FinerCells | null): Float64Array {
  const face = new Float64Array(cells + 1);
  if (!finer) {
    for (let i = 0; i <= cells; i++) face[i] = start + (i * (end - start)) / cells;
    return face;
  }
  const { to, ratio } = finer;
  if (!(to > start && to < end))
    throw new RangeError(`Finer cells must end inside the duct, ${start} … ${end} m; got ${to}.`);
  const over = Math.min(finer.over, end - to);
  const growth = (ratio - 1) / over;
  // Lengths in widths of the fine cells.
  const widening = growth === 0 ? over : Math.log(ratio) / growth;
  const rest = widening + (end - to - over) / ratio;
  const fine = Math.min(cells - 1, Math.max(1, Math.round((cells * (to - start)) / (to - start + rest))));
  for (let i = 0; i <= fine; i++) face[i] = start + (i * (to - start)) / fine;
  face[fine] = to;
  for (let i = fine + 1; i < cells; i++) {
    const n = (rest * (i - fine)) / (cells - fine);
    if (n >= widening) face[i] = to + over + (n - widening) * ratio;
    else face[i] = to + (growth === 0 ? n : Math.expm1(growth * n) / growth);
  }
  face[cells] = end;
  return face;
}
