/** Starts the real command in a process of its own, from the build that was made before the tests. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

export const LAUNCHER = fileURLToPath(new URL('../../src/cli/launch.mjs', import.meta.url));
export const TINY = fileURLToPath(new URL('./tiny-study.yaml', import.meta.url));
export const ENGINE = fileURLToPath(new URL('../../configs/engines/class-50-cm.yaml', import.meta.url));

export interface Ended {
  code: number | null;
  signal: string | null;
  stdout: string;
  stderr: string;
}

export interface Started {
  child: ChildProcess;
  ended: Promise<Ended>;
}

export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), 'cli-'));
}

export function start(args: string[], env: NodeJS.ProcessEnv = {}): Started {
  return startProgram([join(inject('build'), 'main.js'), ...args], env);
}

/** Any program, Node unless said otherwise, from another current directory than the project's. */
export function startProgram(args: string[], env: NodeJS.ProcessEnv = {}, program = process.execPath): Started {
  const child = spawn(program, args, { cwd: tmpdir(), env: { ...process.env, ...env } });
  let stdout = '';
  let stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text) => {
    stderr += text;
  });
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (code, signal) => resolve({ code, signal, stdout, stderr }));
  });
  return { child, ended };
}

export const run = (args: string[], env?: NodeJS.ProcessEnv) => start(args, env).ended;
