/** The end of the step of shared/duct/step.ts, two cells at a time. The push of the walls, Σ p dA, is summed in the order of the cells. */
import {
  CARRIES, ENERGY, ENERGY_FLUX, FACE_AREA, FUEL_FLUX, FUEL_MASS, HALF_PRESSURE, MASS, MASS_FLUX, MOMENTUM, MOMENTUM_FLUX,
  PER_VOLUME, PRODUCT_FLUX, PRODUCT_MASS, PROGRESS, PROGRESS_FLUX, PUSH, STEP, TURBULENCE, TURBULENCE_FLUX,
} from '../layout';

/** before − g (right − left). */
// @ts-ignore: decorator of AssemblyScript
@inline
function changed(before: v128, g: v128, right: v128, left: v128): v128 {
  return f64x2.sub(before, f64x2.mul(g, f64x2.sub(right, left)));
}

/** Whether anything that the cells do not hold flows in through an end: then they hold it from now on. */
function entersAt(face: usize): bool {
  return load<f64>(face, FUEL_FLUX) != 0 || load<f64>(face, PRODUCT_FLUX) != 0 || load<f64>(face, TURBULENCE_FLUX) != 0 ||
    load<f64>(face, PROGRESS_FLUX) != 0;
}

/** Adds the fluxes to the conserved variables. An odd last cell shares its pair with the spare room behind the arrays. */
export function applyFluxes(n: i32): void {
  const dt = f64x2.splat(load<f64>(0, STEP));
  const end: usize = n << 3;
  if (entersAt(0) || entersAt(end)) store<f64>(0, 1, CARRIES);
  const carries = load<f64>(0, CARRIES) != 0;
  let push: f64 = 0;
  for (let at: usize = 0; at < end; at += 16) {
    const g = f64x2.mul(dt, v128.load(at, PER_VOLUME));
    const p = v128.load(at, HALF_PRESSURE);
    const wall = f64x2.sub(f64x2.mul(p, v128.load(at, FACE_AREA + 8)), f64x2.mul(p, v128.load(at, FACE_AREA)));
    push += f64x2.extract_lane(wall, 0);
    if (at + 8 < end) push += f64x2.extract_lane(wall, 1);
    const momentum = f64x2.sub(f64x2.sub(v128.load(at, MOMENTUM_FLUX + 8), v128.load(at, MOMENTUM_FLUX)), wall);
    v128.store(at, f64x2.sub(v128.load(at, MOMENTUM), f64x2.mul(g, momentum)), MOMENTUM);
    v128.store(at, changed(v128.load(at, MASS), g, v128.load(at, MASS_FLUX + 8), v128.load(at, MASS_FLUX)), MASS);
    v128.store(at, changed(v128.load(at, ENERGY), g, v128.load(at, ENERGY_FLUX + 8), v128.load(at, ENERGY_FLUX)), ENERGY);
    if (!carries) continue;
    v128.store(at, changed(v128.load(at, FUEL_MASS), g, v128.load(at, FUEL_FLUX + 8), v128.load(at, FUEL_FLUX)), FUEL_MASS);
    v128.store(at, changed(v128.load(at, PRODUCT_MASS), g, v128.load(at, PRODUCT_FLUX + 8), v128.load(at, PRODUCT_FLUX)), PRODUCT_MASS);
    v128.store(at, changed(v128.load(at, TURBULENCE), g, v128.load(at, TURBULENCE_FLUX + 8), v128.load(at, TURBULENCE_FLUX)), TURBULENCE);
    v128.store(at, changed(v128.load(at, PROGRESS), g, v128.load(at, PROGRESS_FLUX + 8), v128.load(at, PROGRESS_FLUX)), PROGRESS);
  }
  store<f64>(0, push, PUSH);
}
