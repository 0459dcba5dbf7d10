/** shared/duct/flux-hllc.ts, two faces at a time; faces at sudden steps and lost reconstructions go one at a time. */
import {
  CARRIES, DENSITY, ENERGY_FLUX, ENTHALPY, FACE_AREA, FUEL, FUEL_ENERGY, FUEL_FLUX, GAS_AIR, GAS_FUEL, GAS_PRODUCT, HALF_DENSITY,
  HALF_FLOW, HALF_FUEL, HALF_K, HALF_PRESSURE, HALF_PRODUCT, HALF_Z, HEAT_CAPACITY, INTERNAL_ENERGY, K, MASS_FLUX, MIXING,
  MEAN_AREA, MOMENTUM_FLUX, PER_AREA, PER_DISTANCE, PRESSURE, PRODUCT, PRODUCT_ENERGY, PRODUCT_FLUX, PROGRESS_FLUX, SLOPE_DENSITY, SLOPE_FLOW,
  SLOPE_FUEL, SLOPE_K, SLOPE_PRESSURE, SLOPE_PRODUCT, SLOPE_Z, SOUND_SPEED, SUDDEN, TEMPERATURE, TURBULENCE_FLUX, VELOCITY,
  Z,
} from '../layout';

const GENTLE_STEP: f64 = 1.25;

function throughStep(scaled: f64, step: f64, soundSpeed: f64): f64 {
  const speed = Math.abs(scaled) / step;
  const most = speed * GENTLE_STEP > soundSpeed ? GENTLE_STEP : soundSpeed / speed;
  if (step > most) return (scaled * most) / step;
  return step * most < 1 ? scaled / (most * step) : scaled;
}

/** Whether gas must not simply follow uA = const from a cell of this area through a face. */
export function isSudden(step: f64): bool {
  return step > GENTLE_STEP || step * GENTLE_STEP < 1;
}

