/** The duct cut into pieces that are rolled or mitred one by one, with their stations along the centreline. */
import type { Engine, Section, SectionRole } from '../engine/engine.ts';
import { LARGEST_MITRE, LONGEST_COURSE } from './proportions.ts';

interface PieceCommon {
  /** Stable kebab-case identifier, unique in the engine. */
  id: string;
  name: string;
  /** Index of the section that it belongs to; −1 for pieces outside the duct. */
  section: number;
  /** Centreline stations of its ends from the valve plate or intake mouth, m. */
  startStation: number;
  endStation: number;
  thickness: number;
  material: string;
}

/** A cylinder (equal diameters) or cone. Inside diameters, m; length along the axis, m. */
export interface RolledPiece extends PieceCommon {
  shape: 'rolled';
  startDiameter: number;
  endDiameter: number;
  length: number;
}

/** A mitred bend of one diameter. */
export interface BendPiece extends PieceCommon {
  shape: 'bend';
  diameter: number;
  angle: number;
  centreRadius: number;
  mitres: number;
}

export type ShellPiece = RolledPiece | BendPiece;

const ROLE_NAMES: Record<SectionRole, string> = {
  intake: 'Intake pipe',
  'intake-cone': 'Intake cone',
  chamber: 'Chamber',
  'chamber-cone': 'Chamber cone',
  tailpipe: 'Tailpipe',
  bend: 'Bend',
  'exit-flare': 'Exit flare',
};

/**
 * Pieces of the duct in order from the head. Sections longer than the longest course become several equal courses.
 * A bend that changes diameter is taken at its mean diameter for mass; `isTaperedBend` tells.
 */
export function shellPieces(engine: Engine): ShellPiece[] {
  const pieces: ShellPiece[] = [];
  let station = 0;
  engine.sections.forEach((section, index) => {
    const common = { section: index, thickness: engine.shell.thickness, material: engine.shell.material };
    const { id, name } = sectionName(engine.sections, index);
    if (section.bend) {
      pieces.push({
        ...common,
        shape: 'bend',
        id: `${id}-shell`,
        name,
        startStation: station,
        endStation: station + section.length,
        diameter: (section.startDiameter + section.endDiameter) / 2,
        angle: section.bend.angle,
        centreRadius: section.bend.radius,
        mitres: Math.max(1, Math.ceil(section.bend.angle / LARGEST_MITRE - 1e-9)),
      });
    } else {
      pieces.push(...courses(section, station, id, name, common));
    }
    station += section.length;
  });
  return pieces;
}

export function isTaperedBend(section: Section): boolean {
  return section.bend !== undefined && Math.abs(section.startDiameter - section.endDiameter) > 1e-6;
}

function courses(
  section: Section,
  station: number,
  id: string,
  name: string,
  common: Pick<PieceCommon, 'section' | 'thickness' | 'material'>,
): RolledPiece[] {
  const count = Math.max(1, Math.ceil(section.length / LONGEST_COURSE - 1e-9));
  return Array.from({ length: count }, (_, i) => {
    const diameterAt = (k: number) =>
      section.startDiameter + ((section.endDiameter - section.startDiameter) * k) / count;
    return {
      ...common,
      shape: 'rolled' as const,
      id: count === 1 ? `${id}-shell` : `${id}-shell-${i + 1}`,
      name: count === 1 ? name : `${name}, course ${i + 1} of ${count}`,
      startStation: station + (section.length * i) / count,
      endStation: station + (section.length * (i + 1)) / count,
      startDiameter: diameterAt(i),
      endDiameter: diameterAt(i + 1),
      length: section.length / count,
    };
  });
}

/** "tailpipe" when there is one, "tailpipe-2" for the second of several. */
function sectionName(sections: Section[], index: number): { id: string; name: string } {
  const { role } = sections[index];
  const same = sections.flatMap((s, i) => (s.role === role ? [i] : []));
  const name = ROLE_NAMES[role];
  if (same.length === 1) return { id: role, name };
  const number = same.indexOf(index) + 1;
  return { id: `${role}-${number}`, name: `${name} ${number}` };
}
