/** Heat thrown by a red-hot shell: Stefan–Boltzmann, far field of a cylinder seen from its side. SI units. */
const SIGMA = 5.670374e-8;

/** W/m² at `distance`, m, broadside: q = Σ ε σ (T⁴ − Ta⁴) D dx/(π r²) · … a Lambert cylinder radiates D/(π r²) per length and power area. */
export function broadsideFlux(
  temperature: readonly number[],
  diameter: readonly number[],
  cellLength: readonly number[],
  emissivity: number,
  ambient: number,
  distance: number,
): number {
  let flux = 0;
  for (let i = 0; i < temperature.length; i++) {
    const radiosity = emissivity * SIGMA * (temperature[i] ** 4 - ambient ** 4);
    flux += (radiosity * diameter[i] * cellLength[i]) / (Math.PI * distance * distance);
  }
  return flux;
}

/** Heat flux that skin bears for a long time without protection, W/m²: API Standard 521 (1.58 kW/m²). */
export const BEARABLE_FLUX = 1580;
/** Bare metal touched for 1 min burns above 51 °C: ISO 13732-1 (from memory, confidence high). K. */
export const TOUCH_LIMIT = 51 + 273.15;
