/** The patterns of an engine as files to cut from: one SVG and one DXF for each. */
import type { Engine } from '../../../shared/engine/engine.ts';
import { enginePatterns } from '../../../shared/fabrication/patterns/engine-patterns.ts';
import { patternDxf } from './pattern-dxf.ts';
import { patternSvg } from './pattern-svg.ts';

export interface PatternFile {
  /** File name with forward slashes, e.g. "patterns/C1-chamber-shell.dxf". */
  name: string;
  content: string;
  description: string;
}

/** `prefix` is put before each part's identifier, e.g. "patterns/C1-". */
export function patternFiles(engine: Engine, prefix = ''): PatternFile[] {
  return enginePatterns(engine).flatMap((pattern) => {
    return [
      {
        name: `${prefix}${pattern.id}.svg`,
        content: `<?xml version="1.0" encoding="UTF-8"?>\n${patternSvg(pattern)}\n`,
        description: `${pattern.name}, SVG in mm`,
      },
      {
        name: `${prefix}${pattern.id}.dxf`,
        content: patternDxf(pattern),
        description: `${pattern.name}, DXF in mm`,
      },
    ];
  });
}
