import { atMost, type CheckRule, noWorseThanCaution } from './rule.ts';

/** Pieces to cut and fit that a small shop finishes in a few weekends. Common practice, no source. */
const MANY = 100;

export const partCount: CheckRule = {
  id: 'part-count',
  title: 'Number of parts',
  source: 'common practice, no source',
  binding: false,
  judge({ parts, caution }) {
    const value = parts().reduce((sum, part) => sum + part.count, 0);
    return noWorseThanCaution(
      atMost(
        { value, limit: MANY, unit: '', cautionMargin: caution },
        {
          pass: `${value} parts to make.`,
          caution: `${value} parts to make, ${MANY} are many: plan the weekends, or have fewer and larger valves.`,
          fail: `${value} parts to make, over ${MANY}: fewer, larger valves or wider petals cut that down.`,
        },
      ),
    );
  },
};
