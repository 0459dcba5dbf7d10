import { judgeWish } from './envelope.ts';
import type { CheckRule } from './rule.ts';
import { metres } from './say.ts';

export const overallLength: CheckRule = {
  id: 'length',
  title: 'Overall length',
  source: 'the brief, against the drawing',
  binding: true,
  judge: ({ brief, size }) =>
    judgeWish(
      brief.wanted.maxLength,
      () => size().length,
      'm',
      metres,
      'overall length',
      (over) => `shorten it by ${metres(over)}: a shorter tailpipe (higher frequency) or a U-bent engine`,
    ),
};
