/** Parts-list entries of rolled and mitred pieces. Blanks include the seam allowance; masses do not. */
import { densityOf } from './density.ts';
import type { Part } from './parts.ts';
import { developBend, neutralDiameter } from './patterns/developments.ts';
import { outlineArea, outlineBounds } from './patterns/outline.ts';
import { developPiece } from './patterns/rolled.ts';
import { SEAM_ALLOWANCE } from './proportions.ts';
import type { BendPiece, RolledPiece, ShellPiece } from './shell-pieces.ts';

/** One entry for a rolled piece; one for the full and one for the half gores of a bend. */
export function pieceParts(piece: ShellPiece): Part[] {
  return piece.shape === 'rolled' ? [rolledPart(piece)] : bendParts(piece);
}

function rolledPart(piece: RolledPiece): Part {
  const { outline, netArea } = developPiece(piece);
  const { minX, maxX, minY, maxY } = outlineBounds(outline);
  return {
    id: piece.id,
    name: piece.name,
    kind: 'rolled sheet',
    material: piece.material,
    count: 1,
    thickness: piece.thickness,
    blankLength: Math.max(maxX - minX, maxY - minY),
    blankWidth: Math.min(maxX - minX, maxY - minY),
    area: outlineArea(outline),
    mass: netArea * piece.thickness * densityOf(piece.material),
  };
}

function bendParts(piece: BendPiece): Part[] {
  const { thickness, material, mitres } = piece;
  const bend = developBend(neutralDiameter(piece.diameter, thickness), piece.angle, piece.centreRadius, mitres);
  const gore = (
    id: string,
    name: string,
    count: number,
    area: number,
    box: { width: number; height: number },
    seamLength: number,
  ): Part => ({
    id,
    name,
    kind: 'rolled sheet',
    material,
    count,
    thickness,
    blankLength: Math.max(box.width + SEAM_ALLOWANCE, box.height),
    blankWidth: Math.min(box.width + SEAM_ALLOWANCE, box.height),
    area: area + seamLength * SEAM_ALLOWANCE,
    mass: area * thickness * densityOf(material),
  });
  const full = gore(
    `${piece.id}-gore`,
    `${piece.name}, full gore`,
    mitres - 1,
    bend.goreArea,
    bend.goreBox,
    2 * bend.halfThroat,
  );
  const half = gore(
    `${piece.id}-end-gore`,
    `${piece.name}, end gore`,
    2,
    bend.goreArea / 2,
    bend.halfGoreBox,
    bend.halfThroat,
  );
  return mitres > 1 ? [full, half] : [half];
}
