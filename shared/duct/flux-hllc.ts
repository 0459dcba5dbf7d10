/**
 * Fluxes through the inner faces: the half-step states of ρ, uA, p and the scalars (half-step.ts), HLLC for the Euler part
 * (Toro, Spruce & Speares, Shock Waves 4 (1994) 25), upwind scalars on the HLLC mass flux, and turbulent axial mixing.
 *
 * With S_L, S_R the fastest signals and S_M = (p_R − p_L + ρ_L u_L (S_L − u_L) − ρ_R u_R (S_R − u_R)) /
 * (ρ_L (S_L − u_L) − ρ_R (S_R − u_R)), the flux between S_L and S_R is that of the star state on the side of S_M.
 * Volume flow uA, not u, is reconstructed and divided by the area of the face: across a sudden step of the bore u jumps but uA
 * does not, and a jump of u would act like a resistance that eats a third of a sound wave's energy each cycle, however fine
 * the grid.
 *
 * Uniform pressure and no motion give exactly (0, p, 0): gas at rest stays at rest in any A(x).
 *
 * Mixing: −ρ D_t A ∂φ/∂x for every scalar and for enthalpy (Lewis number 1).
 */
import type { Flow } from './flow.ts';

/** Cell area over face area up to which uA is carried to the face at any speed. */
const GENTLE_STEP = 1.25;

/**
 * Velocity at the face of a sudden step, m/s, given u already scaled by `step` = cell area/face area: gas that moves fast does
 * not follow uA = const there, so the scaling stops where it would turn subsonic flow sonic, or the reverse of that.
 */
function throughStep(scaled: number, step: number, soundSpeed: number): number {
  const speed = Math.abs(scaled) / step;
  const most = speed * GENTLE_STEP > soundSpeed ? GENTLE_STEP : soundSpeed / speed;
  if (step > most) return (scaled * most) / step;
  return step * most < 1 ? scaled / (most * step) : scaled;
}

/** Fills the flux arrays at faces 1 … cells − 1. Primitives, slopes and half-step states must be fresh. */
export function innerFluxes(flow: Flow): void {
  const n = flow.grid.cells;
  const { density, velocity, pressure, temperature, soundSpeed, internalEnergy, heatCapacity } = flow;
  const { enthalpy, fuel, product, k, z, fuelEnergy, productEnergy, mixing } = flow;
  const { massFlux, momentumFlux, energyFlux, fuelFlux, productFlux, turbulenceFlux, progressFlux } = flow;
  const { density: hd, flow: hv, pressure: hp, fuel: hf, product: hq, k: hk, z: hz } = flow.half;
  const { density: sd, flow: su, pressure: sp, fuel: sf, product: sq, k: sk, z: sz } = flow.slopes;
  const area = flow.grid.faceArea;
  const { volume, width } = flow.grid;
  const ra = flow.gas.gasConstant[0];
  const rf = flow.gas.gasConstant[1] - ra;
  const rp = flow.gas.gasConstant[2] - ra;
  for (let j = 1; j < n; j++) {
    const i = j - 1;
    let dl = hd[i] + 0.5 * sd[i];
    let pl = hp[i] + 0.5 * sp[i];
    let dr = hd[j] - 0.5 * sd[j];
    let pr = hp[j] - 0.5 * sp[j];
    const a = area[j];
    const perArea = 1 / a;
    let ul = (hv[i] + 0.5 * su[i]) * perArea;
    let ur = (hv[j] - 0.5 * su[j]) * perArea;
    const stepLeft = volume[i] * (1 / width[i]) * perArea;
    const stepRight = volume[j] * (1 / width[j]) * perArea;
    if (stepLeft > GENTLE_STEP || stepLeft * GENTLE_STEP < 1) ul = throughStep(ul, stepLeft, soundSpeed[i]);
    if (stepRight > GENTLE_STEP || stepRight * GENTLE_STEP < 1) ur = throughStep(ur, stepRight, soundSpeed[j]);
    if (!(dl > 0 && pl > 0 && dr > 0 && pr > 0)) {
      dl = density[i];
      pl = pressure[i];
      ul = velocity[i];
      dr = density[j];
      pr = pressure[j];
      ur = velocity[j];
    }
    const cl = soundSpeed[i];
    const cr = soundSpeed[j];
    const left = ul - cl < ur - cr ? ul - cl : ur - cr;
    const right = ul + cl > ur + cr ? ul + cl : ur + cr;
    const ml = dl * (left - ul);
    const mr = dr * (right - ur);
    const middle = (pr - pl + ul * ml - ur * mr) / (ml - mr);
    let mass: number;
    let yf: number;
    let yp: number;
    if (middle >= 0) {
      yf = hf[i] + 0.5 * sf[i];
      yp = hq[i] + 0.5 * sq[i];
      const t = pl / (dl * (ra + yf * rf + yp * rp));
      const e =
        internalEnergy[i] +
        heatCapacity[i] * (t - temperature[i]) +
        (yf - fuel[i]) * fuelEnergy[i] +
        (yp - product[i]) * productEnergy[i];
      const E = dl * (e + 0.5 * ul * ul);
      if (left >= 0) {
        mass = a * dl * ul;
        momentumFlux[j] = mass * ul + a * pl;
        energyFlux[j] = a * ul * (E + pl);
      } else {
        const g = 1 / (left - middle);
        const ps = pl + ml * (middle - ul);
        mass = a * ml * g * middle;
        momentumFlux[j] = mass * middle + a * ps;
        energyFlux[j] = a * middle * (((left - ul) * E - pl * ul + ps * middle) * g + ps);
      }
      turbulenceFlux[j] = mass * (hk[i] + 0.5 * sk[i]);
      progressFlux[j] = mass * (hz[i] + 0.5 * sz[i]);
    } else {
      yf = hf[j] - 0.5 * sf[j];
      yp = hq[j] - 0.5 * sq[j];
      const t = pr / (dr * (ra + yf * rf + yp * rp));
      const e =
        internalEnergy[j] +
        heatCapacity[j] * (t - temperature[j]) +
        (yf - fuel[j]) * fuelEnergy[j] +
        (yp - product[j]) * productEnergy[j];
      const E = dr * (e + 0.5 * ur * ur);
      if (right <= 0) {
        mass = a * dr * ur;
        momentumFlux[j] = mass * ur + a * pr;
        energyFlux[j] = a * ur * (E + pr);
      } else {
        const g = 1 / (right - middle);
        const ps = pr + mr * (middle - ur);
        mass = a * mr * g * middle;
        momentumFlux[j] = mass * middle + a * ps;
        energyFlux[j] = a * middle * (((right - ur) * E - pr * ur + ps * middle) * g + ps);
      }
      turbulenceFlux[j] = mass * (hk[j] - 0.5 * sk[j]);
      progressFlux[j] = mass * (hz[j] - 0.5 * sz[j]);
    }
    massFlux[j] = mass;
    fuelFlux[j] = mass * yf;
    productFlux[j] = mass * yp;
    const d = 0.5 * (mixing[i] + mixing[j]) * a * (2 / (width[i] + width[j]));
    if (d > 0) {
      energyFlux[j] -= d * (enthalpy[j] - enthalpy[i]);
      fuelFlux[j] -= d * (fuel[j] - fuel[i]);
      productFlux[j] -= d * (product[j] - product[i]);
      turbulenceFlux[j] -= d * (k[j] - k[i]);
      progressFlux[j] -= d * (z[j] - z[i]);
    }
  }
}
