/** The places where a browser may be, in the order in which they are tried. */
import { constants, rmSync } from 'node:fs';
import { access } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import {
  Browser,
  ChromeReleaseChannel,
  computeSystemExecutablePath,
  detectBrowserPlatform,
  getDownloadUrl,
  getInstalledBrowsers,
  install,
} from '@puppeteer/browsers';
import { bundledPackageFolder, prepareBundledChromium } from './bundled-chromium.ts';
import type { BrowserProgram } from './launch.ts';
import { unlessStalled } from './stall.ts';
import { userCacheFolder } from './user-cache.ts';

/** The Chrome that the pinned puppeteer is made for; a test compares it with puppeteer's own table. */
export const CHROME_BUILD = '148.0.7778.97';

export interface FoundProgram extends BrowserProgram {
  notes: string[];
}

export interface BrowserPlace {
  /** For people, e.g. "the bundled Chromium". */
  origin: string;
  /** Programs to try, best first. Throws with a reason when there is none. */
  find(env: NodeJS.ProcessEnv): Promise<FoundProgram[]>;
}

export const NAMED_PLACE: BrowserPlace = {
  origin: 'PUPPETEER_EXECUTABLE_PATH',
  async find(env) {
    const executablePath = env.PUPPETEER_EXECUTABLE_PATH ?? '';
    await access(executablePath, constants.X_OK).catch(() => {
      throw new Error(`"${executablePath}" is no program that may be run`);
    });
    return [program(executablePath)];
  },
};

const PUPPETEER_CACHE: BrowserPlace = {
  origin: "puppeteer's cache",
  async find(env) {
    const cacheDir = env.PUPPETEER_CACHE_DIR || path.join(env.HOME || homedir(), '.cache', 'puppeteer');
    const kinds: string[] = [Browser.CHROMEHEADLESSSHELL, Browser.CHROME, Browser.CHROMIUM];
    const found = (await getInstalledBrowsers({ cacheDir }))
      .filter(({ browser }) => kinds.includes(browser))
      // The pinned version first, so that the same bytes come out; then the smallest program.
      .sort((a, b) => rank(a) - rank(b) || b.buildId.localeCompare(a.buildId, 'en', { numeric: true }));
    function rank(it: { buildId: string; browser: string }): number {
      return (it.buildId === CHROME_BUILD ? 0 : kinds.length) + kinds.indexOf(it.browser);
    }
    if (found.length === 0) throw new Error(`no Chrome lies in ${cacheDir}`);
    return found.map(({ executablePath }) => program(executablePath));
  },
};

const BUNDLED: BrowserPlace = {
  origin: 'the bundled Chromium (@sparticuz/chromium)',
  async find(env) {
    const bundled = await prepareBundledChromium(env, bundledPackageFolder());
    const folder = bundled.temporaryFolder;
    if (folder) process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
    return [{ executablePath: bundled.executablePath, build: 'shell', env: bundled.env, notes: bundled.notes }];
  },
};

const SYSTEM: BrowserPlace = {
  origin: 'a Chrome or Chromium of the system',
  async find(env) {
    const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
    const folders = (env.PATH ?? '').split(path.delimiter).filter((folder) => path.isAbsolute(folder));
    const places = names.flatMap((name) => folders.map((folder) => path.join(folder, name)));
    const platform = detectBrowserPlatform();
    if (platform) {
      try {
        places.push(
          computeSystemExecutablePath({ browser: Browser.CHROME, platform, channel: ChromeReleaseChannel.STABLE }),
        );
      } catch {
        // Thrown where Chrome is not at its usual place; the names on the PATH remain.
      }
    }
    if (process.platform === 'darwin') places.push('/Applications/Chromium.app/Contents/MacOS/Chromium');
    const usable: string[] = [];
    for (const place of places) if (await mayRun(place)) usable.push(place);
    if (usable.length === 0) throw new Error(`none of ${names.join(', ')} is on the PATH or at its usual place`);
    return usable.map(program);
  },
};

const DOWNLOAD: BrowserPlace = {
  origin: 'a download of Chrome for printing',
  async find(env) {
    if (env.PUPPETEER_SKIP_DOWNLOAD && env.PUPPETEER_SKIP_DOWNLOAD !== 'false')
      throw new Error('switched off by PUPPETEER_SKIP_DOWNLOAD');
    const platform = detectBrowserPlatform();
    if (!platform) throw new Error(`no build exists for ${process.platform} on ${process.arch}`);
    const buildId = CHROME_BUILD;
    const browser = Browser.CHROMEHEADLESSSHELL;
    const url = getDownloadUrl(browser, platform, buildId);
    // Asked first with a time limit, since the download itself has none.
    const answer = await fetch(url, { method: 'HEAD', signal: AbortSignal.timeout(10_000) }).catch((error: Error) => {
      throw new Error(`${url.host} could not be reached (${cause(error)})`);
    });
    if (!answer.ok) throw new Error(`${url.host} answered ${answer.status}`);
    const cacheDir = path.join(userCacheFolder(env), 'downloaded');
    const installed = await unlessStalled(
      (alive) => install({ browser, buildId, platform, cacheDir, downloadProgressCallback: alive }),
      60,
    );
    return [program(installed.executablePath)];
  },
};

/** Everything after PUPPETEER_EXECUTABLE_PATH, in order. */
export const PLACES: readonly BrowserPlace[] = [PUPPETEER_CACHE, BUNDLED, SYSTEM, DOWNLOAD];

function program(executablePath: string): FoundProgram {
  const build = /headless[-_]shell/.test(path.basename(executablePath)) ? 'shell' : 'full';
  return { executablePath, build, env: {}, notes: [] };
}

async function mayRun(file: string): Promise<boolean> {
  return access(file, constants.X_OK).then(
    () => true,
    () => false,
  );
}

function cause(error: Error): string {
  const inner = error.cause instanceof Error ? error.cause : error;
  return inner.message;
}
