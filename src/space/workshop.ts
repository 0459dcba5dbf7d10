/** What envelope and tools forbid. Only what is certain before any simulation. */
import type { Brief } from '../../shared/engine/brief.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { overallSize } from '../../shared/fabrication/overall-size.ts';
import { excess, type Objection } from './refusal.ts';
import { lengthWords } from './wording.ts';

export function workshopObjections(engine: Engine, { wanted, tools }: Brief): (Objection | null)[] {
  const objections: (Objection | null)[] = [];
  const size = overallSize(engine);
  const { maxLength, maxDiameter } = wanted;
  if (maxLength !== null) {
    objections.push(
      excess(
        'max-length',
        size.length,
        maxLength,
        () =>
          `The engine is ${lengthWords(size.length)} long and ${lengthWords(maxLength)} is allowed; shorten the tailpipe.`,
      ),
    );
  }
  if (maxDiameter !== null) {
    objections.push(
      excess(
        'max-diameter',
        size.diameter,
        maxDiameter,
        () =>
          `The engine is ${lengthWords(size.diameter)} across and ${lengthWords(maxDiameter)} is allowed; make the chamber narrower.`,
      ),
    );
  }
  if (tools.smallestRoll !== null) objections.push(rollObjection(engine, tools.smallestRoll));
  const { thickestCut } = tools;
  if (thickestCut !== null) {
    objections.push(
      excess(
        'thickest-cut',
        engine.shell.thickness,
        thickestCut * 1.001,
        () =>
          `The shell is ${lengthWords(engine.shell.thickness)} thick and the tools take ${lengthWords(thickestCut)}; choose thinner sheet.`,
      ),
    );
  }
  return objections;
}

function rollObjection(engine: Engine, smallestRoll: number): Objection | null {
  const narrowest = Math.min(...engine.sections.map((section) => Math.min(section.startDiameter, section.endDiameter)));
  if (narrowest >= smallestRoll) return null;
  return {
    constraint: 'smallest-roll',
    violation: smallestRoll / narrowest - 1,
    sentence: `A section of ${lengthWords(narrowest)} is narrower than the rolls can form (${lengthWords(smallestRoll)}); make it wider or buy tube.`,
  };
}
