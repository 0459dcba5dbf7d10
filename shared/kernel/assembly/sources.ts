/** shared/combustion/cell-sources.ts, two cells at a time; cells that burn are finished one at a time. */
import {
  AIR_FUEL, AREA_CHANGE, AXIAL_MIXING, BURN_RATE, DELAY, DIAMETER, EDDY_SIZE, ENERGY, FILM_HEAT, FILM_TIME,
  FRICTION_IMPULSE, FUEL, FUEL_ENERGY, FUEL_MASS, HALF_FRICTION, HEATING_VALUE, HEAT_CAPACITY, HEAT_RELEASED, IGNITION_MIXING,
  INTERNAL_ENERGY, INTERVALS, LOSS_BACKWARD, LOSS_FORWARD, MASS, MIXING, MIXING_RATE, MOMENTUM, ONSET, PER_EDDY, PER_RANGE, PER_VOLUME, PER_WIDTH,
  PRODUCT, PRODUCT_ENERGY, PRODUCT_MASS, PRODUCT_SHARE, PROGRESS, QUENCHED, STEP, TEMPERATURE, TEMPERATURE_MIN,
  TEMPERATURE_STEP, TURBULENCE, TURBULENCE_DECAY, VOLUME, WALL_AREA, WALL_HEAT, WALL_TEMPERATURE, WALL_TURBULENCE,
  WIDENING_IMPULSE,
} from '../layout';
import { knot } from './knot';
import { larger } from './lanes';

/** The host's Math.exp, so that both paths agree to the last bit. */
// @ts-ignore: decorator of AssemblyScript
@external("host", "exp")
declare function exp(x: f64): f64;

const COLBURN: f64 = 1.245;
const TURBULENCE_FLOOR: f64 = 0.01;
const SPARK_PRODUCTS: f64 = 0.08;

/** Burns one cell; returns the fuel burnt, kg/m³. */
function burn(at: usize, rho: f64, yf: f64, yp: f64, ya: f64, chi: f64, turnover: f64, sparked: bool): f64 {
  const afr = load<f64>(0, AIR_FUEL);
  let s = (chi - load<f64>(0, ONSET)) * load<f64>(0, PER_RANGE);
  s = s >= 1 ? 1 : s * s * (3 - 2 * s);
  const air = ya * (1 / afr);
  const hot = load<f64>(0, PRODUCT_SHARE) * (sparked && yp < SPARK_PRODUCTS ? SPARK_PRODUCTS : yp);
  let least = yf < air ? yf : air;
  if (hot < least) least = hot;
  const rate = load<f64>(0, BURN_RATE) * turnover * s * load<f64>(0, STEP);
  const burnt = rho * least * (rate < 0.05 ? rate : 1 - exp(-rate));
  store<f64>(at, load<f64>(at, FUEL_MASS) - burnt, FUEL_MASS);
  store<f64>(at, load<f64>(at, PRODUCT_MASS) + burnt * (1 + afr), PRODUCT_MASS);
  return burnt;
}

/** Chemical delay at a place in the table, s. */
// @ts-ignore: decorator of AssemblyScript
@inline
function chemicalDelay(x: f64, last: i32): f64 {
  const j = knot(x, last);
  const at: usize = j << 3;
  const low = load<f64>(at, DELAY);
  return low + (x - <f64>j) * (load<f64>(at, DELAY + 8) - low);
}

/** A bit for each of cells i and i + 1 that lies in from … to − 1. */
// @ts-ignore: decorator of AssemblyScript
@inline
function within(i: i32, from: i32, to: i32): i32 {
  return i32(i >= from && i < to) | (i32(i + 1 >= from && i + 1 < to) << 1);
}

/**
 * Sources of one step in n cells. Cells before sparkEnd are sparked; without a spark it is 0. With an odd n the last pair's
 * second cell lies behind the end of the duct: it is computed in the spare room and stays out of the sums.
 */
