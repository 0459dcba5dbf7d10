/** What depends on the grid alone, computed once: the reference computes the same values anew each time. */
import {
  AREA_CHANGE, CARRIES, DIAMETER, DX, EDDY_SIZE, FACE_AREA, MEAN_AREA, PER_AREA, PER_EDDY, PER_MEAN_AREA, PER_VOLUME, SUDDEN, VOLUME,
} from '../layout';
import { isSudden } from './flux';

export function prepare(n: i32): void {
  const perDx = 1 / load<f64>(0, DX);
  const end: usize = n << 3;
  for (let i: usize = 0; i < end; i += 8) {
    const perArea = 1 / load<f64>(i, FACE_AREA);
    store<f64>(i, perArea, PER_AREA);
    store<f64>(i, 1 / load<f64>(i, VOLUME), PER_VOLUME);
    const area = load<f64>(i, VOLUME) * perDx;
    store<f64>(i, area, MEAN_AREA);
    store<f64>(i, 1 / area, PER_MEAN_AREA);
    store<f64>(i, load<f64>(i + 8, FACE_AREA) - load<f64>(i, FACE_AREA), AREA_CHANGE);
    if (i > 0) {
      const left = load<f64>(i - 8, VOLUME) * perDx * perArea;
      const right = load<f64>(i, VOLUME) * perDx * perArea;
      store<f64>(i, isSudden(left) || isSudden(right) ? 1 : 0, SUDDEN);
    }
  }
}

export function prepareSources(n: i32): void {
  store<f64>(0, 1, CARRIES);
  const end: usize = n << 3;
  for (let i: usize = 0; i < end; i += 8) {
    store<f64>(i, 1 / (load<f64>(0, EDDY_SIZE) * load<f64>(i, DIAMETER)), PER_EDDY);
  }
}
