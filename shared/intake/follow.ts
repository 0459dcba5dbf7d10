/**
 * Whether a valve can follow: the force that suction offers against the force that its mass and spring need.
 *
 * To lift mass m by the full lift L within half of the suction window t_w at constant acceleration takes
 *   F_needed = 2 m L/(t_w/2)² + F₀ + k L/2,       F_offered = mean suction · area
 * Half, because a valve that opens later admits too little in what is left (common practice, no source).
 */

/** One valve and the suction that it sees. SI. */
export interface FollowInput {
  mass: number;
  lift: number;
  preload: number;
  stiffness: number;
  pressureArea: number;
  count: number;
  /** Mean suction over the window, Pa, and the window, s. */
  suction: number;
  window: number;
}

export interface FollowAnswer {
  offered: number;
  needed: number;
  ratio: number;
}

/** Share of the suction window in which a valve that follows has opened. */
const OPENING_SHARE = 1 / 2;

/** Forces in N and their ratio; below 1 the valve does not follow. */
export function followForces(v: FollowInput): FollowAnswer {
  const t = OPENING_SHARE * v.window;
  const offered = v.suction * v.pressureArea;
  const needed = (2 * v.mass * v.lift) / (t * t) + v.preload + 0.5 * v.stiffness * v.lift;
  return { offered, needed, ratio: offered / needed };
}

/** Time that the offered force takes to lift the valve fully, s; null when it cannot overcome preload and spring. */
export function openingTime(v: FollowInput): number | null {
  const net = v.suction * v.pressureArea - v.preload - 0.5 * v.stiffness * v.lift;
  return net > 0 ? Math.sqrt((2 * v.mass * v.lift) / net) : null;
}

export interface FollowCures {
  mass: number | null;
  lift: number | null;
  stiffness: number | null;
  valves: number | null;
}

/**
 * The mass (kg), lift (m), stiffness (N/m) or number of valves at which, each alone, offered equals needed; null where that
 * one cannot cure it. More valves means the same total port area in valves scaled alike (mass as size cubed, same
 * natural frequency).
 */
export function followCures(v: FollowInput): FollowCures {
  const t = OPENING_SHARE * v.window;
  const spare = v.suction * v.pressureArea - v.preload;
  const inertia = (2 * v.mass) / (t * t);
  const positive = (x: number) => (Number.isFinite(x) && x > 0 ? x : null);
  const scale = spare > 0 ? (inertia * v.lift + 0.5 * v.stiffness * v.lift) / spare : Number.NaN;
  return {
    mass: positive(((spare - 0.5 * v.stiffness * v.lift) * t * t) / (2 * v.lift)),
    lift: positive(spare / (inertia + 0.5 * v.stiffness)),
    stiffness: positive((2 * (spare - inertia * v.lift)) / v.lift),
    valves: scale > 1 ? Math.ceil(v.count * scale) : null,
  };
}
