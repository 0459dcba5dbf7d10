/** Patterns of saddles, spacers and stays. */
import type { Engine } from '../../engine/engine.ts';
import {
  augmenterStayParts,
  FOOT_HOLE,
  largestDiameter,
  legBracketParts,
  mountingParts,
  SLOT_RATIO,
  strapWidth,
} from '../hardware-parts.ts';
import type { Part } from '../parts.ts';
import type { Pattern } from './pattern.ts';
import { strapPattern } from './plates.ts';

export function hardwarePatterns(engine: Engine): Pattern[] {
  const width = strapWidth(engine);
  const wall = engine.shell.thickness;
  const [rigid, sliding] = mountingParts(engine);
  const tail = engine.sections.filter((s) => s.role === 'tailpipe').at(-1) ?? engine.sections.at(-1)!;
  const saddle = (part: Part, diameter: number, slot?: number): Pattern =>
    strapPattern(
      part,
      part.blankLength,
      width,
      [width, part.blankLength - width],
      [
        { x: width / 2, diameter: FOOT_HOLE, slot },
        { x: part.blankLength - width / 2, diameter: FOOT_HOLE, slot },
      ],
      [
        `Roll between the bend lines to an inside diameter of ${((diameter + 2 * wall) * 1e3).toFixed(1)} mm; bend the feet out.`,
      ],
    );
  return [
    saddle(rigid, largestDiameter(engine)),
    saddle(sliding, Math.max(tail.startDiameter, tail.endDiameter), SLOT_RATIO * width),
    ...legBracketParts(engine).map((part) =>
      strapPattern(
        part,
        part.blankLength,
        width,
        [],
        [],
        ['Ends are fitted to the shells when both legs lie on the bench.'],
      ),
    ),
    ...augmenterStayParts(engine).map((part) =>
      strapPattern(
        part,
        part.blankLength,
        width,
        [2 * width, part.blankLength - 2 * width],
        [
          { x: width, diameter: FOOT_HOLE },
          { x: part.blankLength - width, diameter: FOOT_HOLE },
        ],
        ['Bend the feet to lie on exit and augmenter; three stays at 120°.'],
      ),
    ),
  ];
}
