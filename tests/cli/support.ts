/** Starts the real command in a process of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const LAUNCHER = fileURLToPath(new URL('../../src/cli/launch.mjs', import.meta.url));
export const TINY = fileURLToPath(new URL('./tiny-study.yaml', import.meta.url));
export const ENGINE = fileURLToPath(new URL('../../configs/engines/class-50-cm.yaml', import.meta.url));

export interface Ended {
  code: number | null;
  signal: string | null;
  stdout: string;
  stderr: string;
}

export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), 'cli-'));
}

export function start(args: string[], env: NodeJS.ProcessEnv = {}): { child: ChildProcess; ended: Promise<Ended> } {
  const child = spawn(process.execPath, [LAUNCHER, ...args], { cwd: tmpdir(), env: { ...process.env, ...env } });
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
