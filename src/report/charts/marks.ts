/**
 * Marks that tell architectures apart without colour: the shape says the intake, hollow says augmenter,
 * the stroke inside says the fuel feed.
 */
import type { Feed } from '../../../shared/engine/engine.ts';
import type { IntakeChoice } from '../../config/study.ts';
import type { Architecture } from '../../space/architecture.ts';
import { el, type Markup, round } from './svg.ts';

const SHAPES: Record<IntakeChoice, (r: number) => string> = {
  reed: (r) => `M${-r} 0A${r} ${r} 0 1 1 ${r} 0A${r} ${r} 0 1 1 ${-r} 0Z`,
  poppet: (r) => `M${round(-r * 0.88)} ${round(-r * 0.88)}h${round(r * 1.76)}v${round(r * 1.76)}h${round(-r * 1.76)}Z`,
  'valveless-straight': (r) => `M0 ${round(-r * 1.15)}L${round(r * 1.08)} ${round(r * 0.8)}H${round(-r * 1.08)}Z`,
  'valveless-u': (r) => `M0 ${round(-r * 1.2)}L${round(r * 1.2)} 0L0 ${round(r * 1.2)}L${round(-r * 1.2)} 0Z`,
};

const FEED_STROKES: Record<Feed['mode'], (r: number) => string | null> = {
  premixed: () => null,
  'steady-injection': (r) => `M${round(-r * 0.55)} 0H${round(r * 0.55)}`,
  'timed-injection': (r) => `M0 ${round(-r * 0.55)}V${round(r * 0.55)}`,
};

/** The mark of an architecture, centred on (0, 0); `place` is its transform. */
export function mark(architecture: Architecture, radius: number, x: number, y: number, extraClass = ''): Markup {
  const hollow = architecture.augmenter;
  const stroke = FEED_STROKES[architecture.feed.mode](radius);
  return el(
    'g',
    { transform: `translate(${round(x)} ${round(y)})`, class: `mark mark-${architecture.intake} ${extraClass}`.trim() },
    el('path', { class: hollow ? 'hollow' : 'solid', d: SHAPES[architecture.intake](radius) }),
    stroke === null ? null : el('path', { class: hollow ? 'feed-on-hollow' : 'feed-on-solid', d: stroke }),
  );
}

/** How to read the marks, in words. */
export const MARK_WORDS =
  'Shape says the intake: circle reed valves, square poppet valves, triangle valveless straight, diamond valveless U-bent. ' +
  'A filled mark has no augmenter, a hollow one has one. A level stroke inside is steady injection, an upright stroke timed injection.';
