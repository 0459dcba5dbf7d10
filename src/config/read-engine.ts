/** Engine file → engine and brief, for a single evaluation. Pure: the text is handed in. */
import type { Brief } from '../../shared/engine/brief.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { checkSource } from './check-source.ts';
import { engineContradictions } from './contradictions.ts';
import { engineFileSchema } from './engine-schema.ts';
import type { ConfigProblem } from './problems.ts';

export type EngineReading = { ok: true; engine: Engine; brief: Brief } | { ok: false; problems: ConfigProblem[] };

/**
 * Reads YAML or JSON text. Every mistake is listed with its line and column; nothing is thrown for bad text.
 * @param fileName name that messages show; nothing is opened.
 */
export function readEngineFile(text: string, fileName: string): EngineReading {
  const checked = checkSource(text, fileName, engineFileSchema, engineContradictions);
  return checked.ok ? { ok: true, ...checked.value } : checked;
}
