/** Starts a browser for printing: ordinary arguments, web security on, its sandbox on where the system allows it. */
import { execFile } from 'node:child_process';
import type { Browser } from 'puppeteer';
import puppeteer from 'puppeteer';

export interface BrowserProgram {
  executablePath: string;
  /** 'shell' for the headless-only build, 'full' for an ordinary Chrome or Chromium. */
  build: 'shell' | 'full';
  /** Variables that this program needs beside the usual ones. */
  env: Record<string, string>;
}

export interface OpenBrowser {
  browser: Browser;
  notes: string[];
}

/** Two cores that are busy with a study may take long to start a browser. */
const START_TIMEOUT = 60_000;

const ARGUMENTS = [
  // Glyphs at their true positions instead of whole screen pixels.
  '--font-render-hinting=none',
  '--lang=en-US',
  // A second wall behind the blocked requests: no name resolves.
  '--host-resolver-rules=MAP * ~NOTFOUND',
];

/**
 * Opens the program over a pipe, so that it ends with this process and listens on no port.
 * Where the sandbox cannot start (root, or a system that forbids user namespaces) it runs without, and a note says so.
 * Throws with the browser's own words when it does not start.
 */
export async function launch(program: BrowserProgram, env: NodeJS.ProcessEnv): Promise<OpenBrowser> {
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0;
  try {
    const notes = asRoot ? ['the browser printed without its sandbox, because it was started by root'] : [];
    return { browser: await start(program, env, !asRoot), notes };
  } catch (error) {
    const words = await wordsOfFailure(program, env, !asRoot);
    if (asRoot || process.platform !== 'linux' || !/sandbox|namespace|zygote/i.test(words))
      throw new Error(words || (error as Error).message);
    const note = 'the browser printed without its sandbox, because this system does not let it make user namespaces';
    return { browser: await start(program, env, false), notes: [note] };
  }
}

function start(program: BrowserProgram, env: NodeJS.ProcessEnv, sandbox: boolean): Promise<Browser> {
  return puppeteer.launch({
    executablePath: program.executablePath,
    headless: program.build === 'shell' ? 'shell' : true,
    pipe: true,
    args: argumentsFor(sandbox),
    env: environmentFor(program, env),
    timeout: START_TIMEOUT,
    protocolTimeout: 600_000,
    // The command line decides what an interrupt means; the pipe ends the browser with us.
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  });
}

function argumentsFor(sandbox: boolean): string[] {
  return sandbox ? ARGUMENTS : [...ARGUMENTS, '--no-sandbox'];
}

function environmentFor(program: BrowserProgram, env: NodeJS.ProcessEnv): Record<string, string> {
  return { ...withoutSecrets(env), TZ: 'UTC', ...program.env };
}

/** Over a pipe a failed start says only "closed"; starting it once more by hand shows what it wrote about the reason. */
function wordsOfFailure(program: BrowserProgram, env: NodeJS.ProcessEnv, sandbox: boolean): Promise<string> {
  const args = [...argumentsFor(sandbox), '--headless', '--disable-breakpad', '--dump-dom', 'about:blank'];
  const options = { env: environmentFor(program, env), timeout: 20_000, killSignal: 'SIGKILL' as const };
  return new Promise((resolve) => {
    execFile(program.executablePath, args, options, (error, _stdout, stderr) => {
      if (!error) return resolve('');
      const lines = stderr.split('\n').filter((line) => line.trim() && !/^#\d/.test(line.trim()));
      resolve(lines.length > 0 ? lines.slice(0, 4).join('\n') : error.killed ? '' : error.message);
    });
  });
}

/** The browser needs no passwords of ours. */
export function withoutSecrets(env: NodeJS.ProcessEnv): Record<string, string> {
  const kept: Record<string, string> = {};
  for (const [name, value] of Object.entries(env))
    if (value !== undefined && !/^PULSEJET_|^NODE_OPTIONS$|PASSWORD|SECRET|TOKEN/i.test(name)) kept[name] = value;
  return kept;
}
