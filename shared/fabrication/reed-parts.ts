/** Valve plate, petals and stops of a reed intake. */
import type { Engine, ReedIntake } from '../engine/engine.ts';
import { densityOf } from './density.ts';
import type { Part } from './parts.ts';
import { petalLayout, type RowLayout, rowStripArea, type WheelLayout, wheelArea } from './petal-layout.ts';
import { headFlange, plateThickness, roundTo } from './proportions.ts';

/** Thickness of the curved stop, m: ten petals thick, 1 to 3 mm; common practice, no source. */
export function stopThickness(intake: ReedIntake): number {
  return roundTo(Math.min(0.003, Math.max(0.001, 10 * intake.thickness)), 0.0005);
}

export function reedParts(engine: Engine, intake: ReedIntake): Part[] {
  const layout = petalLayout(engine, intake);
  return layout.kind === 'wheel' ? wheelParts(engine, intake, layout) : rowParts(engine, intake, layout);
}

function wheelParts(engine: Engine, intake: ReedIntake, layout: WheelLayout): Part[] {
  const area = wheelArea(layout);
  const size = 2 * layout.tipRadius;
  return [
    valvePlate(engine, intake.petals * intake.portArea + (Math.PI / 4) * layout.hubHole ** 2),
    flat('petal-wheel', 'Petal wheel', 'strip', intake.material, 1, intake.thickness, size, size, area),
    flat(
      'stop-plate',
      'Stop plate, curved',
      'flat sheet',
      engine.shell.material,
      1,
      stopThickness(intake),
      size,
      size,
      area,
    ),
  ];
}

function rowParts(engine: Engine, intake: ReedIntake, layout: RowLayout): Part[] {
  const chamber = engine.sections[0].startDiameter;
  const openings = layout.windows.reduce((sum, w) => sum + w.width * w.height, 0);
  const disc = (Math.PI / 4) * chamber ** 2;
  const stripLength = layout.freeLength + layout.clampDepth;
  const panel = layout.panelWidth * layout.panelLength - layout.perRow * intake.portArea;
  return [
    valvePlate(engine, Math.min(openings, 0.8 * disc)),
    flat(
      'wedge-panel',
      'Wedge panel with ports',
      'plate',
      engine.shell.material,
      layout.rows,
      panelThickness(engine),
      layout.panelLength,
      layout.panelWidth,
      panel,
    ),
    flat(
      'petal',
      'Petal',
      'strip',
      intake.material,
      intake.petals,
      intake.thickness,
      stripLength,
      layout.width,
      rowStripArea(layout),
    ),
    flat(
      'stop-strip',
      'Stop strip, curved',
      'flat sheet',
      engine.shell.material,
      layout.rows,
      stopThickness(intake),
      layout.panelWidth,
      stripLength,
      layout.panelWidth * stripLength,
    ),
  ];
}

/** Thickness of a wedge panel, m; half of the valve plate, at least 2 mm. */
export function panelThickness(engine: Engine): number {
  return Math.max(0.002, roundTo(plateThickness(engine.sections[0].startDiameter) / 2, 0.0005));
}

/** Round plate screwed to the head flange, less its openings (m²). */
export function valvePlate(engine: Engine, openings: number, name = 'Valve plate'): Part {
  const chamber = engine.sections[0].startDiameter;
  const { outerDiameter, screws, screw } = headFlange(chamber, engine.shell.thickness);
  const area = (Math.PI / 4) * (outerDiameter ** 2 - screws * screw.hole ** 2) - openings;
  return flat(
    'valve-plate',
    name,
    'plate',
    engine.shell.material,
    1,
    plateThickness(chamber),
    outerDiameter,
    outerDiameter,
    area,
  );
}

function flat(
  id: string,
  name: string,
  kind: Part['kind'],
  material: string,
  count: number,
  thickness: number,
  sideA: number,
  sideB: number,
  area: number,
): Part {
  return {
    id,
    name,
    kind,
    material,
    count,
    thickness,
    blankLength: Math.max(sideA, sideB),
    blankWidth: Math.min(sideA, sideB),
    area,
    mass: area * thickness * densityOf(material),
  };
}
