/** Opens configuration files for the commands: every mistake is told at once, and nothing starts. */
import { loadEngine, loadStudy } from '../config/files.ts';
import { type ConfigProblem, formatProblem } from '../config/problems.ts';
import type { Study } from '../config/study.ts';
import { EXIT } from './exit-codes.ts';
import { Ended, tell } from './output.ts';

function endWith(problems: readonly ConfigProblem[], otherKind: (problem: ConfigProblem) => string | null): never {
  for (const problem of problems) tell(formatProblem(problem));
  for (const hint of new Set(problems.flatMap((problem) => otherKind(problem) ?? []))) tell(hint);
  tell(problems.length === 1 ? '1 mistake; nothing was started.' : `${problems.length} mistakes; nothing was started.`);
  throw new Ended(EXIT.badConfiguration);
}

/**
 * Reads every study before any of them starts.
 * @throws {Ended} after telling every mistake in every file
 */
export async function readStudies(files: readonly string[]): Promise<{ file: string; study: Study }[]> {
  const readings = await Promise.all(files.map((file) => loadStudy(file)));
  const problems = readings.flatMap((reading) => (reading.ok ? [] : reading.problems));
  if (problems.length > 0) {
    endWith(problems, ({ file, path }) =>
      path === 'engine' ? `${file} looks like an engine file: "pulsejet-study evaluate" takes it.` : null,
    );
  }
  return readings.flatMap((reading, i) => (reading.ok ? [{ file: files[i], study: reading.study }] : []));
}

/** @throws {Ended} after telling every mistake */
export async function readEngine(file: string) {
  const reading = await loadEngine(file);
  if (!reading.ok) {
    endWith(reading.problems, ({ path }) =>
      path === 'explore' ? `${file} looks like a study file: "pulsejet-study run" takes it.` : null,
    );
  }
  const { engine, brief } = reading;
  return { engine, brief };
}
