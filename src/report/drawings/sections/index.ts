/** Sections and faces of an engine: intake face, valve in section, augmenter in place. */
import type { Engine } from '../../../../shared/engine/engine.ts';
import type { SectionDrawing } from '../../drawing-set.ts';
import type { Paper } from '../../page.ts';
import { augmenterSection } from './augmenter-section.ts';
import { plateFace } from './plate-face.ts';
import { poppetSection } from './poppet-section.ts';
import { reedSection } from './reed-section.ts';

export interface SectionOptions {
  /** Begins every id in the drawings, e.g. the candidate's id. */
  id: string;
  /** Marks of the parts list by part identifier. */
  marks: Record<string, string>;
}

/** Drawings in the order of the flow. */
export function sectionDrawings(engine: Engine, paper: Paper, options: SectionOptions): SectionDrawing[] {
  const { intake } = engine;
  return [
    ...(intake.kind === 'valveless' ? [] : [plateFace(engine, intake, paper, options)]),
    ...(intake.kind === 'reed' ? [reedSection(engine, intake, paper, options)] : []),
    ...(intake.kind === 'poppet' ? [poppetSection(engine, intake, paper, options)] : []),
    ...(engine.augmenter ? [augmenterSection(engine, engine.augmenter, paper, options)] : []),
  ];
}
