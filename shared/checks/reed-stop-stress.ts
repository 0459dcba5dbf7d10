import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const reedStopStress: CheckRule = {
  id: 'reed-stop-stress',
  title: 'Petal stress over the stop',
  source:
    'σ = E t/2R on the arc of the stop; Hunt, J. Acoust. Soc. Am. 32 (1960) 1123, 0.49 of it at a free end (bending wave, exact)',
  binding: false,
  judge: (facts) =>
    judgeSite(facts, 'reed', 'stop', 'a flatter stop (less lift or a longer petal) or thinner strip lowers it'),
};
