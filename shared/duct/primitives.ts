/**
 * Primitive variables from conserved ones: ρ, u, T from e(T, Y), p = ρ R T, c² = γ p/ρ.
 *
 * T comes from one Newton step on the table's quadratic, begun at the cell's last temperature. A step changes T by a per
 * cent or so and Newton squares the error, so what remains (below 1e-5 T) is taken up by the next call; energy is conserved
 * whatever T is.
 */
import { recoverByKernel } from '../kernel/flow-kernel.ts';
import type { Flow } from './flow.ts';

/** Recovers all primitive variables. An unphysical state gives NaN in `flow.fastest`, which the caller must refuse. */
export function recoverPrimitives(flow: Flow): void {
  if (flow.kernel) {
    recoverByKernel(flow, flow.kernel);
    return;
  }
  const { mass, momentum, energy, fuelMass, productMass, turbulence, progress } = flow;
  const { density, velocity, pressure, temperature, soundSpeed, internalEnergy, heatCapacity } = flow;
  const { specificVolume, enthalpy, volumeFlow, fuel, product, k, z, fuelEnergy, productEnergy } = flow;
  const { volume, width } = flow.grid;
  const a = flow.gas.coefficients;
  const t0 = flow.gas.temperatureMin;
  const dT = flow.gas.temperatureStep;
  const perStep = 1 / dT;
  const last = flow.gas.intervals - 1;
  const ra = flow.gas.gasConstant[0];
  const rf = flow.gas.gasConstant[1] - ra;
  const rp = flow.gas.gasConstant[2] - ra;
  const n = flow.grid.cells;
  let fastest = 0;
  let soundRate = 0;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const rho = mass[i];
    const inv = 1 / rho;
    const u = momentum[i] * inv;
    const yf = fuelMass[i] * inv;
    const yp = productMass[i] * inv;
    const e = energy[i] * inv - 0.5 * u * u;
    const x = (temperature[i] - t0) * perStep;
    let j = x | 0;
    if (j > last) j = last;
    if (j < 0) j = 0;
    const o = j * 9;
    const a0 = a[o];
    const a1 = a[o + 1];
    const a2 = a[o + 2];
    const f0 = a[o + 3] - a0;
    const f1 = a[o + 4] - a1;
    const f2 = a[o + 5] - a2;
    const p0 = a[o + 6] - a0;
    const p1 = a[o + 7] - a1;
    const p2 = a[o + 8] - a2;
    const b0 = a0 + yf * f0 + yp * p0;
    const b1 = a1 + yf * f1 + yp * p1;
    const b2 = a2 + yf * f2 + yp * p2;
    let w = x - j;
    w -= (b0 + w * (b1 + w * b2) - e) / (b1 + 2 * w * b2);
    const T = t0 + (j + w) * dT;
    const cv = (b1 + 2 * w * b2) * perStep;
    const r = ra + yf * rf + yp * rp;
    const rT = r * T;
    const p = rho * rT;
    const c = Math.sqrt(rT * (1 + r / cv));
    density[i] = rho;
    specificVolume[i] = inv;
    velocity[i] = u;
    const perWidth = 1 / width[i];
    volumeFlow[i] = u * (volume[i] * perWidth);
    pressure[i] = p;
    temperature[i] = T;
    soundSpeed[i] = c;
    internalEnergy[i] = e;
    enthalpy[i] = e + rT;
    heatCapacity[i] = cv;
    fuel[i] = yf;
    product[i] = yp;
    k[i] = turbulence[i] * inv;
    z[i] = progress[i] * inv;
    fuelEnergy[i] = f0 + w * (f1 + w * f2);
    productEnergy[i] = p0 + w * (p1 + w * p2);
    const s = u < 0 ? c - u : c + u;
    if (s > fastest) fastest = s;
    if (s * perWidth > soundRate) soundRate = s * perWidth;
    sum += p;
  }
  // One unphysical cell spoils the sum, so that the caller sees it at once.
  flow.fastest = sum > 0 ? fastest : Number.NaN;
  flow.soundRate = soundRate;
}

/** Repeats the Newton step until temperatures stand still; for initial states far from the first guess. */
export function settleTemperatures(flow: Flow): void {
  for (let n = 0; n < 30; n++) recoverPrimitives(flow);
}
