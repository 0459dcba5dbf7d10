/** The parts that an engine is made of, with the sheet, strip or bar that each needs. */
import type { Engine } from '../engine/engine.ts';
import { augmenterPieces, intakeBellPieces } from './bell-pieces.ts';
import { augmenterStayParts, bossParts, flangeParts, legBracketParts, mountingParts } from './hardware-parts.ts';
import { poppetParts } from './poppet-parts.ts';
import { reedParts } from './reed-parts.ts';
import { pieceParts } from './shell-parts.ts';
import { shellPieces } from './shell-pieces.ts';

export interface Part {
  /** Stable kebab-case identifier, unique in the engine, e.g. "chamber-shell". */
  id: string;
  name: string;
  kind: 'rolled sheet' | 'flat sheet' | 'plate' | 'strip' | 'bar' | 'wire';
  /** Standard designation of the material. */
  material: string;
  count: number;
  /** Thickness of sheet, plate or strip, m; diameter of bar or wire, m. */
  thickness: number;
  /** Smallest rectangle that holds one blank, m; for bar and wire: length × 0. */
  blankLength: number;
  blankWidth: number;
  /** Net area of one blank, m²; 0 for bar and wire. */
  area: number;
  /** Mass of one finished part, kg. */
  mass: number;
}

/** Lists every part of the engine, shell first, then intake, then augmenter. */
export function partsList(engine: Engine): Part[] {
  return [
    ...shellPieces(engine).flatMap(pieceParts),
    ...intakeBellPieces(engine).flatMap(pieceParts),
    ...flangeParts(engine),
    ...bossParts(engine),
    ...mountingParts(engine),
    ...legBracketParts(engine),
    ...(engine.intake.kind === 'reed' ? reedParts(engine, engine.intake) : []),
    ...(engine.intake.kind === 'poppet' ? poppetParts(engine, engine.intake) : []),
    ...augmenterPieces(engine).flatMap(pieceParts),
    ...augmenterStayParts(engine),
  ];
}
