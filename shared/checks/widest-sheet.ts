import { longestCourse } from '../fabrication/rollability.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { metres } from './say.ts';

/** Round seams per section that are still worth welding. Common practice, no source. */
const MOST_COURSES = 3;

export const widestSheet: CheckRule = {
  id: 'widest-sheet',
  title: 'Longest part across the rolls',
  source: 'the stated tools',
  binding: false,
  judge({ engine, brief }) {
    const width = brief.tools.rollWidth;
    if (width === null) return notApplicable('The width of the rolls is not stated.');
    const { length, courses } = longestCourse(engine, width);
    const found = `The longest section is ${metres(length)}; the rolls take ${metres(width)}`;
    const judged = atMost(
      { value: length, limit: width, unit: 'm', cautionMargin: 0 },
      { pass: `${found}.`, caution: `${found}.`, fail: `${found}: make it in ${courses} courses with round seams.` },
    );
    return judged.verdict === 'fail' && courses <= MOST_COURSES ? { ...judged, verdict: 'caution' } : judged;
  },
};
