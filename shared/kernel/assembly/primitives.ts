/** shared/duct/primitives.ts, two cells at a time, operation for operation. */
import {
  CARRIES, DENSITY, ENERGY, ENTHALPY, FASTEST, FUEL, FUEL_ENERGY, FUEL_MASS, GAS_AIR, GAS_FUEL, GAS_PRODUCT, HEAT_CAPACITY,
  INTERNAL_ENERGY, INTERVALS, K, MASS, MEAN_AREA, MOMENTUM, PRESSURE, PRODUCT, PRODUCT_ENERGY, PRODUCT_MASS, PROGRESS,
  PER_WIDTH, SOUND_RATE, SOUND_SPEED, SPECIFIC_VOLUME, TABLE, TEMPERATURE, TEMPERATURE_MIN, TEMPERATURE_STEP, TURBULENCE, VELOCITY, VOLUME_FLOW, Z,
} from '../layout';
import { knot } from './knot';
import { larger } from './lanes';

export function recoverPrimitives(n: i32): void {
  const t0 = load<f64>(0, TEMPERATURE_MIN);
  const dT = load<f64>(0, TEMPERATURE_STEP);
  const perStep = 1 / dT;
  const last = <i32>load<f64>(0, INTERVALS) - 1;
  const ra = load<f64>(0, GAS_AIR);
  const rf = load<f64>(0, GAS_FUEL);
  const rp = load<f64>(0, GAS_PRODUCT);
  const half = f64x2.splat(0.5);
  const one = f64x2.splat(1);
  const two = f64x2.splat(2);
  const vt0 = f64x2.splat(t0);
  const vdT = f64x2.splat(dT);
  const vPerStep = f64x2.splat(perStep);
  let fastest2 = f64x2.splat(0);
  let rate2 = f64x2.splat(0);
  let sum: f64 = 0;
  let carried = f64x2.splat(0);
  const end: usize = n << 3;
  // An odd last cell shares its pair with the spare room behind the arrays, whose NaN no comparison keeps.
  for (let at: usize = 0; at < end; at += 16) {
    const rho = v128.load(at, MASS);
    const inv = f64x2.div(one, rho);
    const u = f64x2.mul(v128.load(at, MOMENTUM), inv);
    const fuel = v128.load(at, FUEL_MASS);
    const product = v128.load(at, PRODUCT_MASS);
    const turbulence = v128.load(at, TURBULENCE);
    const progress = v128.load(at, PROGRESS);
    carried = v128.or(carried, v128.or(v128.or(fuel, product), v128.or(turbulence, progress)));
    const yf = f64x2.mul(fuel, inv);
    const yp = f64x2.mul(product, inv);
    const e = f64x2.sub(f64x2.mul(v128.load(at, ENERGY), inv), f64x2.mul(f64x2.mul(half, u), u));
    const x = f64x2.mul(f64x2.sub(v128.load(at, TEMPERATURE), vt0), vPerStep);
    const j0 = knot(f64x2.extract_lane(x, 0), last);
    const j1 = knot(f64x2.extract_lane(x, 1), last);
    const j = f64x2.replace_lane(f64x2.splat(<f64>j0), 1, <f64>j1);
    const o0: usize = j0 * 72;
    const o1: usize = j1 * 72;
    const f0 = v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 24), 1, TABLE + 24);
    const f1 = v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 32), 1, TABLE + 32);
    const f2 = v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 40), 1, TABLE + 40);
    const p0 = v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 48), 1, TABLE + 48);
    const p1 = v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 56), 1, TABLE + 56);
    const p2 = v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 64), 1, TABLE + 64);
    const b0 = f64x2.add(f64x2.add(v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE), 1, TABLE), f64x2.mul(yf, f0)), f64x2.mul(yp, p0));
    const b1 = f64x2.add(f64x2.add(v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 8), 1, TABLE + 8), f64x2.mul(yf, f1)), f64x2.mul(yp, p1));
    const b2 = f64x2.add(f64x2.add(v128.load_lane<f64>(o1, v128.load_zero<f64>(o0, TABLE + 16), 1, TABLE + 16), f64x2.mul(yf, f2)), f64x2.mul(yp, p2));
    let w = f64x2.sub(x, j);
    w = f64x2.sub(
      w,
      f64x2.div(
        f64x2.sub(f64x2.add(b0, f64x2.mul(w, f64x2.add(b1, f64x2.mul(w, b2)))), e),
        f64x2.add(b1, f64x2.mul(f64x2.mul(two, w), b2)),
      ),
    );
    const T = f64x2.add(vt0, f64x2.mul(f64x2.add(j, w), vdT));
    const cv = f64x2.mul(f64x2.add(b1, f64x2.mul(f64x2.mul(two, w), b2)), vPerStep);
    const r = f64x2.add(f64x2.add(f64x2.splat(ra), f64x2.mul(yf, f64x2.splat(rf))), f64x2.mul(yp, f64x2.splat(rp)));
    const rT = f64x2.mul(r, T);
    const p = f64x2.mul(rho, rT);
    const c = f64x2.sqrt(f64x2.mul(rT, f64x2.add(one, f64x2.div(r, cv))));
    v128.store(at, rho, DENSITY);
    v128.store(at, inv, SPECIFIC_VOLUME);
    v128.store(at, u, VELOCITY);
    v128.store(at, f64x2.mul(u, v128.load(at, MEAN_AREA)), VOLUME_FLOW);
    v128.store(at, p, PRESSURE);
    v128.store(at, T, TEMPERATURE);
    v128.store(at, c, SOUND_SPEED);
    v128.store(at, e, INTERNAL_ENERGY);
    v128.store(at, f64x2.add(e, rT), ENTHALPY);
    v128.store(at, cv, HEAT_CAPACITY);
    v128.store(at, yf, FUEL);
    v128.store(at, yp, PRODUCT);
    v128.store(at, f64x2.mul(turbulence, inv), K);
    v128.store(at, f64x2.mul(progress, inv), Z);
    v128.store(at, f64x2.add(f0, f64x2.mul(w, f64x2.add(f1, f64x2.mul(w, f2)))), FUEL_ENERGY);
    v128.store(at, f64x2.add(p0, f64x2.mul(w, f64x2.add(p1, f64x2.mul(w, p2)))), PRODUCT_ENERGY);
    const signal = f64x2.add(c, f64x2.abs(u));
    fastest2 = f64x2.pmax(fastest2, signal);
    rate2 = f64x2.pmax(rate2, f64x2.mul(signal, v128.load(at, PER_WIDTH)));
    // In the order of the cells, so that the sum has the reference's bits.
    sum += f64x2.extract_lane(p, 0);
    if (at + 8 < end) sum += f64x2.extract_lane(p, 1);
  }
  if (v128.any_true(carried)) store<f64>(0, 1, CARRIES);
  const fastest = larger(fastest2);
  store<f64>(0, sum > 0 ? fastest : NaN, FASTEST);
  store<f64>(0, larger(rate2), SOUND_RATE);
}
