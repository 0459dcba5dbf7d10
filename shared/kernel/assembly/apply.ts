/**
 * Both stages of the two-stage step of shared/duct/step.ts: the first saves the state before it adds the fluxes, the second
 * averages with what was saved. Both sum the push of the walls, Σ p dA, in the order of the cells.
 */
import {
  AREA_CHANGE, ENERGY, ENERGY_FLUX, FUEL_FLUX, FUEL_MASS, MASS, MASS_FLUX, MOMENTUM, MOMENTUM_FLUX, PRESSURE,
  PRODUCT_FLUX, PRODUCT_MASS, PROGRESS, PROGRESS_FLUX, PUSH, SAVED_ENERGY, SAVED_FUEL_MASS, SAVED_MASS, SAVED_MOMENTUM,
  SAVED_PRODUCT_MASS, SAVED_PROGRESS, SAVED_TURBULENCE, STEP, TURBULENCE, TURBULENCE_FLUX, VOLUME,
} from '../layout';

/** before − g (right − left). */
// @ts-ignore: decorator of AssemblyScript
@inline
function changed(before: v128, g: v128, right: v128, left: v128): v128 {
  return f64x2.sub(before, f64x2.mul(g, f64x2.sub(right, left)));
}

// @ts-ignore: decorator of AssemblyScript
@inline
function averaged(now: v128, before: v128): v128 {
  return f64x2.mul(f64x2.splat(0.5), f64x2.add(now, before));
}

// In both stages an odd last cell shares its pair with the spare room behind the arrays.

/** U¹ = U + Δt L(U), U saved. */
export function firstStage(n: i32): void {
  const dt = f64x2.splat(load<f64>(0, STEP));
  const end: usize = n << 3;
  let push: f64 = 0;
  for (let at: usize = 0; at < end; at += 16) {
    const g = f64x2.div(dt, v128.load(at, VOLUME));
    const wall = f64x2.mul(v128.load(at, PRESSURE), v128.load(at, AREA_CHANGE));
    push += f64x2.extract_lane(wall, 0);
    if (at + 8 < end) push += f64x2.extract_lane(wall, 1);
    const mass = v128.load(at, MASS);
    v128.store(at, mass, SAVED_MASS);
    v128.store(at, changed(mass, g, v128.load(at, MASS_FLUX + 8), v128.load(at, MASS_FLUX)), MASS);
    const momentum = v128.load(at, MOMENTUM);
    v128.store(at, momentum, SAVED_MOMENTUM);
    v128.store(at, f64x2.sub(
      momentum,
      f64x2.mul(g, f64x2.sub(f64x2.sub(v128.load(at, MOMENTUM_FLUX + 8), v128.load(at, MOMENTUM_FLUX)), wall)),
    ), MOMENTUM);
    const energy = v128.load(at, ENERGY);
    v128.store(at, energy, SAVED_ENERGY);
    v128.store(at, changed(energy, g, v128.load(at, ENERGY_FLUX + 8), v128.load(at, ENERGY_FLUX)), ENERGY);
    const fuelMass = v128.load(at, FUEL_MASS);
    v128.store(at, fuelMass, SAVED_FUEL_MASS);
    v128.store(at, changed(fuelMass, g, v128.load(at, FUEL_FLUX + 8), v128.load(at, FUEL_FLUX)), FUEL_MASS);
    const productMass = v128.load(at, PRODUCT_MASS);
    v128.store(at, productMass, SAVED_PRODUCT_MASS);
    v128.store(at, changed(productMass, g, v128.load(at, PRODUCT_FLUX + 8), v128.load(at, PRODUCT_FLUX)), PRODUCT_MASS);
    const turbulence = v128.load(at, TURBULENCE);
    v128.store(at, turbulence, SAVED_TURBULENCE);
    v128.store(at, changed(turbulence, g, v128.load(at, TURBULENCE_FLUX + 8), v128.load(at, TURBULENCE_FLUX)), TURBULENCE);
    const progress = v128.load(at, PROGRESS);
    v128.store(at, progress, SAVED_PROGRESS);
    v128.store(at, changed(progress, g, v128.load(at, PROGRESS_FLUX + 8), v128.load(at, PROGRESS_FLUX)), PROGRESS);
  }
  store<f64>(0, push, PUSH);
}

/** U ← (U + U¹ + Δt L(U¹))/2. */
export function secondStage(n: i32): void {
  const dt = f64x2.splat(load<f64>(0, STEP));
  const end: usize = n << 3;
  let push: f64 = 0;
  for (let at: usize = 0; at < end; at += 16) {
    const g = f64x2.div(dt, v128.load(at, VOLUME));
    const wall = f64x2.mul(v128.load(at, PRESSURE), v128.load(at, AREA_CHANGE));
    push += f64x2.extract_lane(wall, 0);
    if (at + 8 < end) push += f64x2.extract_lane(wall, 1);
    const mass = changed(v128.load(at, MASS), g, v128.load(at, MASS_FLUX + 8), v128.load(at, MASS_FLUX));
    v128.store(at, averaged(mass, v128.load(at, SAVED_MASS)), MASS);
    const momentum = f64x2.sub(
      v128.load(at, MOMENTUM),
      f64x2.mul(g, f64x2.sub(f64x2.sub(v128.load(at, MOMENTUM_FLUX + 8), v128.load(at, MOMENTUM_FLUX)), wall)),
    );
    v128.store(at, averaged(momentum, v128.load(at, SAVED_MOMENTUM)), MOMENTUM);
    const energy = changed(v128.load(at, ENERGY), g, v128.load(at, ENERGY_FLUX + 8), v128.load(at, ENERGY_FLUX));
    v128.store(at, averaged(energy, v128.load(at, SAVED_ENERGY)), ENERGY);
    const fuelMass = changed(v128.load(at, FUEL_MASS), g, v128.load(at, FUEL_FLUX + 8), v128.load(at, FUEL_FLUX));
    v128.store(at, averaged(fuelMass, v128.load(at, SAVED_FUEL_MASS)), FUEL_MASS);
    const productMass = changed(v128.load(at, PRODUCT_MASS), g, v128.load(at, PRODUCT_FLUX + 8), v128.load(at, PRODUCT_FLUX));
    v128.store(at, averaged(productMass, v128.load(at, SAVED_PRODUCT_MASS)), PRODUCT_MASS);
    const turbulence = changed(v128.load(at, TURBULENCE), g, v128.load(at, TURBULENCE_FLUX + 8), v128.load(at, TURBULENCE_FLUX));
    v128.store(at, averaged(turbulence, v128.load(at, SAVED_TURBULENCE)), TURBULENCE);
    const progress = changed(v128.load(at, PROGRESS), g, v128.load(at, PROGRESS_FLUX + 8), v128.load(at, PROGRESS_FLUX));
    v128.store(at, averaged(progress, v128.load(at, SAVED_PROGRESS)), PROGRESS);
  }
  store<f64>(0, push, PUSH);
}
