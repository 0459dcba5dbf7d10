/** What a run tells while it works: one line that renews itself on a terminal, a calm line now and then in a pipe. */
import { elapsed } from '../report/format/duration.ts';
import { printable } from './output.ts';

export interface Progress {
  /** A new stage, with the evaluations that it will take at most; null: not known. */
  stage(name: string, total: number | null): void;
  /** One answer arrived. Fresh ones tell the pace; a screening run counts as a part of an evaluation. */
  answered(fresh: boolean, weight: number): void;
  /** Best so far, in words. */
  best(words: string): void;
  /** A sentence that stays. */
  note(sentence: string): void;
  close(): void;
}

export interface ProgressStream {
  isTTY?: boolean;
  columns?: number;
  write(text: string): unknown;
}

/** s between renewals on a terminal, and between lines in a pipe. */
const RENEWAL = 0.2;
const CALM = 20;
/** Answers whose pace is averaged, and the fewest that tell one. */
const PACE_WINDOW = 64;
const PACE_LEAST = 8;

/** @param clock s, monotonic */
export function createProgress(stream: ProgressStream, clock: () => number): Progress {
  const live = stream.isTTY === true;
  let name = '';
  let total: number | null = null;
  let done = 0;
  let bestWords = '';
  let shown = '';
  let lastTime = Number.NEGATIVE_INFINITY;
  let pace: { time: number; done: number }[] = [];

  function secondsLeft(): number | null {
    if (total === null || pace.length < PACE_LEAST) return null;
    const [first, last] = [pace[0], pace[pace.length - 1]];
    return (Math.max(0, total - done) * (last.time - first.time)) / (last.done - first.done);
  }

  function line(): string {
    const count = total === null ? `${Math.floor(done)}` : `${Math.min(Math.floor(done), total)} of ${total}`;
    const left = secondsLeft();
    return printable(
      [`${name}: ${count}`, bestWords, left === null ? '' : `${elapsed(left)} left`].filter(Boolean).join(' · '),
    );
  }

  function erase(): void {
    if (shown !== '') stream.write('\r\x1b[2K');
    shown = '';
  }

  function show(now: boolean): void {
    const time = clock();
    if (name === '' || (!now && time - lastTime < (live ? RENEWAL : CALM))) return;
    lastTime = time;
    if (!live) {
      stream.write(`${line()}\n`);
      return;
    }
    erase();
    shown = line().slice(0, Math.max(20, (stream.columns ?? 80) - 1));
    stream.write(shown);
  }

  return {
    stage(next, expected) {
      name = next;
      total = expected;
      done = 0;
      pace = [];
      show(true);
    },
    answered(fresh, weight) {
      done += weight;
      if (fresh) pace.push({ time: clock(), done });
      if (pace.length > PACE_WINDOW) pace.shift();
      show(false);
    },
    best(words) {
      bestWords = words;
    },
    note(sentence) {
      erase();
      stream.write(`${printable(sentence)}\n`);
    },
    close: erase,
  };
}

/** Says nothing. */
export const SILENT: Progress = { stage() {}, answered() {}, best() {}, note() {}, close() {} };
