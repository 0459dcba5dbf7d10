/** The designs that ran, as points of the trade picture. */
import type { JudgedDesign } from './finalists.ts';
import { constraintWords } from './phrases.ts';
import type { TradePoint } from './results.ts';

/** Points of one architecture that a picture can hold; beyond that an even share of them is kept. */
const MOST_POINTS = 300;

export function tradePoints(designs: readonly JudgedDesign[]): TradePoint[] {
  const byArchitecture = new Map<string, TradePoint[]>();
  for (const { architecture, summary } of designs) {
    const { status, tsfc, valveLife, thrust, violations } = summary;
    if (status !== 'ok' || tsfc === null || valveLife === null || thrust === null) continue;
    const point: TradePoint = {
      architecture,
      tsfc,
      valveLife,
      thrust,
      feasible: violations.length === 0,
      reason:
        violations.length === 0
          ? ''
          : constraintWords(violations.reduce((a, b) => (b.violation > a.violation ? b : a)).id),
    };
    const points = byArchitecture.get(architecture);
    if (points) points.push(point);
    else byArchitecture.set(architecture, [point]);
  }
  return [...byArchitecture.values()].flatMap((points) => {
    const stride = Math.ceil(points.length / MOST_POINTS);
    return points.filter((_, index) => index % stride === 0);
  });
}
