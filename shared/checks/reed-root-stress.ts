import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const reedRootStress: CheckRule = {
  id: 'reed-root-stress',
  title: 'Petal stress at the root',
  source: 'beam theory, K = 3.516 (first mode); Basquin, SAE J1099',
  binding: false,
  judge: (facts) => judgeSite(facts, 'reed', 'root', 'a longer petal, less lift or thinner strip lowers it'),
};
