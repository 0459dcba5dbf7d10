/** shared/duct/half-step.ts, two cells at a time. */
import {
  AREA_CHANGE, CARRIES, DENSITY, FUEL, HALF_DENSITY, HALF_FLOW, HALF_FUEL, HALF_K, HALF_PRESSURE, HALF_PRODUCT, HALF_Z, K,
  MEAN_AREA, PER_MEAN_AREA, PER_WIDTH, PRESSURE, PRODUCT, SLOPE_DENSITY, SLOPE_FLOW, SLOPE_FUEL, SLOPE_K, SLOPE_PRESSURE,
  SLOPE_PRODUCT, SLOPE_Z, SOUND_SPEED, SPECIFIC_VOLUME, STEP, VELOCITY, VOLUME_FLOW, Z,
} from '../layout';
import { limited } from './limiter';

// @ts-ignore: decorator of AssemblyScript
@inline
function less(value: v128, ahead: v128, slope: v128): v128 {
  return f64x2.sub(value, f64x2.mul(ahead, slope));
}

/** An end cell at byte offset i: no slopes, no change. */
function keep(i: usize): void {
  store<f64>(i, 0, SLOPE_DENSITY);
  store<f64>(i, 0, SLOPE_FLOW);
  store<f64>(i, 0, SLOPE_PRESSURE);
  store<f64>(i, 0, SLOPE_FUEL);
  store<f64>(i, 0, SLOPE_PRODUCT);
  store<f64>(i, 0, SLOPE_K);
  store<f64>(i, 0, SLOPE_Z);
  store<f64>(i, load<f64>(i, DENSITY), HALF_DENSITY);
  store<f64>(i, load<f64>(i, VOLUME_FLOW), HALF_FLOW);
  store<f64>(i, load<f64>(i, PRESSURE), HALF_PRESSURE);
  store<f64>(i, load<f64>(i, FUEL), HALF_FUEL);
  store<f64>(i, load<f64>(i, PRODUCT), HALF_PRODUCT);
  store<f64>(i, load<f64>(i, K), HALF_K);
  store<f64>(i, load<f64>(i, Z), HALF_Z);
}

export function predictHalfStep(n: i32): void {
  const halfStep = f64x2.splat(0.5 * load<f64>(0, STEP));
  const last: usize = (n - 1) << 3;
  const carries = load<f64>(0, CARRIES) != 0;
  // `at` is the cell before the pair. The last pair may reach the end cell, which is put right afterwards.
  for (let at: usize = 0; at + 8 < last; at += 16) {
    const rho = v128.load(at, DENSITY + 8);
    const p = v128.load(at, PRESSURE + 8);
    const flow = v128.load(at, VOLUME_FLOW + 8);
    const u = v128.load(at, VELOCITY + 8);
    const c = v128.load(at, SOUND_SPEED + 8);
    const sd = limited(v128.load(at, DENSITY), rho, v128.load(at, DENSITY + 16));
    const sv = limited(v128.load(at, VOLUME_FLOW), flow, v128.load(at, VOLUME_FLOW + 16));
    const sp = limited(v128.load(at, PRESSURE), p, v128.load(at, PRESSURE + 16));
    v128.store(at, sd, SLOPE_DENSITY + 8);
    v128.store(at, sv, SLOPE_FLOW + 8);
    v128.store(at, sp, SLOPE_PRESSURE + 8);
    const ratio = f64x2.mul(halfStep, v128.load(at, PER_WIDTH + 8));
    const ahead = f64x2.mul(ratio, u);
    const spread = f64x2.mul(f64x2.mul(ratio, v128.load(at, PER_MEAN_AREA + 8)), sv);
    v128.store(at, f64x2.sub(rho, f64x2.add(f64x2.mul(ahead, sd), f64x2.mul(spread, rho))), HALF_DENSITY + 8);
    const stiffness = f64x2.mul(f64x2.mul(rho, c), c);
    v128.store(at, f64x2.sub(p, f64x2.add(f64x2.mul(ahead, sp), f64x2.mul(spread, stiffness))), HALF_PRESSURE + 8);
    const steepening = f64x2.sub(sv, f64x2.mul(u, v128.load(at, AREA_CHANGE + 8)));
    const push = f64x2.mul(
      f64x2.mul(ratio, v128.load(at, MEAN_AREA + 8)),
      f64x2.mul(sp, v128.load(at, SPECIFIC_VOLUME + 8)),
    );
    v128.store(at, f64x2.sub(flow, f64x2.add(f64x2.mul(ahead, steepening), push)), HALF_FLOW + 8);
    if (!carries) continue;
    const yf = v128.load(at, FUEL + 8);
    const sf = limited(v128.load(at, FUEL), yf, v128.load(at, FUEL + 16));
    v128.store(at, sf, SLOPE_FUEL + 8);
    v128.store(at, less(yf, ahead, sf), HALF_FUEL + 8);
    const yp = v128.load(at, PRODUCT + 8);
    const sq = limited(v128.load(at, PRODUCT), yp, v128.load(at, PRODUCT + 16));
    v128.store(at, sq, SLOPE_PRODUCT + 8);
    v128.store(at, less(yp, ahead, sq), HALF_PRODUCT + 8);
    const k = v128.load(at, K + 8);
    const sk = limited(v128.load(at, K), k, v128.load(at, K + 16));
    v128.store(at, sk, SLOPE_K + 8);
    v128.store(at, less(k, ahead, sk), HALF_K + 8);
    const z = v128.load(at, Z + 8);
    const sz = limited(v128.load(at, Z), z, v128.load(at, Z + 16));
    v128.store(at, sz, SLOPE_Z + 8);
    v128.store(at, less(z, ahead, sz), HALF_Z + 8);
  }
  keep(0);
  keep(last);
}
