/** Dimensions that a workshop can mark out. Division last keeps the shortest decimal: 123.5 mm is 0.1235 m. */

/** Half millimetres: sheet work. */
export function toHalfMillimetre(metres: number): number {
  return Math.round(metres * 2000) / 2000;
}

/** Half millimetres, never less than asked. */
export function upToHalfMillimetre(metres: number): number {
  return Math.ceil(metres * 2000 - 1e-6) / 2000;
}

/** Tenths of a millimetre: valve parts. */
export function toTenthMillimetre(metres: number): number {
  return Math.round(metres * 10000) / 10000;
}

/** Whole square millimetres. */
export function toSquareMillimetre(squareMetres: number): number {
  return Math.round(squareMetres * 1e6) / 1e6;
}

export function toHundredth(value: number): number {
  return Math.round(value * 100) / 100;
}

/** Three significant digits: springs and masses. */
export function toThreeDigits(value: number): number {
  return Number(value.toPrecision(3));
}
