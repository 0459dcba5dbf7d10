/** Parts-list entries of rolled and mitred pieces. Blanks include the seam allowance; masses do not. */
import { densityOf } from './density.ts';
import type { Part } from './parts.ts';
import { developBend, developSection, neutralDiameter, sectorBox } from './patterns/developments.ts';
import { SEAM_ALLOWANCE } from './proportions.ts';
import type { BendPiece, RolledPiece, ShellPiece } from './shell-pieces.ts';

/** One entry for a rolled piece; one for the full and one for the half gores of a bend. */
export function pieceParts(piece: ShellPiece): Part[] {
  return piece.shape === 'rolled' ? [rolledPart(piece)] : bendParts(piece);
}

function rolledPart(piece: RolledPiece): Part {
  const { thickness } = piece;
  const development = developSection(
    neutralDiameter(piece.startDiameter, thickness),
    neutralDiameter(piece.endDiameter, thickness),
    piece.length,
  );
  const { blank, seamLength } =
    development.kind === 'cylinder'
      ? {
          blank: { width: development.circumference + SEAM_ALLOWANCE, height: development.length },
          seamLength: development.length,
        }
      : {
          // The allowance lies along one generator; a slightly wider sector holds it.
          blank: sectorBox(
            development.outerRadius,
            development.innerRadius,
            Math.min(2 * Math.PI, development.angle + SEAM_ALLOWANCE / development.outerRadius),
          ),
          seamLength: development.slant,
        };
  return {
    id: piece.id,
    name: piece.name,
    kind: 'rolled sheet',
    material: piece.material,
    count: 1,
    thickness,
    blankLength: Math.max(blank.width, blank.height),
    blankWidth: Math.min(blank.width, blank.height),
    area: development.area + seamLength * SEAM_ALLOWANCE,
    mass: development.area * thickness * densityOf(piece.material),
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
