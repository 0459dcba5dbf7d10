/** Dimensions in words, metric and imperial. */

/** "123.5 mm (4.86 in)". */
export function lengthWords(metres: number): string {
  return `${millimetres(metres)} mm (${inches(metres)} in)`;
}

/** "12.3°". */
export function angleWords(radians: number): string {
  return `${((radians * 180) / Math.PI).toFixed(1)}°`;
}

/** "7.85 cm² (1.22 in²)". */
export function areaWords(squareMetres: number): string {
  return `${(squareMetres * 1e4).toFixed(2)} cm² (${(squareMetres / 0.0254 ** 2).toFixed(2)} in²)`;
}

/** Millimetres with as many decimals as a workshop marks. */
export function millimetres(metres: number): string {
  return Number((metres * 1000).toFixed(metres < 0.003 ? 3 : 1)).toString();
}

function inches(metres: number): string {
  const value = metres / 0.0254;
  return value.toFixed(value < 1 ? 3 : 2);
}
