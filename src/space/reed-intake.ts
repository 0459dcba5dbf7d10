/** Reed valves: variables, and the petals that carry the wished port area on the plate. */
import type { Engine, ReedIntake } from '../../shared/engine/engine.ts';
import { petalLayout } from '../../shared/fabrication/petal-layout.ts';
import { SEAT_LAND } from '../../shared/fabrication/proportions.ts';
import type { ReedRanges } from '../config/study.ts';
import type { Coordinates, Values } from './coordinates.ts';
import { excess, type Objection } from './refusal.ts';
import { toHalfMillimetre, toSquareMillimetre, toTenthMillimetre, upToHalfMillimetre } from './rounding.ts';
import { areaWords, lengthWords, millimetres } from './wording.ts';

/** Share of the free length that lies over the port; the rest is root, where the petal hardly lifts. Common practice, no source. */
const PORT_REACH = 0.85;
/** Wedge panels stand at about 30° to the flow, so half of their area shows on the plate; four fifths of the plate can be cut away. */
const PANEL_PROJECTION = 0.5;
const PLATE_SHARE = 0.8;

export function addReedVariables(coordinates: Coordinates, ranges: ReedRanges): void {
  const strip = ranges.thicknesses.map((thickness) => `${millimetres(thickness)} mm`);
  coordinates.integer('petals', 'number of petals', ranges.petals);
  coordinates.real('petal-length', 'free length of a petal', ranges.length, 'm', (value) =>
    lengthWords(toHalfMillimetre(value)),
  );
  coordinates.choice('petal-thickness', 'strip thickness', strip);
  coordinates.choice('petal-material', 'strip material', ranges.materials);
  coordinates.real('stop-lift', 'lift at the stop', ranges.stopLift, 'm', (value) =>
    lengthWords(toTenthMillimetre(value)),
  );
  coordinates.real('port-ratio', 'port area over tailpipe area', ranges.portRatio, '', (value, engine) => {
    if (engine?.intake.kind !== 'reed') return value.toFixed(2);
    return `${value.toFixed(2)}: ${areaWords(engine.intake.petals * engine.intake.portArea)}`;
  });
}

/** Petals just wide enough for their ports and the seat round them. */
export function reedIntake(
  values: Values,
  ranges: ReedRanges,
  tailDiameter: number,
): { intake: ReedIntake; objection: Objection | null } {
  const petals = values('petals');
  const length = toHalfMillimetre(values('petal-length'));
  const portArea = toSquareMillimetre((values('port-ratio') * (Math.PI / 4) * tailDiameter ** 2) / petals);
  const portLength = PORT_REACH * length - SEAT_LAND;
  const width = upToHalfMillimetre(Math.max(ranges.width.low, portArea / portLength + 2 * SEAT_LAND));
  const intake: ReedIntake = {
    kind: 'reed',
    petals,
    length,
    width,
    thickness: ranges.thicknesses[values('petal-thickness')],
    material: ranges.materials[values('petal-material')],
    stopLift: toTenthMillimetre(values('stop-lift')),
    portArea,
  };
  const objection = excess(
    'petal-width',
    width,
    upToHalfMillimetre(ranges.width.high),
    () =>
      `Each petal would be ${millimetres(width)} mm wide to cover its port, more than ${millimetres(ranges.width.high)} mm; take more or longer petals, or less port area.`,
  );
  return { intake, objection };
}

/** Petals that fit neither one wheel nor rows on wedge panels. */
export function reedFit(engine: Engine, intake: ReedIntake): Objection | null {
  const layout = petalLayout(engine, intake);
  if (layout.kind === 'wheel') return null;
  const plate = engine.sections[0].startDiameter;
  const room = PLATE_SHARE * (Math.PI / 4) * plate ** 2;
  const shown = PANEL_PROJECTION * layout.rows * layout.panelWidth * layout.panelLength;
  return excess(
    'petals-fit-plate',
    shown,
    room,
    () =>
      `${intake.petals} petals of ${millimetres(intake.width)} × ${millimetres(intake.length)} mm need ${areaWords(shown)} of a plate that offers ${areaWords(room)}; take fewer or shorter petals or a wider chamber.`,
  );
}
