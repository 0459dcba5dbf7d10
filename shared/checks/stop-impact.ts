import { judgeImpact } from './impact-speed.ts';
import type { CheckRule } from './rule.ts';

export const stopImpact: CheckRule = {
  id: 'stop-impact',
  title: 'Speed at the stop',
  source: 'compressor valve practice, as for the seat (from memory, confidence medium-low)',
  binding: false,
  judge: (facts) =>
    judgeImpact(facts, 'stop', 'a stiffer valve or a stop curved to the valve’s own bending line softens it'),
};