export function applyCellSources(n: i32, chamberStart: i32, chamberEnd: i32, sparkEnd: i32): void {
  const one = f64x2.splat(1);
  const zero = f64x2.splat(0);
  const dt = f64x2.splat(load<f64>(0, STEP));
  const halfFriction = f64x2.splat(load<f64>(0, HALF_FRICTION));
  let heatReleased: f64 = 0;
  let wallHeat: f64 = 0;
  let frictionImpulse: f64 = 0;
  let wideningImpulse: f64 = 0;
  // The spare room behind an odd last cell holds NaN here, which no comparison keeps.
  let mixingRate = zero;
  for (let i = 0; i < n; i += 2) {
    const at: usize = i << 3;
    const alone = i + 1 == n;
    const inChamber = within(i, chamberStart, chamberEnd);
    const sparked = within(i, chamberStart, sparkEnd);
    const rho = v128.load(at, MASS);
    const inv = f64x2.div(one, rho);
    const perV = v128.load(at, PER_VOLUME);
    const u = f64x2.mul(v128.load(at, MOMENTUM), inv);
    const yf = f64x2.mul(v128.load(at, FUEL_MASS), inv);
    const yp = f64x2.mul(v128.load(at, PRODUCT_MASS), inv);
    const cv = v128.load(at, HEAT_CAPACITY);
    const gained = f64x2.sub(
      f64x2.sub(f64x2.mul(v128.load(at, ENERGY), inv), f64x2.mul(f64x2.splat(0.5), f64x2.mul(u, u))),
      v128.load(at, INTERNAL_ENERGY),
    );
    const remixed = f64x2.add(
      f64x2.mul(f64x2.sub(yf, v128.load(at, FUEL)), v128.load(at, FUEL_ENERGY)),
      f64x2.mul(f64x2.sub(yp, v128.load(at, PRODUCT)), v128.load(at, PRODUCT_ENERGY)),
    );
    const T = f64x2.add(v128.load(at, TEMPERATURE), f64x2.div(f64x2.sub(gained, remixed), cv));
    const k = f64x2.pmax(f64x2.mul(v128.load(at, TURBULENCE), inv), f64x2.splat(TURBULENCE_FLOOR));
    const rootK = f64x2.sqrt(k);
    const eddy = f64x2.mul(f64x2.splat(load<f64>(0, EDDY_SIZE)), v128.load(at, DIAMETER));
    const turnover = f64x2.mul(rootK, v128.load(at, PER_EDDY));
    const diffusion = f64x2.mul(f64x2.mul(f64x2.splat(load<f64>(0, AXIAL_MIXING)), rootK), eddy);
    v128.store(at, f64x2.mul(rho, diffusion), MIXING);
    const perWidth = v128.load(at, PER_WIDTH);
    mixingRate = f64x2.pmax(mixingRate, f64x2.mul(f64x2.mul(diffusion, perWidth), perWidth));

    const speed = f64x2.sqrt(f64x2.add(f64x2.mul(u, u), f64x2.mul(f64x2.splat(load<f64>(0, WALL_TURBULENCE)), k)));
    const wallArea = v128.load(at, WALL_AREA);
    const drag = f64x2.mul(f64x2.mul(f64x2.mul(halfFriction, rho), speed), wallArea);
    const friction = f64x2.mul(f64x2.mul(drag, u), dt);
    const heatCapacity = f64x2.add(cv, f64x2.splat(287));
    const film = f64x2.mul(
      f64x2.mul(f64x2.mul(f64x2.mul(halfFriction, rho), speed), heatCapacity),
      f64x2.splat(COLBURN),
    );
    const heat = f64x2.mul(
      f64x2.mul(f64x2.mul(film, wallArea), f64x2.sub(T, v128.load(at, WALL_TEMPERATURE))),
      dt,
    );
    v128.store(at, f64x2.add(v128.load(at, FILM_TIME), f64x2.mul(film, dt)), FILM_TIME);
    v128.store(at, f64x2.add(v128.load(at, FILM_HEAT), f64x2.mul(f64x2.mul(film, T), dt)), FILM_HEAT);
    const share = v128.bitselect(v128.load(at, LOSS_FORWARD), v128.load(at, LOSS_BACKWARD), f64x2.gt(u, zero));
    const across = f64x2.abs(f64x2.mul(u, v128.load(at, AREA_CHANGE)));
    const widening = v128.and(
      f64x2.mul(f64x2.mul(f64x2.mul(f64x2.mul(share, rho), u), across), dt),
      f64x2.gt(share, zero),
    );
    const loss = f64x2.add(friction, widening);
    v128.store(at, f64x2.sub(v128.load(at, MOMENTUM), f64x2.mul(loss, perV)), MOMENTUM);
    frictionImpulse += f64x2.extract_lane(friction, 0);
    wideningImpulse += f64x2.extract_lane(widening, 0);
    wallHeat += f64x2.extract_lane(heat, 0);
    if (!alone) {
      frictionImpulse += f64x2.extract_lane(friction, 1);
      wideningImpulse += f64x2.extract_lane(widening, 1);
      wallHeat += f64x2.extract_lane(heat, 1);
    }

    const made = f64x2.mul(f64x2.mul(f64x2.mul(loss, u), perV), inv);
    const decay = f64x2.mul(f64x2.mul(f64x2.splat(load<f64>(0, TURBULENCE_DECAY)), turnover), dt);
    v128.store(at, f64x2.mul(rho, f64x2.div(f64x2.add(k, made), f64x2.add(one, decay))), TURBULENCE);

    const ya = f64x2.sub(f64x2.sub(one, yf), yp);
    const fresh = f64x2.gt(ya, f64x2.splat(1e-4));
    const air = f64x2.mul(rho, ya);
    let released = zero;
    let burntAir = zero;
    let chi = zero;
    if (v128.any_true(fresh)) {
      chi = f64x2.pmax(f64x2.div(v128.load(at, PROGRESS), air), zero);
      const mixingDelay = f64x2.div(f64x2.splat(load<f64>(0, IGNITION_MIXING)), turnover);
      const x = f64x2.mul(
        f64x2.sub(T, f64x2.splat(load<f64>(0, TEMPERATURE_MIN))),
        f64x2.splat(1 / load<f64>(0, TEMPERATURE_STEP)),
      );
      const last = <i32>load<f64>(0, INTERVALS) - 1;
      const chemical = f64x2.replace_lane(
        f64x2.splat(chemicalDelay(f64x2.extract_lane(x, 0), last)),
        1,
        chemicalDelay(f64x2.extract_lane(x, 1), last),
      );
      let delay = f64x2.add(mixingDelay, chemical);
      if (sparked != 0) {
        const lanes = i64x2.replace_lane(i64x2.splat(-(<i64>(sparked & 1))), 1, -(<i64>(sparked >> 1)));
        delay = v128.bitselect(mixingDelay, delay, lanes);
      }
      const quenched = load<f64>(0, QUENCHED);
      const quench = f64x2.replace_lane(f64x2.splat(inChamber & 1 ? quenched : 1), 1, inChamber & 2 ? quenched : 1);
      chi = f64x2.pmin(f64x2.add(chi, f64x2.div(f64x2.mul(dt, quench), delay)), one);
      const burns = v128.and(
        v128.and(fresh, f64x2.gt(chi, f64x2.splat(load<f64>(0, ONSET)))),
        f64x2.gt(yf, f64x2.splat(1e-9)),
      );
      if (v128.any_true(burns)) {
        const afr = load<f64>(0, AIR_FUEL);
        const lhv = load<f64>(0, HEATING_VALUE);
        if (i64x2.extract_lane(burns, 0) != 0) {
          const burnt = burn(
            at,
            f64x2.extract_lane(rho, 0),
            f64x2.extract_lane(yf, 0),
            f64x2.extract_lane(yp, 0),
            f64x2.extract_lane(ya, 0),
            f64x2.extract_lane(chi, 0),
            f64x2.extract_lane(turnover, 0),
            (sparked & 1) != 0,
          );
          burntAir = f64x2.replace_lane(burntAir, 0, burnt * afr);
          released = f64x2.replace_lane(released, 0, burnt * lhv);
          heatReleased += burnt * lhv * load<f64>(at, VOLUME);
        }
        if (!alone && i64x2.extract_lane(burns, 1) != 0) {
          const burnt = burn(
            at + 8,
            f64x2.extract_lane(rho, 1),
            f64x2.extract_lane(yf, 1),
            f64x2.extract_lane(yp, 1),
            f64x2.extract_lane(ya, 1),
            f64x2.extract_lane(chi, 1),
            f64x2.extract_lane(turnover, 1),
            (sparked & 2) != 0,
          );
          burntAir = f64x2.replace_lane(burntAir, 1, burnt * afr);
          released = f64x2.replace_lane(released, 1, burnt * lhv);
          heatReleased += burnt * lhv * load<f64>(at + 8, VOLUME);
        }
      }
    }
    v128.store(at, v128.and(f64x2.mul(chi, f64x2.sub(air, burntAir)), fresh), PROGRESS);
    v128.store(
      at,
      f64x2.add(v128.load(at, ENERGY), f64x2.sub(released, f64x2.mul(heat, perV))),
      ENERGY,
    );
  }
  store<f64>(0, heatReleased, HEAT_RELEASED);
  store<f64>(0, wallHeat, WALL_HEAT);
  store<f64>(0, frictionImpulse, FRICTION_IMPULSE);
  store<f64>(0, wideningImpulse, WIDENING_IMPULSE);
  store<f64>(0, larger(mixingRate), MIXING_RATE);
}
