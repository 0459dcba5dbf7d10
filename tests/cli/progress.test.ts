import { expect, test } from 'vitest';
import { createProgress } from '../../src/cli/progress.ts';

function record(isTTY: boolean) {
  const written: string[] = [];
  const time = { now: 0 };
  const progress = createProgress({ isTTY, columns: 60, write: (text) => written.push(text) }, () => time.now);
  return { written, time, progress };
}

test('a pipe gets a calm line now and then, with count, best and time left', () => {
  const { written, time, progress } = record(false);
  progress.stage('Searching', 100);
  for (let i = 0; i < 50; i++) {
    time.now += 1;
    if (i === 10) progress.best('best 0.2');
    progress.answered(true, 1);
  }
  expect(written).toEqual([
    'Searching: 0 of 100\n',
    'Searching: 20 of 100 · best 0.2 · 1 min 20 s left\n',
    'Searching: 40 of 100 · best 0.2 · 1 min 0 s left\n',
  ]);
});

test('a terminal gets one line that renews itself and never wraps', () => {
  const { written, time, progress } = record(true);
  progress.stage('Searching', 10);
  progress.best('b'.repeat(200));
  time.now = 1;
  progress.answered(true, 0.25);
  progress.note('a \u001b[2J sentence');
  progress.close();
  const text = written.join('');
  expect(text).toContain('\r\u001b[2KSearching: 0 of 10');
  expect(written.every((piece) => piece.length < 61)).toBe(true);
  expect(text).toContain('a ?[2J sentence\n');
});

test('stored answers do not tell the pace', () => {
  const { written, time, progress } = record(false);
  progress.stage('Searching', 1000);
  for (let i = 0; i < 500; i++) progress.answered(false, 1);
  time.now = 30;
  progress.answered(true, 1);
  expect(written.at(-1)).toBe('Searching: 501 of 1000\n');
});
