/** Every flat pattern of an engine, in the order of the parts list. */
import type { Engine } from '../../engine/engine.ts';
import { augmenterPieces, intakeBellPieces } from '../bell-pieces.ts';
import { FUEL_BOSS, SPARK_BOSS, TAP_BOSS } from '../hardware-parts.ts';
import { isTaperedBend, type RolledPiece, type ShellPiece, shellPieces } from '../shell-pieces.ts';
import { bendPatterns } from './bend.ts';
import { neutralDiameter } from './developments.ts';
import { hardwarePatterns } from './hardware.ts';
import type { Pattern } from './pattern.ts';
import { flangeRingPattern } from './plates.ts';
import { seatPlatePattern } from './poppet.ts';
import { reedPatterns } from './reed.ts';
import { rolledPattern, type WallHole } from './rolled.ts';

/** Patterns of all sheet, plate and strip parts; bar and wire have none. */
export function enginePatterns(engine: Engine): Pattern[] {
  const { intake } = engine;
  return [
    ...shellPatterns(engine),
    ...chain(intakeBellPieces(engine), 'intake-bell', 'duct@0'),
    ...(intake.kind === 'valveless' ? [] : [flangeRingPattern(engine)]),
    ...hardwarePatterns(engine).slice(0, 2),
    ...hardwarePatterns(engine).filter((p) => p.id === 'leg-spacer'),
    ...(intake.kind === 'reed' ? reedPatterns(engine, intake) : []),
    ...(intake.kind === 'poppet' ? [seatPlatePattern(engine, intake)] : []),
    ...chain(augmenterPieces(engine), 'augmenter', null),
    ...hardwarePatterns(engine).filter((p) => p.id === 'augmenter-stay'),
  ];
}

/** Duct pieces; neighbours share a joint named by its place in the duct. */
function shellPatterns(engine: Engine): Pattern[] {
  const pieces = shellPieces(engine);
  const bellAtMouth = engine.intake.kind === 'valveless' && engine.intake.lip === 'flared';
  return pieces.flatMap((piece, i) => {
    const joints = {
      upstream: i > 0 || bellAtMouth ? `duct@${i}` : null,
      downstream: i < pieces.length - 1 ? `duct@${i + 1}` : null,
    };
    if (piece.shape === 'rolled') return [rolledPattern(piece, joints, wallHoles(engine, piece, pieces))];
    const tapered = isTaperedBend(engine.sections[piece.section]);
    if (!tapered) return bendPatterns(piece, joints);
    // A mitred bend of one diameter cannot meet two different ends: no mating edges are claimed.
    return bendPatterns(piece, { upstream: null, downstream: null }).map((pattern) => ({
      ...pattern,
      notes: ['Tapered bend: gores are drawn at the mean diameter; fit both ends with a short cone.', ...pattern.notes],
    }));
  });
}

/** Pieces that follow one another outside the duct; the last one may meet the duct. */
function chain(pieces: RolledPiece[], name: string, last: string | null): Pattern[] {
  return pieces.map((piece, i) =>
    rolledPattern(piece, {
      upstream: i > 0 ? `${name}@${i}` : null,
      downstream: i < pieces.length - 1 ? `${name}@${i + 1}` : last,
    }),
  );
}

/** Holes for the bosses in the first chamber piece, where they fit. */
export function wallHoles(engine: Engine, piece: RolledPiece, pieces: ShellPiece[]): WallHole[] {
  const chamber = pieces.find((p) => p.shape === 'rolled' && engine.sections[p.section].role === 'chamber');
  if (piece !== chamber) return [];
  const holes: WallHole[] = [
    { name: 'spark plug', along: 0.4, turn: 0.5, diameter: SPARK_BOSS.diameter },
    { name: 'pressure tap', along: 0.14, turn: 0.25, diameter: TAP_BOSS.diameter },
  ];
  if (engine.feed.mode !== 'premixed' || engine.intake.kind === 'valveless') {
    holes.push({ name: 'fuel', along: 0.2, turn: 0.75, diameter: FUEL_BOSS.diameter });
  }
  const girth = Math.PI * neutralDiameter(Math.min(piece.startDiameter, piece.endDiameter), piece.thickness);
  return holes.filter(
    (hole) =>
      hole.diameter < 0.2 * girth &&
      hole.diameter < 1.8 * hole.along * piece.length &&
      hole.diameter < piece.length / 2,
  );
}
