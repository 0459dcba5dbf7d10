/** Mutated configuration files: each is read, or every mistake has its line and column; nothing is ever thrown. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { type ConfigProblem, formatProblem } from '../../config/problems.ts';
import { readEngineFile } from '../../config/read-engine.ts';
import { readStudy } from '../../config/read-study.ts';
import { pathOfNotFinite } from '../../evaluation/not-finite.ts';
import { childRandom, integerBelow, type Random } from '../../search/random.ts';
import { architecturesOf } from '../../space/architectures.ts';
import { chanceDesign } from '../chance-design.ts';
import { mutate } from './mutate-text.ts';
import { countFault, emptyTally, type Tally } from './tally.ts';

const PLACE = /^f\.yaml:[1-9]\d*:[1-9]\d*( [^\n]+)?: expected [^\n]+, found [^\n]+$/;
/** s; a file of a few kilobytes takes some milliseconds. */
const SLOW = 5;
/** Designs that are built from a study that was accepted. */
const BUILT = 3;

function faultOfProblems(problems: readonly ConfigProblem[]): string | null {
  if (problems.length === 0) return 'it is refused without a reason';
  const odd = problems.map(formatProblem).find((line) => !PLACE.test(line));
  return odd === undefined ? null : `no place in ${JSON.stringify(odd)}`;
}

/** What is wrong with how the text is read; null: accepted or refused as it should be. */
function tryText(text: string, isEngine: boolean, random: Random): { accepted: boolean; fault: string | null } {
  if (isEngine) {
    const reading = readEngineFile(text, 'f.yaml');
    if (!reading.ok) return { accepted: false, fault: faultOfProblems(reading.problems) };
    const path = pathOfNotFinite({ engine: reading.engine, brief: reading.brief });
    return { accepted: true, fault: path === null ? null : `${path} is not a finite number` };
  }
  const reading = readStudy(text, 'f.yaml');
  if (!reading.ok) return { accepted: false, fault: faultOfProblems(reading.problems) };
  const path = pathOfNotFinite(reading.study);
  if (path !== null) return { accepted: true, fault: `${path} is not a finite number` };
  for (const space of architecturesOf(reading.study).slice(0, BUILT)) {
    const built = space.toEngine(chanceDesign(space, random));
    const odd = 'refused' in built ? null : pathOfNotFinite(built);
    if (odd !== null) return { accepted: true, fault: `${odd} of a design is not a finite number` };
  }
  return { accepted: true, fault: null };
}

export interface SoakFilesInput {
  files: number;
  seed: string;
  /** Sound files to start from; those in a folder "engines" are engines. */
  sources: readonly string[];
  onProgress: (done: number) => void;
}

export function soakFiles({ files, seed, sources, onProgress }: SoakFilesInput): Tally {
  const tally = emptyTally('mutated configuration files');
  const texts = sources.map((path) => ({ path, text: readFileSync(path, 'utf8') }));
  let accepted = 0;
  let longest = 0;
  for (let index = 0; index < files; index++) {
    const random = childRandom(seed, `file ${index}`);
    const { path, text } = texts[integerBelow(random, texts.length)];
    const other = texts[integerBelow(random, texts.length)].text;
    const mutated = mutate(random, text, other);
    const began = performance.now();
    tally.tried++;
    try {
      const outcome = tryText(mutated, /[\\/]engines[\\/]/.test(path), random);
      if (outcome.accepted) accepted++;
      if (outcome.fault !== null) countFault(tally, 'wrong', `file ${index} (${basename(path)}): ${outcome.fault}`);
    } catch (error) {
      const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
      countFault(tally, 'lost', `file ${index} (${basename(path)}) throws ${words.slice(0, 300)}`);
    }
    const seconds = (performance.now() - began) / 1000;
    longest = Math.max(longest, seconds);
    if (seconds > SLOW) countFault(tally, 'wrong', `file ${index} (${basename(path)}) takes ${seconds.toFixed(1)} s`);
    if (tally.tried % 1000 === 0) onProgress(tally.tried);
  }
  tally.notes.push(`${accepted} still hold a study or engine, ${files - accepted} are refused with line and column`);
  tally.notes.push(`longest reading: ${longest.toFixed(2)} s`);
  return tally;
}
