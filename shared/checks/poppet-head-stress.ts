import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const poppetHeadStress: CheckRule = {
  id: 'poppet-head-stress',
  title: 'Poppet head stress at the stem',
  source: 'circular plate under centre force (Timoshenko, Theory of Plates and Shells)',
  binding: false,
  judge: (facts) =>
    judgeSite(facts, 'poppet', 'head', 'a thicker head, less lift, a softer landing or one-piece valves lower it'),
};
