/**
 * Steady temperature of a valve: a metal sheet a fraction of a millimetre thick follows the mean of a cycle, not the
 * cycle itself (ρ c t/h is about a second, a cycle a few milliseconds). Heat comes in from the chamber gas while shut
 * and goes out to fresh charge on both faces while open and to the seat while shut:
 *
 *   T = [(1−d) h_g T_g + 2 d h_a T_a + (1−d) h_s T_s] / [(1−d) h_g + 2 d h_a + (1−d) h_s]
 *
 * d: share of the cycle open. Own balance from Newton’s law of cooling; film coefficients of fresh charge from the
 * laminar flat plate, Nu = 0.664 Re^½ Pr^⅓ (Incropera & DeWitt).
 */
export interface ValveHeat {
  /** Share of the cycle during which the valve is open, 0 to 1. */
  openShare: number;
  /** Film coefficient, W/(m² K), and temperature, K, of the chamber gas at the valve. */
  gasFilm: number;
  gasTemperature: number;
  /** Film coefficient and temperature of the charge that flows in. */
  airFilm: number;
  airTemperature: number;
  /** Conductance through the seat per area of valve, W/(m² K), and seat temperature, K. */
  seatConductance: number;
  seatTemperature: number;
}

/** Mean temperature of the valve, K. */
export function valveTemperature(h: ValveHeat): number {
  const shut = 1 - h.openShare;
  const gas = shut * h.gasFilm;
  const air = 2 * h.openShare * h.airFilm;
  const seat = shut * h.seatConductance;
  return (gas * h.gasTemperature + air * h.airTemperature + seat * h.seatTemperature) / (gas + air + seat);
}

/** Laminar flat-plate film coefficient of air near 300 K, W/(m² K); speed m/s, length m. */
export function flatPlateFilm(speed: number, length: number): number {
  const conductivity = 0.0263;
  const viscosity = 15.9e-6;
  const prandtl = 0.71;
  return ((0.664 * conductivity) / length) * Math.sqrt((Math.max(speed, 0) * length) / viscosity) * Math.cbrt(prandtl);
}
