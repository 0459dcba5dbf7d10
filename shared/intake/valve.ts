/** What the simulation asks of any moving intake valve. Pressures in Pa; all valves of the engine together unless said. */
export interface IntakeValve {
  /** Moves the valve by dt seconds under the pressure difference outside − inside. */
  advance(dt: number, pressureDifference: number): void;
  /** Geometric opening, m², limited by the ports. */
  openArea(): number;
  /** C_d times the opening, leakage when shut included, m². */
  effectiveArea(): number;
  /** Lift of the tip or head, m. */
  lift(): number;
  /** Full opening, m². */
  fullArea: number;
  /** Lift at the stop, m. */
  stopLift: number;
  /** Of one valve, kg (effective), and Hz. */
  movingMass: number;
  naturalFrequency: number;
  /** Area of one valve on which pressure acts, m². */
  pressureArea: number;
  /** Force on one valve when shut, N, and its rate against lift, N/m. */
  preload: number;
  stiffness: number;
  count: number;
  /** Fastest arrivals since the last reset, m/s. */
  seatImpact: number;
  stopImpact: number;
  peakLift: number;
  resetExtremes(): void;
}
