/**
 * The books of a run: everything that crossed the engine's boundaries, summed from the start, with a copy at the end of each
 * cycle. Averages and audits over any span of cycles are differences of two copies.
 */

/** Columns of the books. Energies are sensible + kinetic; impulses are N s, gauge. */
export const COLUMNS = [
  'time',
  /** kg of air and fuel that came in (air net of what flowed back), and fuel injected or carried in. */
  'airIn',
  'fuelIn',
  /** kg: everything into and out of the duct. */
  'massIn',
  'massOut',
  /** J. */
  'energyIn',
  'energyOut',
  'heatReleased',
  'wallHeat',
  /** Thrust of each end, outflow only: N s. */
  'exhaustImpulse',
  'intakeImpulse',
  /** Axial force of the gas on every inside wall, forwards positive: N s. */
  'wallImpulse',
  /** Suction at lips during inflow, which counts as a wall: N s. */
  'lipImpulse',
  /** s and Pa s of chamber pressure below ambient while the intake draws. */
  'suctionTime',
  'suctionIntegral',
  /** m² s of opening and m² s that full opening would give, during suction. */
  'openIntegral',
  /** Pa s of head pressure. */
  'pressureIntegral',
  /** Σ Δp·dt on one valve during suction, Pa s. */
  'offeredIntegral',
  /** What the duct holds now: kg, J, N s of axial momentum. */
  'heldMass',
  'heldEnergy',
  'heldMomentum',
  /** Extremes since the last cycle end. */
  'peakPressure',
  'lowestPressure',
  'peakAirFlow',
] as const;

export type Column = (typeof COLUMNS)[number];

const INDEX = Object.fromEntries(COLUMNS.map((c, n) => [c, n])) as Record<Column, number>;
export const L = INDEX;

/** Running totals and their copies at cycle ends. */
export class Ledger {
  readonly now = new Float64Array(COLUMNS.length);
  private readonly copies: Float64Array;
  /** Copies taken so far. Copy n is the end of cycle n; copy 0 the start of counting. */
  count = 0;

  constructor(maxCycles: number) {
    this.copies = new Float64Array(COLUMNS.length * (maxCycles + 1));
  }

  /** Copies the running totals as the end of a cycle. Extremes then begin anew. */
  close(pressure: number): void {
    this.copies.set(this.now, this.count * COLUMNS.length);
    this.count++;
    this.now[L.peakPressure] = pressure;
    this.now[L.lowestPressure] = pressure;
    this.now[L.peakAirFlow] = 0;
  }

  get full(): boolean {
    return (this.count + 1) * COLUMNS.length > this.copies.length;
  }

  at(copy: number, column: Column): number {
    return this.copies[copy * COLUMNS.length + L[column]];
  }

  /** Change of a column from copy a to copy b. */
  between(a: number, b: number, column: Column): number {
    return this.at(b, column) - this.at(a, column);
  }
}
