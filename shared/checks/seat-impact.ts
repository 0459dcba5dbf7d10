import { judgeImpact } from './impact-speed.ts';
import type { CheckRule } from './rule.ts';

export const seatImpact: CheckRule = {
  id: 'seat-impact',
  title: 'Speed at the seat',
  source:
    'compressor valve practice: at most 5 m/s to be safe, 6–10 m/s for 10⁷ cycles (from memory, confidence medium-low)',
  binding: false,
  judge: (facts) => judgeImpact(facts, 'seat', 'less lift brings it down, about in proportion'),
};
