/** A study folder with invented results, as much of them as the mail shows. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll } from 'vitest';
import type { Candidate, StudyResults } from '../../src/ranking/results.ts';

export const PDF = Buffer.from(`%PDF-1.4 ${'x'.repeat(3000)}`);
export const DXF = '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n';

export async function studyFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'delivery-test-'));
  afterAll(() => rm(folder, { recursive: true, force: true }));
  await mkdir(path.join(folder, 'patterns'));
  await writeFile(path.join(folder, 'report.pdf'), PDF);
  await writeFile(path.join(folder, 'report.html'), '<!doctype html><title>r</title>');
  await writeFile(path.join(folder, 'patterns', 'C1-shell.dxf'), DXF);
  await writeFile(path.join(folder, 'patterns', 'C1-shell.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  return folder;
}

export function results(title = 'Stand engine'): StudyResults {
  const candidate = {
    id: 'C1',
    rank: 1,
    architecture: { label: 'reed valves, no augmenter, premixed propane' },
    feasible: true,
    robustness: {
      draws: 64,
      sustainChance: 0.97,
      thrust: { low: 170, median: 178, high: 186 },
      tsfc: { low: 9e-5, median: 1e-4, high: 1.1e-4 },
      valveLife: { low: 600, median: 2400, high: 9000 },
    },
  } as unknown as Candidate;
  return {
    study: { slug: 'stand-engine', report: { title, question: 'Which engine?', invented: true } },
    toolVersion: '0.1.0',
    contradictions: ['No strip lives ten hours.'],
    answer: ['Build the reed engine C1.'],
    candidates: [candidate],
    architectures: [
      {
        architecture: { label: 'one poppet' },
        reason: 'The valve does not follow.',
        freedBy: 'Twelve valves would.',
      },
    ],
  } as unknown as StudyResults;
}
