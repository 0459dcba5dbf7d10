import { type CheckRule, notApplicable } from './rule.ts';
import { mm } from './say.ts';

const SAME_THICKNESS = 0.03;

export const stockStrip: CheckRule = {
  id: 'stock-strip',
  title: 'Valve strip at hand',
  source: 'the stated stock',
  binding: false,
  judge({ engine, brief }) {
    const { intake } = engine;
    if (intake.kind !== 'reed') return notApplicable('There are no petals.');
    if (brief.strips.length === 0) return notApplicable('No strip stock is stated.');
    const same = brief.strips.filter((s) => s.material === intake.material);
    const near = same.length > 0 ? same : brief.strips;
    const off = Math.min(...near.map((s) => Math.abs(s.thickness / intake.thickness - 1)));
    const ok = same.length > 0 && off < SAME_THICKNESS;
    return {
      verdict: ok ? 'pass' : 'fail',
      value: off,
      limit: SAME_THICKNESS,
      unit: '',
      margin: ok ? (SAME_THICKNESS - off) / SAME_THICKNESS : Math.min((SAME_THICKNESS - off) / SAME_THICKNESS, -1),
      sentence: ok
        ? `${mm(intake.thickness)} ${intake.material} strip is in stock.`
        : `${mm(intake.thickness)} ${intake.material} strip is not in stock: order it, and mind that its stiffness goes with the cube of its thickness.`,
    };
  },
};
