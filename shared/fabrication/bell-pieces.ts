/** Bells: a rounded lip made of conical segments, at the intake mouth of a valveless engine and before an augmenter. */
import type { Engine } from '../engine/engine.ts';
import { BELL_RADIUS_RATIO, BELL_SEGMENTS, LONGEST_COURSE } from './proportions.ts';
import type { RolledPiece } from './shell-pieces.ts';

/** Radius of a bell's rounded lip, m; it is also the bell's length and its growth in radius. */
export function bellRadius(throatDiameter: number): number {
  return BELL_RADIUS_RATIO * throatDiameter;
}

/**
 * Conical segments whose joints lie on a quarter circle between throat and lip, from the lip inwards.
 * Stations run from the lip (0) to the throat.
 */
export function bellPieces(
  throatDiameter: number,
  owner: { id: string; name: string; thickness: number; material: string },
): RolledPiece[] {
  return Array.from({ length: BELL_SEGMENTS }, (_, i) => {
    const start = bellProfile(throatDiameter, i / BELL_SEGMENTS);
    const end = bellProfile(throatDiameter, (i + 1) / BELL_SEGMENTS);
    return {
      shape: 'rolled' as const,
      id: `${owner.id}-${i + 1}`,
      name: `${owner.name}, segment ${i + 1} of ${BELL_SEGMENTS}`,
      section: -1,
      startStation: start.station,
      endStation: end.station,
      startDiameter: start.diameter,
      endDiameter: end.diameter,
      length: end.station - start.station,
      thickness: owner.thickness,
      material: owner.material,
    };
  });
}

/**
 * Point of the quarter circle at a fraction of its arc from the lip: station from the lip and inside diameter, m.
 * The wall is square to the axis at the lip and along the axis at the throat.
 */
export function bellProfile(throatDiameter: number, fraction: number): { station: number; diameter: number } {
  const radius = bellRadius(throatDiameter);
  const theta = (Math.PI / 2) * fraction;
  return {
    station: radius * (1 - Math.cos(theta)),
    diameter: throatDiameter + 2 * radius * (1 - Math.sin(theta)),
  };
}

/** Bell at the intake mouth; none for valved engines and thin lips. */
export function intakeBellPieces(engine: Engine): RolledPiece[] {
  if (engine.intake.kind !== 'valveless' || engine.intake.lip !== 'flared') return [];
  return bellPieces(engine.sections[0].startDiameter, {
    id: 'intake-bell',
    name: 'Intake bell lip',
    thickness: engine.shell.thickness,
    material: engine.shell.material,
  });
}

/** Bell and duct of the augmenter, in flow order; stations run from the bell's lip. None without augmenter. */
export function augmenterPieces(engine: Engine): RolledPiece[] {
  const augmenter = engine.augmenter;
  if (!augmenter) return [];
  const common = { thickness: engine.shell.thickness, material: engine.shell.material };
  const bell = bellPieces(augmenter.diameter, { id: 'augmenter-bell', name: 'Augmenter bell', ...common });
  const start = bellRadius(augmenter.diameter);
  const count = Math.max(1, Math.ceil(augmenter.length / LONGEST_COURSE - 1e-9));
  const diameterAt = (k: number) => augmenter.diameter * (1 + ((augmenter.taper - 1) * k) / count);
  const duct = Array.from({ length: count }, (_, i) => ({
    ...common,
    shape: 'rolled' as const,
    id: count === 1 ? 'augmenter-duct' : `augmenter-duct-${i + 1}`,
    name: count === 1 ? 'Augmenter duct' : `Augmenter duct, course ${i + 1} of ${count}`,
    section: -1,
    startStation: start + (augmenter.length * i) / count,
    endStation: start + (augmenter.length * (i + 1)) / count,
    startDiameter: diameterAt(i),
    endDiameter: diameterAt(i + 1),
    length: augmenter.length / count,
  }));
  return [...bell, ...duct];
}
