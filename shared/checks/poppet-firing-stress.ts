import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const poppetFiringStress: CheckRule = {
  id: 'poppet-firing-stress',
  title: 'Poppet head stress under firing pressure',
  source: 'Roark’s Formulas for Stress and Strain, circular plate: σ = 3(3+ν) p a²/8t²',
  binding: false,
  judge: (facts) => judgeSite(facts, 'poppet', 'pressure', 'a thicker head or smaller ports lower it'),
};
