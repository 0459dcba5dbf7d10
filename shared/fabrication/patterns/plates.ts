/** Round plate, flange ring and straps: outlines shared by several patterns. */
import type { Engine } from '../../engine/engine.ts';
import { headFlange, plateThickness } from '../proportions.ts';
import { filletPolygon } from './fillet.ts';
import { circle, line, type Outline, type Point } from './outline.ts';
import type { Mark, Pattern } from './pattern.ts';
import { crossMarks } from './rolled.ts';

const ORIGIN: Point = { x: 0, y: 0 };

/** Screw holes on the head flange's bolt circle, first one half a pitch off the top. */
export function boltHoles(engine: Engine): { outlines: Outline[]; marks: Mark[]; note: string } {
  const flange = headFlange(engine.sections[0].startDiameter, engine.shell.thickness);
  const radius = flange.boltCircle / 2;
  const centres = Array.from({ length: flange.screws }, (_, i) => {
    const angle = Math.PI / 2 + (2 * Math.PI * (i + 0.5)) / flange.screws;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
  return {
    outlines: centres.map((centre) => circle(centre, flange.screw.hole / 2)),
    marks: [
      { layer: 'MARK', edge: { kind: 'arc', centre: ORIGIN, radius, start: 0, sweep: 2 * Math.PI } },
      ...centres.flatMap((centre) => crossMarks(centre, flange.screw.hole)),
    ],
    note: `${flange.screws} holes Ø ${mm(flange.screw.hole)} mm for ${flange.screw.name} on a bolt circle of Ø ${mm(flange.boltCircle)} mm.`,
  };
}

/** Round plate that closes the chamber's head, with the openings given. */
export function headPlatePattern(
  engine: Engine,
  name: string,
  openings: { outlines: Outline[]; marks: Mark[]; notes: string[] },
): Pattern {
  const chamber = engine.sections[0].startDiameter;
  const flange = headFlange(chamber, engine.shell.thickness);
  const bolts = boltHoles(engine);
  const reach = flange.outerDiameter / 2;
  return {
    id: 'valve-plate',
    name,
    count: 1,
    material: engine.shell.material,
    thickness: plateThickness(chamber),
    outlines: [circle(ORIGIN, reach), ...openings.outlines, ...bolts.outlines],
    marks: [
      ...openings.marks,
      ...bolts.marks,
      { layer: 'MARK', edge: { kind: 'arc', centre: ORIGIN, radius: chamber / 2, start: 0, sweep: 2 * Math.PI } },
      { layer: 'MARK', edge: line({ x: 0, y: reach }, { x: 0, y: flange.boltCircle / 2 + flange.screw.hole }) },
    ],
    labels: [],
    mating: [],
    notes: ['Seat side faces you; the tick is the top.', ...openings.notes, bolts.note],
  };
}

/** Flange ring that is welded round the chamber's head. */
export function flangeRingPattern(engine: Engine): Pattern {
  const flange = headFlange(engine.sections[0].startDiameter, engine.shell.thickness);
  const bolts = boltHoles(engine);
  return {
    id: 'head-flange',
    name: 'Head flange ring',
    count: 1,
    material: engine.shell.material,
    thickness: flange.thickness,
    outlines: [circle(ORIGIN, flange.outerDiameter / 2), circle(ORIGIN, flange.innerDiameter / 2), ...bolts.outlines],
    marks: bolts.marks,
    labels: [],
    mating: [],
    notes: [`Bore Ø ${mm(flange.innerDiameter)} mm slides over the chamber.`, bolts.note],
  };
}

/** Straight strap with bend lines at the given distances from its left end, and a hole in each foot. */
export function strapPattern(
  part: { id: string; name: string; count: number; material: string; thickness: number },
  length: number,
  width: number,
  bends: number[],
  holes: { x: number; diameter: number; slot?: number }[],
  notes: string[],
): Pattern {
  const corners = [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ].map((p) => ({ ...p, radius: 0 }));
  return {
    ...part,
    outlines: [
      filletPolygon(corners),
      ...holes.map(({ x, diameter, slot }) =>
        slot ? slotOutline({ x, y: width / 2 }, diameter, slot) : circle({ x, y: width / 2 }, diameter / 2),
      ),
    ],
    marks: [
      ...bends.map((x): Mark => ({ layer: 'BEND', edge: line({ x, y: 0 }, { x, y: width }) })),
      ...holes.flatMap(({ x, diameter }) => crossMarks({ x, y: width / 2 }, diameter)),
    ],
    labels: [],
    mating: [],
    notes,
  };
}

/** Slot with round ends along x; `length` between the arc centres. */
function slotOutline(centre: Point, diameter: number, length: number): Outline {
  const r = diameter / 2;
  const left = { x: centre.x - length / 2, y: centre.y };
  const right = { x: centre.x + length / 2, y: centre.y };
  return {
    edges: [
      line({ x: left.x, y: left.y - r }, { x: right.x, y: right.y - r }),
      { kind: 'arc', centre: right, radius: r, start: -Math.PI / 2, sweep: Math.PI },
      line({ x: right.x, y: right.y + r }, { x: left.x, y: left.y + r }),
      { kind: 'arc', centre: left, radius: r, start: Math.PI / 2, sweep: Math.PI },
    ],
  };
}

const mm = (metres: number): string => (metres * 1e3).toFixed(2).replace(/\.?0+$/, '');
