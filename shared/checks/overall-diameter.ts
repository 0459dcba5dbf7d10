import { judgeWish } from './envelope.ts';
import type { CheckRule } from './rule.ts';
import { metres } from './say.ts';

export const overallDiameter: CheckRule = {
  id: 'diameter',
  title: 'Overall diameter',
  source: 'the brief, against the drawing',
  binding: true,
  judge: ({ brief, size }) =>
    judgeWish(
      brief.wanted.maxDiameter,
      () => size().diameter,
      'm',
      metres,
      'overall diameter',
      (over) => `take ${metres(over)} off it: a smaller chamber or flange, or a closer bend`,
    ),
};
