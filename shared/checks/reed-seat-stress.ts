import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const reedSeatStress: CheckRule = {
  id: 'reed-seat-stress',
  title: 'Petal stress from striking the seat',
  source: 'Hunt, J. Acoust. Soc. Am. 32 (1960) 1123: σ = √3 v √(E ρ)',
  binding: false,
  judge: (facts) => judgeSite(facts, 'reed', 'seat', 'less lift or a stiffer petal slows the tip'),
};
