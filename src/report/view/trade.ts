/** The trade picture with its key: marks of the architectures and letters of the reasons. */

import type { StudyResults } from '../../ranking/results.ts';
import type { Architecture } from '../../space/architecture.ts';
import { MARK_WORDS, mark } from '../charts/marks.ts';
import { el, type Markup } from '../charts/svg.ts';
import { type TradeDot, type TradeReason, tradePicture, tradeReasons } from '../charts/trade-picture.ts';
import { shortName } from '../format/architecture-name.ts';
import { anchor } from '../format/escape.ts';
import { count } from '../format/number.ts';
import { type FigureView, figureView } from './figure.ts';
import { lifeBand, tsfcBand } from './key-figures.ts';

export interface TradeView {
  figure: FigureView | null;
  key: { mark: Markup; name: string }[];
  markWords: string;
  reasons: (TradeReason & { text: string })[];
}

/** A mark alone, as a small picture that says nothing to a screen reader: its name stands beside it. */
export function keyMark(architecture: Architecture): Markup {
  return el(
    'svg',
    { class: 'key-mark', viewBox: '-9 -9 18 18', width: 16, height: 16, 'aria-hidden': 'true', focusable: 'false' },
    mark(architecture, 6, 0, 0),
  );
}

export function tradeView(results: StudyResults): TradeView {
  const architectures = new Map(results.architectures.map((a) => [a.architecture.id, a.architecture]));
  for (const c of results.candidates) architectures.set(c.architecture.id, c.architecture);
  const seen = new Set<string>();
  const finalists = results.candidates.flatMap((c) => {
    const tsfc = tsfcBand(c);
    const life = lifeBand(c);
    if (!tsfc || !life) return [];
    const first = !seen.has(c.architecture.id);
    seen.add(c.architecture.id);
    return [
      {
        id: c.id,
        anchor: anchor(c.id),
        rank: c.rank,
        architecture: c.architecture,
        tsfc,
        life,
        feasible: c.feasible,
        bestOfArchitecture: first,
      },
    ];
  });
  const others = results.tradePoints.flatMap((p): TradeDot[] => {
    const architecture = architectures.get(p.architecture);
    if (!architecture) return [];
    return [{ architecture, tsfc: p.tsfc, life: p.valveLife, feasible: p.feasible, reason: p.reason }];
  });
  const picture = tradePicture({ id: 'trade-picture', finalists, others, front: results.front });
  const drawn = new Set([...finalists.map((f) => f.architecture.id), ...others.map((o) => o.architecture.id)]);
  return {
    figure: figureView(
      'figure-trade',
      picture,
      'Valve life against TSFC. Bars are 5 to 95 % bands, the stepped line joins the designs that no other finalist beats in both, faint marks are designs that ran but are not allowed; letters name the reason.',
    ),
    key: [...architectures.values()]
      .filter((a) => drawn.has(a.id))
      .map((a) => ({ mark: keyMark(a), name: shortName(a) })),
    markWords: MARK_WORDS,
    reasons: tradeReasons(others).map((r) => ({ ...r, text: `${r.reason} (${count(r.designs, 'design')})` })),
  };
}