/** The face between the cells at byte offsets i and i + 8. */
function oneFace(i: usize): void {
  const j = i + 8;
  const ra = load<f64>(0, GAS_AIR);
  const rf = load<f64>(0, GAS_FUEL);
  const rp = load<f64>(0, GAS_PRODUCT);
  let dl = load<f64>(i, HALF_DENSITY) + 0.5 * load<f64>(i, SLOPE_DENSITY);
  let pl = load<f64>(i, HALF_PRESSURE) + 0.5 * load<f64>(i, SLOPE_PRESSURE);
  let dr = load<f64>(j, HALF_DENSITY) - 0.5 * load<f64>(j, SLOPE_DENSITY);
  let pr = load<f64>(j, HALF_PRESSURE) - 0.5 * load<f64>(j, SLOPE_PRESSURE);
  const a = load<f64>(j, FACE_AREA);
  const perArea = load<f64>(j, PER_AREA);
  let ul = (load<f64>(i, HALF_FLOW) + 0.5 * load<f64>(i, SLOPE_FLOW)) * perArea;
  let ur = (load<f64>(j, HALF_FLOW) - 0.5 * load<f64>(j, SLOPE_FLOW)) * perArea;
  const cl = load<f64>(i, SOUND_SPEED);
  const cr = load<f64>(j, SOUND_SPEED);
  const stepLeft = load<f64>(i, MEAN_AREA) * perArea;
  const stepRight = load<f64>(j, MEAN_AREA) * perArea;
  if (isSudden(stepLeft)) ul = throughStep(ul, stepLeft, cl);
  if (isSudden(stepRight)) ur = throughStep(ur, stepRight, cr);
  if (!(dl > 0 && pl > 0 && dr > 0 && pr > 0)) {
    dl = load<f64>(i, DENSITY);
    pl = load<f64>(i, PRESSURE);
    ul = load<f64>(i, VELOCITY);
    dr = load<f64>(j, DENSITY);
    pr = load<f64>(j, PRESSURE);
    ur = load<f64>(j, VELOCITY);
  }
  const left = ul - cl < ur - cr ? ul - cl : ur - cr;
  const right = ul + cl > ur + cr ? ul + cl : ur + cr;
  const ml = dl * (left - ul);
  const mr = dr * (right - ur);
  const middle = (pr - pl + ul * ml - ur * mr) / (ml - mr);
  // The cell upwind, the sign of its slopes, and its reconstructed state.
  const fromLeft = middle >= 0;
  const up = fromLeft ? i : j;
  const half = fromLeft ? 0.5 : -0.5;
  const d = fromLeft ? dl : dr;
  const p = fromLeft ? pl : pr;
  const u = fromLeft ? ul : ur;
  const m = fromLeft ? ml : mr;
  const signal = fromLeft ? left : right;
  const fuel = load<f64>(up, FUEL);
  const product = load<f64>(up, PRODUCT);
  const yf = load<f64>(up, HALF_FUEL) + half * load<f64>(up, SLOPE_FUEL);
  const yp = load<f64>(up, HALF_PRODUCT) + half * load<f64>(up, SLOPE_PRODUCT);
  const t = p / (d * (ra + yf * rf + yp * rp));
  const e =
    load<f64>(up, INTERNAL_ENERGY) +
    load<f64>(up, HEAT_CAPACITY) * (t - load<f64>(up, TEMPERATURE)) +
    (yf - fuel) * load<f64>(up, FUEL_ENERGY) +
    (yp - product) * load<f64>(up, PRODUCT_ENERGY);
  const E = d * (e + 0.5 * u * u);
  let mass: f64;
  let energy: f64;
  if (fromLeft ? left >= 0 : right <= 0) {
    mass = a * d * u;
    store<f64>(j, mass * u + a * p, MOMENTUM_FLUX);
    energy = a * u * (E + p);
  } else {
    const g = 1 / (signal - middle);
    const ps = p + m * (middle - u);
    mass = a * m * g * middle;
    store<f64>(j, mass * middle + a * ps, MOMENTUM_FLUX);
    energy = a * middle * (((signal - u) * E - p * u + ps * middle) * g + ps);
  }
  let turbulence = mass * (load<f64>(up, HALF_K) + half * load<f64>(up, SLOPE_K));
  let progress = mass * (load<f64>(up, HALF_Z) + half * load<f64>(up, SLOPE_Z));
  let fuelFlux = mass * yf;
  let productFlux = mass * yp;
  const mix = 0.5 * (load<f64>(i, MIXING) + load<f64>(j, MIXING)) * a * load<f64>(j, PER_DISTANCE);
  if (mix > 0) {
    energy -= mix * (load<f64>(j, ENTHALPY) - load<f64>(i, ENTHALPY));
    fuelFlux -= mix * (load<f64>(j, FUEL) - load<f64>(i, FUEL));
    productFlux -= mix * (load<f64>(j, PRODUCT) - load<f64>(i, PRODUCT));
    turbulence -= mix * (load<f64>(j, K) - load<f64>(i, K));
    progress -= mix * (load<f64>(j, Z) - load<f64>(i, Z));
  }
  store<f64>(j, mass, MASS_FLUX);
  store<f64>(j, energy, ENERGY_FLUX);
  store<f64>(j, fuelFlux, FUEL_FLUX);
  store<f64>(j, productFlux, PRODUCT_FLUX);
  store<f64>(j, turbulence, TURBULENCE_FLUX);
  store<f64>(j, progress, PROGRESS_FLUX);
}

// The helpers take loaded values, since only the place of a load can hold a constant offset.

// @ts-ignore: decorator of AssemblyScript
@inline
function before(value: v128, slope: v128): v128 {
  return f64x2.add(value, f64x2.mul(f64x2.splat(0.5), slope));
}

// @ts-ignore: decorator of AssemblyScript
@inline
function behind(value: v128, slope: v128): v128 {
  return f64x2.sub(value, f64x2.mul(f64x2.splat(0.5), slope));
}

/** A flux less turbulent mixing, where there is any, down a difference across the face. */
// @ts-ignore: decorator of AssemblyScript
@inline
function mixed(flux: v128, mix: v128, mixes: v128, difference: v128): v128 {
  return v128.bitselect(f64x2.sub(flux, f64x2.mul(mix, difference)), flux, mixes);
}

