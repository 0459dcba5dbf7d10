/** What depends on the grid alone, computed once: the reference computes the same values anew each time. */
import {
  AREA_CHANGE, CARRIES, DIAMETER, EDDY_SIZE, FACE_AREA, MEAN_AREA, PER_AREA, PER_DISTANCE, PER_EDDY, PER_MEAN_AREA, PER_VOLUME, PER_WIDTH, SUDDEN,
  VOLUME, WIDTH,
} from '../layout';
import { isSudden } from './flux';

export function prepare(n: i32): void {
  const end: usize = n << 3;
  for (let i: usize = 0; i < end; i += 8) {
    const perArea = 1 / load<f64>(i, FACE_AREA);
    store<f64>(i, perArea, PER_AREA);
    store<f64>(i, 1 / load<f64>(i, VOLUME), PER_VOLUME);
    const perWidth = 1 / load<f64>(i, WIDTH);
    store<f64>(i, perWidth, PER_WIDTH);
    const area = load<f64>(i, VOLUME) * perWidth;
    store<f64>(i, area, MEAN_AREA);
    store<f64>(i, 1 / area, PER_MEAN_AREA);
    store<f64>(i, load<f64>(i + 8, FACE_AREA) - load<f64>(i, FACE_AREA), AREA_CHANGE);
    if (i > 0) {
      const left = load<f64>(i - 8, MEAN_AREA) * perArea;
      const right = area * perArea;
      store<f64>(i, 2 / (load<f64>(i - 8, WIDTH) + load<f64>(i, WIDTH)), PER_DISTANCE);
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
