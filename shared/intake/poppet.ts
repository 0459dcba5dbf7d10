/**
 * A poppet valve: one mass on a spring, opened by suction, caught by seat and lift stop.
 *
 *   m ẍ = Δp A f(x) ± m g − F₀ − k x − c ẋ − F_f sign ẋ,   m = head + stem + retainer + a third of the spring
 *
 * The force falls with lift because the stream that passes the head has the pressure of its throat:
 * f = 1 − (opening/port)²/2 (from memory, low confidence). C_d on the curtain area by lift over port diameter: engine
 * textbooks, memory medium.
 */
import type { PoppetIntake } from '../engine/engine.ts';
import type { IntakeValve } from './valve.ts';

/** Lift/diameter and discharge coefficient on the curtain π d x (engine textbooks; memory medium, ±0.06). */
const DISCHARGE_LIFT = Float64Array.of(0, 0.05, 0.1, 0.2, 0.3, 0.5);
const DISCHARGE = Float64Array.of(0.6, 0.62, 0.66, 0.58, 0.47, 0.3);
const GRAVITY = 9.81;
/** Friction of a dry guide, N a valve per kg of moving mass, and damping ratio (common practice, no source). */
const GUIDE_FRICTION = 2;
const DAMPING = 0.03;
/** Share of speed kept after meeting seat or stop (from memory, low confidence). */
const RESTITUTION = 0.3;
/** Leakage of a shut valve, share of the port area (common practice, no source). */
const LEAKAGE = 0.002;

/** Discharge coefficient on the curtain area at lift/diameter, linear between the tabulated points. */
export function poppetDischarge(liftOverDiameter: number): number {
  const last = DISCHARGE.length - 1;
  const x = Math.min(Math.max(0, liftOverDiameter), DISCHARGE_LIFT[last]);
  for (let n = 1; n <= last; n++) {
    if (x <= DISCHARGE_LIFT[n]) {
      const x0 = DISCHARGE_LIFT[n - 1];
      const c0 = DISCHARGE[n - 1];
      return c0 + ((DISCHARGE[n] - c0) * (x - x0)) / (DISCHARGE_LIFT[n] - x0);
    }
  }
  return DISCHARGE[last];
}

/** Moving mass of one valve, kg: a third of the spring moves with it (Rayleigh). */
export function poppetMovingMass(poppet: PoppetIntake): number {
  return poppet.mass + poppet.springMass / 3;
}

/** Makes the poppet valves of an engine; all move as one. */
export function makePoppetValve(poppet: PoppetIntake): IntakeValve {
  const mass = poppetMovingMass(poppet);
  const omega = Math.sqrt(poppet.springRate / mass);
  const port = 0.25 * Math.PI * poppet.portDiameter ** 2;
  const head = 0.25 * Math.PI * poppet.headDiameter ** 2;
  const curtain = (x: number) => Math.PI * poppet.portDiameter * x;
  const opening = (x: number) => Math.min(curtain(x), port);
  const effective = (x: number) => Math.min(poppetDischarge(x / poppet.portDiameter) * curtain(x), 0.8 * port);
  const weight = poppet.axis === 'vertical' ? mass * GRAVITY : 0;
  const friction = GUIDE_FRICTION * mass;
  const damping = 2 * DAMPING * omega * mass;
  // Lift and speed. An array, since a closure's own numbers cost an allocation at each change.
  const motion = new Float64Array(2);
  const valve: IntakeValve = {
    fullArea: poppet.valves * opening(poppet.lift),
    stopLift: poppet.lift,
    movingMass: mass,
    naturalFrequency: omega / (2 * Math.PI),
    pressureArea: port,
    preload: poppet.preload - weight,
    stiffness: poppet.springRate,
    count: poppet.valves,
    seatImpact: 0,
    stopImpact: 0,
    peakLift: 0,
    lift: () => motion[0],
    openArea: () => poppet.valves * opening(motion[0]),
    effectiveArea: () => poppet.valves * (effective(motion[0]) + LEAKAGE * port),
    resetExtremes() {
      valve.seatImpact = 0;
      valve.stopImpact = 0;
      valve.peakLift = 0;
    },
    advance(dt, difference) {
      const pieces = Math.ceil((omega * dt) / 0.2);
      const h = dt / pieces;
      let x = motion[0];
      let v = motion[1];
      for (let n = 0; n < pieces; n++) {
        const s = opening(x) / port;
        // Pressure that shuts the valve acts on the whole head, suction on the port.
        const pressed = difference * (difference > 0 ? port * (1 - 0.5 * s * s) : head);
        const net = pressed + weight - poppet.preload - poppet.springRate * x - damping * v;
        if (x <= 0 && net <= friction && v <= 0) {
          x = v = 0;
          continue;
        }
        v += (h * (net - friction * Math.sign(v === 0 ? net : v))) / mass;
        x += h * v;
        if (x < 0) {
          if (-v > valve.seatImpact) valve.seatImpact = -v;
          x = 0;
          v = -RESTITUTION * v;
        } else if (x > poppet.lift) {
          if (v > valve.stopImpact) valve.stopImpact = v;
          x = poppet.lift;
          v = -RESTITUTION * v;
        }
        if (x > valve.peakLift) valve.peakLift = x;
      }
      motion[0] = x;
      motion[1] = v;
    },
  };
  return valve;
}