// @ts-ignore: decorator of AssemblyScript
@inline
function twoFaces(i: usize, carries: bool): void {
  const zero = f64x2.splat(0);
  const j = i + 8;
  const dl = before(v128.load(i, HALF_DENSITY), v128.load(i, SLOPE_DENSITY));
  const pl = before(v128.load(i, HALF_PRESSURE), v128.load(i, SLOPE_PRESSURE));
  const dr = behind(v128.load(i, HALF_DENSITY + 8), v128.load(i, SLOPE_DENSITY + 8));
  const pr = behind(v128.load(i, HALF_PRESSURE + 8), v128.load(i, SLOPE_PRESSURE + 8));
  const positive = v128.and(
    v128.and(f64x2.gt(dl, zero), f64x2.gt(pl, zero)),
    v128.and(f64x2.gt(dr, zero), f64x2.gt(pr, zero)),
  );
  if (v128.any_true(v128.load(j, SUDDEN)) || !i64x2.all_true(positive)) {
    oneFace(i);
    oneFace(j);
    return;
  }
  const a = v128.load(j, FACE_AREA);
  const perArea = v128.load(j, PER_AREA);
  const ul = f64x2.mul(before(v128.load(i, HALF_FLOW), v128.load(i, SLOPE_FLOW)), perArea);
  const ur = f64x2.mul(behind(v128.load(i, HALF_FLOW + 8), v128.load(i, SLOPE_FLOW + 8)), perArea);
  const cl = v128.load(i, SOUND_SPEED);
  const cr = v128.load(j, SOUND_SPEED);
  const left = f64x2.pmin(f64x2.sub(ur, cr), f64x2.sub(ul, cl));
  const right = f64x2.pmax(f64x2.add(ur, cr), f64x2.add(ul, cl));
  const ml = f64x2.mul(dl, f64x2.sub(left, ul));
  const mr = f64x2.mul(dr, f64x2.sub(right, ur));
  const middle = f64x2.div(
    f64x2.sub(f64x2.add(f64x2.sub(pr, pl), f64x2.mul(ul, ml)), f64x2.mul(ur, mr)),
    f64x2.sub(ml, mr),
  );
  const fromLeft = f64x2.ge(middle, zero);
  const d = v128.bitselect(dl, dr, fromLeft);
  const p = v128.bitselect(pl, pr, fromLeft);
  const u = v128.bitselect(ul, ur, fromLeft);
  const m = v128.bitselect(ml, mr, fromLeft);
  const signal = v128.bitselect(left, right, fromLeft);
  let yf = zero;
  let yp = zero;
  let gas = f64x2.splat(load<f64>(0, GAS_AIR));
  if (carries) {
    yf = v128.bitselect(
      before(v128.load(i, HALF_FUEL), v128.load(i, SLOPE_FUEL)),
      behind(v128.load(i, HALF_FUEL + 8), v128.load(i, SLOPE_FUEL + 8)),
      fromLeft,
    );
    yp = v128.bitselect(
      before(v128.load(i, HALF_PRODUCT), v128.load(i, SLOPE_PRODUCT)),
      behind(v128.load(i, HALF_PRODUCT + 8), v128.load(i, SLOPE_PRODUCT + 8)),
      fromLeft,
    );
    gas = f64x2.add(
      f64x2.add(gas, f64x2.mul(yf, f64x2.splat(load<f64>(0, GAS_FUEL)))),
      f64x2.mul(yp, f64x2.splat(load<f64>(0, GAS_PRODUCT))),
    );
  }
  const t = f64x2.div(p, f64x2.mul(d, gas));
  let e = f64x2.add(
    v128.bitselect(v128.load(i, INTERNAL_ENERGY), v128.load(i, INTERNAL_ENERGY + 8), fromLeft),
    f64x2.mul(v128.bitselect(v128.load(i, HEAT_CAPACITY), v128.load(i, HEAT_CAPACITY + 8), fromLeft), f64x2.sub(t, v128.bitselect(v128.load(i, TEMPERATURE), v128.load(i, TEMPERATURE + 8), fromLeft))),
  );
  if (carries) {
    e = f64x2.add(e, f64x2.mul(f64x2.sub(yf, v128.bitselect(v128.load(i, FUEL), v128.load(i, FUEL + 8), fromLeft)), v128.bitselect(v128.load(i, FUEL_ENERGY), v128.load(i, FUEL_ENERGY + 8), fromLeft)));
    e = f64x2.add(e, f64x2.mul(f64x2.sub(yp, v128.bitselect(v128.load(i, PRODUCT), v128.load(i, PRODUCT + 8), fromLeft)), v128.bitselect(v128.load(i, PRODUCT_ENERGY), v128.load(i, PRODUCT_ENERGY + 8), fromLeft)));
  }
  const E = f64x2.mul(d, f64x2.add(e, f64x2.mul(f64x2.mul(f64x2.splat(0.5), u), u)));
  const g = f64x2.div(f64x2.splat(1), f64x2.sub(signal, middle));
  const ps = f64x2.add(p, f64x2.mul(m, f64x2.sub(middle, u)));
  let mass = f64x2.mul(f64x2.mul(f64x2.mul(a, m), g), middle);
  let momentum = f64x2.add(f64x2.mul(mass, middle), f64x2.mul(a, ps));
  const star = f64x2.add(
    f64x2.sub(f64x2.mul(f64x2.sub(signal, u), E), f64x2.mul(p, u)),
    f64x2.mul(ps, middle),
  );
  let energy = f64x2.mul(f64x2.mul(a, middle), f64x2.add(f64x2.mul(star, g), ps));
  const supersonic = v128.bitselect(f64x2.ge(left, zero), f64x2.le(right, zero), fromLeft);
  if (v128.any_true(supersonic)) {
    const whole = f64x2.mul(f64x2.mul(a, d), u);
    mass = v128.bitselect(whole, mass, supersonic);
    momentum = v128.bitselect(f64x2.add(f64x2.mul(whole, u), f64x2.mul(a, p)), momentum, supersonic);
    energy = v128.bitselect(f64x2.mul(f64x2.mul(a, u), f64x2.add(E, p)), energy, supersonic);
  }
  const mean = f64x2.mul(f64x2.splat(0.5), f64x2.add(v128.load(i, MIXING), v128.load(j, MIXING)));
  const mix = f64x2.mul(f64x2.mul(mean, a), v128.load(j, PER_DISTANCE));
  const mixes = f64x2.gt(mix, zero);
  const stirs = v128.any_true(mixes);
  if (stirs) energy = mixed(energy, mix, mixes, f64x2.sub(v128.load(i, ENTHALPY + 8), v128.load(i, ENTHALPY)));
  v128.store(j, mass, MASS_FLUX);
  v128.store(j, momentum, MOMENTUM_FLUX);
  v128.store(j, energy, ENERGY_FLUX);
  if (!carries) return;
  let fuel = f64x2.mul(mass, yf);
  let product = f64x2.mul(mass, yp);
  let turbulence = f64x2.mul(mass, v128.bitselect(
    before(v128.load(i, HALF_K), v128.load(i, SLOPE_K)),
    behind(v128.load(i, HALF_K + 8), v128.load(i, SLOPE_K + 8)),
    fromLeft,
  ));
  let progress = f64x2.mul(mass, v128.bitselect(
    before(v128.load(i, HALF_Z), v128.load(i, SLOPE_Z)),
    behind(v128.load(i, HALF_Z + 8), v128.load(i, SLOPE_Z + 8)),
    fromLeft,
  ));
  if (stirs) {
    fuel = mixed(fuel, mix, mixes, f64x2.sub(v128.load(i, FUEL + 8), v128.load(i, FUEL)));
    product = mixed(product, mix, mixes, f64x2.sub(v128.load(i, PRODUCT + 8), v128.load(i, PRODUCT)));
    turbulence = mixed(turbulence, mix, mixes, f64x2.sub(v128.load(i, K + 8), v128.load(i, K)));
    progress = mixed(progress, mix, mixes, f64x2.sub(v128.load(i, Z + 8), v128.load(i, Z)));
  }
  v128.store(j, fuel, FUEL_FLUX);
  v128.store(j, product, PRODUCT_FLUX);
  v128.store(j, turbulence, TURBULENCE_FLUX);
  v128.store(j, progress, PROGRESS_FLUX);
}

/** Fills the fluxes of faces 1 … n − 1. */
export function innerFluxes(n: i32): void {
  const faces: usize = (n - 1) << 3;
  const pairs: usize = ((n - 1) & ~1) << 3;
  let i: usize = 0;
  if (load<f64>(0, CARRIES) != 0) for (; i < pairs; i += 16) twoFaces(i, true);
  else for (; i < pairs; i += 16) twoFaces(i, false);
  if (i < faces) oneFace(i);
}
