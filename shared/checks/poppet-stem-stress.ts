import type { CheckRule } from './rule.ts';
import { judgeSite } from './site-stress.ts';

export const poppetStemStress: CheckRule = {
  id: 'poppet-stem-stress',
  title: 'Poppet stem stress',
  source: 'energy balance of disc and stem in series (Timoshenko, Theory of Plates and Shells); Peterson fillet factor',
  binding: false,
  judge: (facts) =>
    judgeSite(facts, 'poppet', 'stem', 'a lighter head, a thicker stem, less lift or one-piece valves lower it'),
};
