/**
 * Exact standing waves of a duct made of uniform sections, each with its own area, sound speed and density.
 *
 *     in a section   p′ = −ω ρ/A · Q,   Q′ = ω A/(ρc²) · p        (Q: volume flow, a quarter period behind p)
 *     at a junction  p and Q are continuous
 *     closed end     Q = 0              open end  p = 0
 *
 * With p = r cos θ and Z Q = r sin θ, Z = ρc/A, the angle θ grows by ω L/c along a section and keeps its quadrant at a
 * junction. So θ at the exit grows steadily with ω, and mode n is where it passes a known multiple of π/2: no mode is
 * ever missed. Source: the transmission-line form of plane-wave acoustics, e.g. Kinsler et al., "Fundamentals of Acoustics".
 */
export interface AcousticSection {
  /** m. */
  length: number;
  /** m². */
  area: number;
  /** m/s. */
  soundSpeed: number;
  /** kg/m³; only ratios matter. */
  density: number;
}

export interface AcousticDuct {
  /** From head to exit. End corrections are the caller's: add them to the first or last length. */
  sections: readonly AcousticSection[];
  head: 'closed' | 'open';
  exit: 'closed' | 'open';
}

/** The lowest count natural frequencies, Hz, ascending; the steady state at 0 Hz is left out. Throws RangeError for a bad section. */
export function ductFrequencies(duct: AcousticDuct, count: number): number[] {
  requireSections(duct);
  const start = duct.head === 'closed' ? 0 : Math.PI / 2;
  const end = duct.exit === 'closed' ? 0 : Math.PI / 2;
  const frequencies: number[] = [];
  for (let n = 0; frequencies.length < count; n++) {
    const target = end + n * Math.PI;
    if (target - start < 0.1) continue; // No wave at all: the angle has not turned.
    frequencies.push(angularFrequencyAt(duct, target) / (2 * Math.PI));
  }
  return frequencies;
}

/** Sound pressure of a mode at a distance from the head, m, scaled to a largest head value of 1 (closed head) or unit Q (open). */
export function modePressure(duct: AcousticDuct, frequency: number, position: number): number {
  requireSections(duct);
  const omega = 2 * Math.PI * frequency;
  let pressure = duct.head === 'closed' ? 1 : 0;
  let flow = duct.head === 'closed' ? 0 : 1 / impedance(duct.sections[0]);
  let rest = position;
  for (const section of duct.sections) {
    const length = Math.min(rest, section.length);
    const turn = (omega * length) / section.soundSpeed;
    const z = impedance(section);
    const next = pressure * Math.cos(turn) - z * flow * Math.sin(turn);
    flow = flow * Math.cos(turn) + (pressure / z) * Math.sin(turn);
    pressure = next;
    rest -= length;
    if (rest <= 0) break;
  }
  return pressure;
}

function angularFrequencyAt(duct: AcousticDuct, target: number): number {
  let high = 1;
  while (exitAngle(duct, high) < target) high *= 2;
  let low = 0;
  for (let i = 0; i < 200; i++) {
    const middle = 0.5 * (low + high);
    if (middle === low || middle === high) break;
    if (exitAngle(duct, middle) < target) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

function exitAngle(duct: AcousticDuct, omega: number): number {
  let angle = duct.head === 'closed' ? 0 : Math.PI / 2;
  let before: AcousticSection | null = null;
  for (const section of duct.sections) {
    if (before !== null) angle = crossJunction(angle, impedance(section) / impedance(before));
    angle += (omega * section.length) / section.soundSpeed;
    before = section;
  }
  return angle;
}

/** p and Q stay, Z changes: tan θ scales, θ keeps its half turn. */
function crossJunction(angle: number, impedanceRatio: number): number {
  const halfTurns = Math.round(angle / Math.PI);
  const rest = angle - halfTurns * Math.PI;
  return halfTurns * Math.PI + Math.atan2(impedanceRatio * Math.sin(rest), Math.cos(rest));
}

function impedance(section: AcousticSection): number {
  return (section.density * section.soundSpeed) / section.area;
}

function requireSections(duct: AcousticDuct): void {
  if (duct.sections.length === 0) throw new RangeError('A duct needs at least one section.');
  for (const { length, area, soundSpeed, density } of duct.sections) {
    if (!(length > 0 && area > 0 && soundSpeed > 0 && density > 0)) {
      throw new RangeError('Length, area, sound speed and density of every duct section must be above zero.');
    }
  }
}
