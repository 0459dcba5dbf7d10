/**
 * Exact solution of the Riemann problem for a γ-law gas: what follows when a wall between two uniform gases vanishes.
 *
 *     f(p*, left) + f(p*, right) + u_right − u_left = 0
 *     f(p, K) = (p − p_K) √(A_K / (p + B_K))                      p > p_K, a shock;  A = 2/((γ+1)ρ), B = p (γ−1)/(γ+1)
 *     f(p, K) = 2 a_K/(γ−1) · ((p/p_K)^((γ−1)/2γ) − 1)            p ≤ p_K, a rarefaction
 *
 * Source: Godunov's scheme as laid out in Toro, "Riemann Solvers and Numerical Methods for Fluid Dynamics", ch. 4.
 */

export interface GasState {
  /** kg/m³. */
  density: number;
  /** m/s. */
  velocity: number;
  /** Pa. */
  pressure: number;
}

export interface StarState {
  pressure: number;
  velocity: number;
  densityLeft: number;
  densityRight: number;
}

/** State between the two waves. Throws RangeError for impossible states and when a vacuum opens. */
export function starState(left: GasState, right: GasState, gamma: number): StarState {
  for (const state of [left, right]) {
    if (!(state.density > 0) || !(state.pressure > 0)) {
      throw new RangeError('A Riemann problem needs density and pressure above zero on both sides.');
    }
  }
  const aLeft = soundSpeed(left, gamma);
  const aRight = soundSpeed(right, gamma);
  if (right.velocity - left.velocity >= (2 / (gamma - 1)) * (aLeft + aRight)) {
    throw new RangeError(
      'The two gases part so fast that a vacuum opens between them; the solution here does not cover that.',
    );
  }
  const mismatch = (p: number) =>
    waveVelocity(p, left, gamma) + waveVelocity(p, right, gamma) + right.velocity - left.velocity;
  let low = 0;
  let high = Math.max(left.pressure, right.pressure);
  while (mismatch(high) < 0) high *= 2;
  // mismatch grows with p, so halving always ends at the root; 200 halvings reach round-off from any start.
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = 0.5 * (low + high);
    if (mismatch(middle) < 0) low = middle;
    else high = middle;
  }
  const pressure = 0.5 * (low + high);
  const velocity =
    0.5 * (left.velocity + right.velocity) +
    0.5 * (waveVelocity(pressure, right, gamma) - waveVelocity(pressure, left, gamma));
  return {
    pressure,
    velocity,
    densityLeft: starDensity(pressure, left, gamma),
    densityRight: starDensity(pressure, right, gamma),
  };
}

/** State on the ray x/t = speed, m/s, with the wall at x = 0. */
export function riemannState(
  left: GasState,
  right: GasState,
  gamma: number,
  speed: number,
  star = starState(left, right, gamma),
): GasState {
  if (speed <= star.velocity) {
    return oneSide(left, star.pressure, star.velocity, star.densityLeft, gamma, speed);
  }
  // The right side is the left side seen in a mirror.
  const mirrored = oneSide(
    { ...right, velocity: -right.velocity },
    star.pressure,
    -star.velocity,
    star.densityRight,
    gamma,
    -speed,
  );
  return { ...mirrored, velocity: -mirrored.velocity };
}

function oneSide(
  outer: GasState,
  pStar: number,
  uStar: number,
  densityStar: number,
  gamma: number,
  speed: number,
): GasState {
  const a = soundSpeed(outer, gamma);
  const inner = { density: densityStar, velocity: uStar, pressure: pStar };
  if (pStar > outer.pressure) {
    const ratio = pStar / outer.pressure;
    const shock = outer.velocity - a * Math.sqrt(((gamma + 1) / (2 * gamma)) * ratio + (gamma - 1) / (2 * gamma));
    return speed < shock ? outer : inner;
  }
  const head = outer.velocity - a;
  const tail = uStar - Math.sqrt((gamma * pStar) / densityStar);
  if (speed <= head) return outer;
  if (speed >= tail) return inner;
  const aFan = (2 / (gamma + 1)) * (a + ((gamma - 1) / 2) * (outer.velocity - speed));
  return {
    density: outer.density * (aFan / a) ** (2 / (gamma - 1)),
    velocity: speed + aFan,
    pressure: outer.pressure * (aFan / a) ** ((2 * gamma) / (gamma - 1)),
  };
}

/** Change of velocity across the wave that joins a state to pressure p. */
function waveVelocity(p: number, state: GasState, gamma: number): number {
  if (p > state.pressure) {
    const a = 2 / ((gamma + 1) * state.density);
    const b = (state.pressure * (gamma - 1)) / (gamma + 1);
    return (p - state.pressure) * Math.sqrt(a / (p + b));
  }
  return ((2 * soundSpeed(state, gamma)) / (gamma - 1)) * ((p / state.pressure) ** ((gamma - 1) / (2 * gamma)) - 1);
}

function starDensity(p: number, state: GasState, gamma: number): number {
  const ratio = p / state.pressure;
  const g = (gamma - 1) / (gamma + 1);
  return p > state.pressure ? (state.density * (ratio + g)) / (g * ratio + 1) : state.density * ratio ** (1 / gamma);
}

function soundSpeed(state: GasState, gamma: number): number {
  return Math.sqrt((gamma * state.pressure) / state.density);
}
