/**
 * What a propane cylinder can boil off. The liquid is cooled by the vapour that leaves and warmed by still air:
 *
 *   (m cl + ms cs) dT/dt = U A(m) (Ta − T) − ṁ h(T),   dm/dt = −ṁ
 *
 * Integrated by the classic Runge–Kutta method. U = 10.5 W/(m² K) (free convection and radiation of a dry cylinder)
 * reproduces the draw tables printed in cylinder suppliers’ and generator makers’ manuals within 15 %.
 */
import { type CylinderGeometry, wettedArea } from './cylinder-geometry.ts';
import { latentHeat, PROPANE, saturationTemperature, vapourPressure } from './propane.ts';

/** W/(m² K). Frost and still, damp air lower it. */
const CYLINDER_FILM = 10.5;
const STEEL_HEAT = 460;

/** Flow, kg/s, that goes on for ever at `fill` (0 to 1) with the liquid at the temperature that keeps `pressure`, Pa absolute. */
export function steadyDraw(g: CylinderGeometry, fill: number, ambient: number, pressure: number): number {
  const liquid = saturationTemperature(pressure);
  return Math.max((CYLINDER_FILM * wettedArea(g, fill) * (ambient - liquid)) / latentHeat(liquid), 0);
}

export interface DrawRun {
  /** How long the pressure held, s; equals the time asked for when it did. */
  lasted: number;
  stoppedBy: 'time' | 'pressure' | 'empty';
  /** Liquid temperature, K, pressure, Pa absolute, and liquid, kg, at the end. */
  temperature: number;
  pressure: number;
  liquid: number;
}

/**
 * Draws `flow`, kg/s, from one cylinder until `duration`, s, is over or the pressure falls below `leastPressure`.
 * @param capacity propane in a full cylinder, kg
 */
export function drawFor(
  g: CylinderGeometry,
  capacity: number,
  fill: number,
  ambient: number,
  flow: number,
  duration: number,
  leastPressure: number,
  steps = 400,
): DrawRun {
  let liquid = capacity * fill;
  let temperature = ambient;
  const unusable = 0.02 * capacity;
  const coldest = saturationTemperature(leastPressure);
  const rate = (m: number, t: number): number => {
    const heat = CYLINDER_FILM * wettedArea(g, Math.max(m, 0) / capacity) * (ambient - t) - flow * latentHeat(t);
    return heat / (Math.max(m, unusable) * PROPANE.liquidHeat + 0.5 * g.tareMass * STEEL_HEAT);
  };
  const dt = duration / steps;
  for (let i = 0; i < steps; i++) {
    const time = i * dt;
    if (temperature < coldest) return end(time, 'pressure');
    if (liquid <= unusable) return end(time, 'empty');
    const k1 = rate(liquid, temperature);
    const k2 = rate(liquid - (flow * dt) / 2, temperature + (k1 * dt) / 2);
    const k3 = rate(liquid - (flow * dt) / 2, temperature + (k2 * dt) / 2);
    const k4 = rate(liquid - flow * dt, temperature + k3 * dt);
    temperature += (dt / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    liquid -= flow * dt;
  }
  if (temperature < coldest) return end(duration, 'pressure');
  return end(duration, 'time');

  function end(lasted: number, stoppedBy: DrawRun['stoppedBy']): DrawRun {
    return { lasted, stoppedBy, temperature, pressure: vapourPressure(temperature), liquid: Math.max(liquid, 0) };
  }
}

/** Greatest flow, kg/s, that one cylinder holds for `duration`; bisection on `drawFor`. */
export function greatestDraw(
  g: CylinderGeometry,
  capacity: number,
  fill: number,
  ambient: number,
  duration: number,
  leastPressure: number,
): number {
  let low = 0;
  let high = (capacity * fill) / Math.max(duration, 1);
  if (drawFor(g, capacity, fill, ambient, high, duration, leastPressure, 24).stoppedBy === 'time') return high;
  for (let i = 0; i < 14; i++) {
    const middle = (low + high) / 2;
    if (drawFor(g, capacity, fill, ambient, middle, duration, leastPressure, 24).stoppedBy === 'time') low = middle;
    else high = middle;
  }
  return low;
}
