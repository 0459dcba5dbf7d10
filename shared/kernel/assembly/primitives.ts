/** shared/duct/primitives.ts, two cells at a time, operation for operation. */
import {
  DENSITY, ENERGY, FASTEST, FUEL, FUEL_ENERGY, FUEL_MASS, GAS_AIR, GAS_FUEL, GAS_PRODUCT, HEAT_CAPACITY,
  INTERNAL_ENERGY, INTERVALS, K, MASS, MOMENTUM, PRESSURE, PRODUCT, PRODUCT_ENERGY, PRODUCT_MASS, PROGRESS, SOUND_SPEED,
  TABLE, TEMPERATURE, TEMPERATURE_MIN, TEMPERATURE_STEP, TURBULENCE, VELOCITY, Z,
} from '../layout';
import { knot } from './knot';

// @ts-ignore: decorator of AssemblyScript
@inline
function pair(first: usize, second: usize, offset: usize): v128 {
  return v128.load_lane<f64>(second + offset, v128.load_zero<f64>(first + offset), 1);
}

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
  let sum: f64 = 0;
  const end: usize = n << 3;
  const pairs: usize = (n & ~1) << 3;
  let at: usize = 0;
  for (; at < pairs; at += 16) {
    const rho = v128.load(at, MASS);
    const inv = f64x2.div(one, rho);
    const u = f64x2.mul(v128.load(at, MOMENTUM), inv);
    const yf = f64x2.mul(v128.load(at, FUEL_MASS), inv);
    const yp = f64x2.mul(v128.load(at, PRODUCT_MASS), inv);
    const e = f64x2.sub(f64x2.mul(v128.load(at, ENERGY), inv), f64x2.mul(f64x2.mul(half, u), u));
    const x = f64x2.mul(f64x2.sub(v128.load(at, TEMPERATURE), vt0), vPerStep);
    const j0 = knot(f64x2.extract_lane(x, 0), last);
    const j1 = knot(f64x2.extract_lane(x, 1), last);
    const j = f64x2.replace_lane(f64x2.splat(<f64>j0), 1, <f64>j1);
    const o0: usize = j0 * 72;
    const o1: usize = j1 * 72;
    const f0 = pair(o0, o1, TABLE + 24);
    const f1 = pair(o0, o1, TABLE + 32);
    const f2 = pair(o0, o1, TABLE + 40);
    const p0 = pair(o0, o1, TABLE + 48);
    const p1 = pair(o0, o1, TABLE + 56);
    const p2 = pair(o0, o1, TABLE + 64);
    const b0 = f64x2.add(f64x2.add(pair(o0, o1, TABLE), f64x2.mul(yf, f0)), f64x2.mul(yp, p0));
    const b1 = f64x2.add(f64x2.add(pair(o0, o1, TABLE + 8), f64x2.mul(yf, f1)), f64x2.mul(yp, p1));
    const b2 = f64x2.add(f64x2.add(pair(o0, o1, TABLE + 16), f64x2.mul(yf, f2)), f64x2.mul(yp, p2));
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
    const p = f64x2.mul(f64x2.mul(rho, r), T);
    const c = f64x2.sqrt(f64x2.mul(f64x2.mul(r, T), f64x2.add(one, f64x2.div(r, cv))));
    v128.store(at, rho, DENSITY);
    v128.store(at, u, VELOCITY);
    v128.store(at, p, PRESSURE);
    v128.store(at, T, TEMPERATURE);
    v128.store(at, c, SOUND_SPEED);
    v128.store(at, e, INTERNAL_ENERGY);
    v128.store(at, cv, HEAT_CAPACITY);
    v128.store(at, yf, FUEL);
    v128.store(at, yp, PRODUCT);
    v128.store(at, f64x2.mul(v128.load(at, TURBULENCE), inv), K);
    v128.store(at, f64x2.mul(v128.load(at, PROGRESS), inv), Z);
    v128.store(at, f64x2.add(f0, f64x2.mul(w, f64x2.add(f1, f64x2.mul(w, f2)))), FUEL_ENERGY);
    v128.store(at, f64x2.add(p0, f64x2.mul(w, f64x2.add(p1, f64x2.mul(w, p2)))), PRODUCT_ENERGY);
    fastest2 = f64x2.pmax(fastest2, f64x2.add(c, f64x2.abs(u)));
    // In the order of the cells, so that the sum has the reference's bits.
    sum += f64x2.extract_lane(p, 0);
    sum += f64x2.extract_lane(p, 1);
  }
  let fastest = f64x2.extract_lane(fastest2, 0);
  if (f64x2.extract_lane(fastest2, 1) > fastest) fastest = f64x2.extract_lane(fastest2, 1);
  if (at < end) {
    const rho = load<f64>(at, MASS);
    const inv = 1 / rho;
    const u = load<f64>(at, MOMENTUM) * inv;
    const yf = load<f64>(at, FUEL_MASS) * inv;
    const yp = load<f64>(at, PRODUCT_MASS) * inv;
    const e = load<f64>(at, ENERGY) * inv - 0.5 * u * u;
    const x = (load<f64>(at, TEMPERATURE) - t0) * perStep;
    const j = knot(x, last);
    const o: usize = j * 72;
    const f0 = load<f64>(o, TABLE + 24);
    const f1 = load<f64>(o, TABLE + 32);
    const f2 = load<f64>(o, TABLE + 40);
    const p0 = load<f64>(o, TABLE + 48);
    const p1 = load<f64>(o, TABLE + 56);
    const p2 = load<f64>(o, TABLE + 64);
    const b0 = load<f64>(o, TABLE) + yf * f0 + yp * p0;
    const b1 = load<f64>(o, TABLE + 8) + yf * f1 + yp * p1;
    const b2 = load<f64>(o, TABLE + 16) + yf * f2 + yp * p2;
    let w = x - <f64>j;
    w -= (b0 + w * (b1 + w * b2) - e) / (b1 + 2 * w * b2);
    const T = t0 + (<f64>j + w) * dT;
    const cv = (b1 + 2 * w * b2) * perStep;
    const r = ra + yf * rf + yp * rp;
    const p = rho * r * T;
    const c = Math.sqrt(r * T * (1 + r / cv));
    store<f64>(at, rho, DENSITY);
    store<f64>(at, u, VELOCITY);
    store<f64>(at, p, PRESSURE);
    store<f64>(at, T, TEMPERATURE);
    store<f64>(at, c, SOUND_SPEED);
    store<f64>(at, e, INTERNAL_ENERGY);
    store<f64>(at, cv, HEAT_CAPACITY);
    store<f64>(at, yf, FUEL);
    store<f64>(at, yp, PRODUCT);
    store<f64>(at, load<f64>(at, TURBULENCE) * inv, K);
    store<f64>(at, load<f64>(at, PROGRESS) * inv, Z);
    store<f64>(at, f0 + w * (f1 + w * f2), FUEL_ENERGY);
    store<f64>(at, p0 + w * (p1 + w * p2), PRODUCT_ENERGY);
    const s = c + Math.abs(u);
    if (s > fastest) fastest = s;
    sum += p;
  }
  store<f64>(0, sum > 0 ? fastest : NaN, FASTEST);
}
