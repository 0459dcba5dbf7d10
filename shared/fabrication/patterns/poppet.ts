/** Seat plate of a poppet intake: ports with their seats, heads and stem axes. */
import type { Engine, PoppetIntake } from '../../engine/engine.ts';
import { poppetLayout } from '../poppet-layout.ts';
import { circle } from './outline.ts';
import type { Mark, Pattern } from './pattern.ts';
import { headPlatePattern } from './plates.ts';
import { crossMarks } from './rolled.ts';

export function seatPlatePattern(engine: Engine, intake: PoppetIntake): Pattern {
  const { centres, fits, enclosingRadius } = poppetLayout(engine, intake);
  const marks = centres.flatMap((centre): Mark[] => [
    {
      layer: 'MARK',
      edge: { kind: 'arc', centre, radius: intake.headDiameter / 2, start: 0, sweep: 2 * Math.PI },
    },
    ...crossMarks(centre, intake.portDiameter),
  ]);
  return headPlatePattern(engine, 'Seat plate', {
    outlines: centres.map((centre) => circle(centre, intake.portDiameter / 2)),
    marks,
    notes: [
      `${intake.valves} ports Ø ${mm(intake.portDiameter)} mm; scribed circles: heads Ø ${mm(intake.headDiameter)} mm. Lap each seat flat.`,
      ...(fits
        ? []
        : [
            `The heads need a circle of Ø ${mm(2 * enclosingRadius)} mm, more than the chamber's ${mm(engine.sections[0].startDiameter)} mm.`,
          ]),
    ],
  });
}

const mm = (metres: number): string => (metres * 1e3).toFixed(2).replace(/\.?0+$/, '');
