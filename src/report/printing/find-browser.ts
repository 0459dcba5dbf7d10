/** Finds a browser that is proved to print. */
import type { Browser } from 'puppeteer';
import type { BrowserPlace, FoundProgram } from './browser-places.ts';
import { NAMED_PLACE, PLACES } from './browser-places.ts';
import { launch } from './launch.ts';
import type { BrowserRefusal } from './no-browser-error.ts';
import { NoBrowserError } from './no-browser-error.ts';
import { probe } from './probe.ts';

export interface ProvenBrowser {
  /** Where it was found, for people. */
  origin: string;
  /** E.g. "HeadlessChrome/147.0.7727.0". */
  version: string;
  executablePath: string;
  /** What the user should know, e.g. that the sandbox is off. */
  notes: string[];
  /** Starts it; the caller closes it. */
  open(): Promise<Browser>;
}

const ADVICE =
  'What helps: run "npm ci" with optional packages on Linux x64, install Chrome or Chromium, ' +
  'or set PUPPETEER_EXECUTABLE_PATH to one. Then "pulsejet-study report <study folder>" prints the PDF without a new search.';
const NAMED_ADVICE =
  'Nothing else was tried, because PUPPETEER_EXECUTABLE_PATH is set. Correct it, or remove it to let one be found.';

/**
 * Tries every place in order and takes the first browser that prints a trial page with all its text.
 * PUPPETEER_EXECUTABLE_PATH, when set, is the only place: a choice that a user made never falls back silently.
 * Throws NoBrowserError with the reason of each place.
 */
export async function findBrowser(
  env: NodeJS.ProcessEnv = process.env,
  places: readonly BrowserPlace[] = PLACES,
): Promise<ProvenBrowser> {
  const named = env.PUPPETEER_EXECUTABLE_PATH !== undefined && env.PUPPETEER_EXECUTABLE_PATH !== '';
  const refusals: BrowserRefusal[] = [];
  /** Programs that are there and failed: another one prints other bytes, so the user is told. */
  const failures: BrowserRefusal[] = [];
  for (const place of named ? [NAMED_PLACE] : places) {
    let programs: FoundProgram[];
    try {
      programs = await place.find(env);
    } catch (error) {
      refusals.push({ origin: place.origin, reason: oneLine(error) });
      continue;
    }
    for (const program of programs) {
      try {
        const proven = await proveTwice(place.origin, program, env);
        return { ...proven, notes: [...proven.notes, ...failures.map(passedOver)] };
      } catch (error) {
        const refusal = { origin: place.origin, reason: `${program.executablePath}: ${oneLine(error)}` };
        refusals.push(refusal);
        failures.push(refusal);
      }
    }
  }
  throw new NoBrowserError(refusals, named ? NAMED_ADVICE : ADVICE);
}

/** A short want of memory or time on a busy machine must not change the browser, and with it the bytes of the PDF. */
async function proveTwice(origin: string, program: FoundProgram, env: NodeJS.ProcessEnv): Promise<ProvenBrowser> {
  try {
    return await prove(origin, program, env);
  } catch {
    return await prove(origin, program, env);
  }
}

function passedOver({ origin, reason }: BrowserRefusal): string {
  return `${origin} was passed over, because it failed: ${reason}`;
}

async function prove(origin: string, program: FoundProgram, env: NodeJS.ProcessEnv): Promise<ProvenBrowser> {
  const { browser, notes } = await launch(program, env);
  try {
    await probe(browser);
    return {
      origin,
      version: await browser.version(),
      executablePath: program.executablePath,
      notes: [...program.notes, ...notes],
      open: async () => (await launch(program, env)).browser,
    };
  } finally {
    await browser.close().catch(() => undefined);
  }
}

/** The part of a message that says what happened; browsers add pages of traces and advice. */
function oneLine(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  const lines = message.split('\n').map((line) => line.trim());
  const telling = lines.filter((line) => line && !/^(TROUBLESHOOTING|#\d|stderr:|Code: )/.test(line));
  const text = telling.slice(0, 3).join(' ');
  return text.length > 400 ? `${text.slice(0, 397)}...` : text;
}
