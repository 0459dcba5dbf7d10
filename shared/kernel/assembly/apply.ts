/**
 * Both stages of the two-stage step of shared/duct/step.ts: the first saves the state before it adds the fluxes, the second
 * averages with what was saved. Both sum the push of the walls, Σ p dA, in the order of the cells.
 */
import {
  AREA_CHANGE, ENERGY, ENERGY_FLUX, FUEL_FLUX, FUEL_MASS, MASS, MASS_FLUX, MOMENTUM, MOMENTUM_FLUX, PRESSURE,
  PRODUCT_FLUX, PRODUCT_MASS, PROGRESS, PROGRESS_FLUX, PUSH, SAVED_ENERGY, SAVED_FUEL_MASS, SAVED_MASS, SAVED_MOMENTUM,
  SAVED_PRODUCT_MASS, SAVED_PROGRESS, SAVED_TURBULENCE, STEP, TURBULENCE, TURBULENCE_FLUX, VOLUME,
} from '../layout';

/** The new value of a conserved variable; `state`, `flux` and `saved` are its arrays. */
// @ts-ignore: decorator of AssemblyScript
@inline
function advance(at: usize, g: v128, wall: v128, second: bool, state: usize, flux: usize, saved: usize): void {
  const before = v128.load(at + state);
  const change = f64x2.sub(f64x2.sub(v128.load(at + flux + 8), v128.load(at + flux)), wall);
  const now = f64x2.sub(before, f64x2.mul(g, change));
  if (second) {
    v128.store(at + state, f64x2.mul(f64x2.splat(0.5), f64x2.add(now, v128.load(at + saved))));
  } else {
    v128.store(at + saved, before);
    v128.store(at + state, now);
  }
}

// @ts-ignore: decorator of AssemblyScript
@inline
function advanceOne(at: usize, g: f64, wall: f64, second: bool, state: usize, flux: usize, saved: usize): void {
  const before = load<f64>(at + state);
  const now = before - g * (load<f64>(at + flux + 8) - load<f64>(at + flux) - wall);
  if (second) {
    store<f64>(at + state, 0.5 * (now + load<f64>(at + saved)));
  } else {
    store<f64>(at + saved, before);
    store<f64>(at + state, now);
  }
}

// @ts-ignore: decorator of AssemblyScript
@inline
function stage(n: i32, second: bool): void {
  const dt = load<f64>(0, STEP);
  const none = f64x2.splat(0);
  const end: usize = n << 3;
  const pairs: usize = (n & ~1) << 3;
  let push: f64 = 0;
  let at: usize = 0;
  for (; at < pairs; at += 16) {
    const g = f64x2.div(f64x2.splat(dt), v128.load(at, VOLUME));
    const wall = f64x2.mul(v128.load(at, PRESSURE), v128.load(at, AREA_CHANGE));
    push += f64x2.extract_lane(wall, 0);
    push += f64x2.extract_lane(wall, 1);
    advance(at, g, none, second, MASS, MASS_FLUX, SAVED_MASS);
    advance(at, g, wall, second, MOMENTUM, MOMENTUM_FLUX, SAVED_MOMENTUM);
    advance(at, g, none, second, ENERGY, ENERGY_FLUX, SAVED_ENERGY);
    advance(at, g, none, second, FUEL_MASS, FUEL_FLUX, SAVED_FUEL_MASS);
    advance(at, g, none, second, PRODUCT_MASS, PRODUCT_FLUX, SAVED_PRODUCT_MASS);
    advance(at, g, none, second, TURBULENCE, TURBULENCE_FLUX, SAVED_TURBULENCE);
    advance(at, g, none, second, PROGRESS, PROGRESS_FLUX, SAVED_PROGRESS);
  }
  if (at < end) {
    const g = dt / load<f64>(at, VOLUME);
    const wall = load<f64>(at, PRESSURE) * load<f64>(at, AREA_CHANGE);
    push += wall;
    advanceOne(at, g, 0, second, MASS, MASS_FLUX, SAVED_MASS);
    advanceOne(at, g, wall, second, MOMENTUM, MOMENTUM_FLUX, SAVED_MOMENTUM);
    advanceOne(at, g, 0, second, ENERGY, ENERGY_FLUX, SAVED_ENERGY);
    advanceOne(at, g, 0, second, FUEL_MASS, FUEL_FLUX, SAVED_FUEL_MASS);
    advanceOne(at, g, 0, second, PRODUCT_MASS, PRODUCT_FLUX, SAVED_PRODUCT_MASS);
    advanceOne(at, g, 0, second, TURBULENCE, TURBULENCE_FLUX, SAVED_TURBULENCE);
    advanceOne(at, g, 0, second, PROGRESS, PROGRESS_FLUX, SAVED_PROGRESS);
  }
  store<f64>(0, push, PUSH);
}

/** U¹ = U + Δt L(U), U saved. */
export function firstStage(n: i32): void {
  stage(n, false);
}

/** U ← (U + U¹ + Δt L(U¹))/2. */
export function secondStage(n: i32): void {
  stage(n, true);
}
