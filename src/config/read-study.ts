/** Study file → study. Pure: the text is handed in. */
import { checkSource } from './check-source.ts';
import { studyContradictions } from './contradictions.ts';
import type { ConfigProblem } from './problems.ts';
import type { Study } from './study.ts';
import { studySchema } from './study-schema.ts';

export type StudyReading = { ok: true; study: Study } | { ok: false; problems: ConfigProblem[] };

/**
 * Reads YAML or JSON text. Every mistake is listed with its line and column; nothing is thrown for bad text.
 * @param fileName name that messages show; nothing is opened.
 */
export function readStudy(text: string, fileName: string): StudyReading {
  const checked = checkSource(text, fileName, studySchema, studyContradictions);
  return checked.ok ? { ok: true, study: checked.value } : checked;
}
