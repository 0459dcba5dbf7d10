import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const reedPortStress: CheckRule = {
  id: 'reed-port-stress',
  title: 'Petal stress over the port',
  source: 'Roark’s Formulas for Stress and Strain, rectangular plate, table 11.4',
  binding: false,
  judge: (facts) => judgeSite(facts, 'reed', 'port', 'narrower ports or thicker strip lower it'),
};
