import { chmod, writeFile } from 'node:fs/promises';
import path from 'node:path';
import * as puppeteer from 'puppeteer';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import type { BrowserPlace } from '../../src/report/printing/browser-places.ts';
import { CHROME_BUILD, PLACES } from '../../src/report/printing/browser-places.ts';
import { findBrowser } from '../../src/report/printing/find-browser.ts';
import { launch, withoutSecrets } from '../../src/report/printing/launch.ts';
import { NoBrowserError } from '../../src/report/printing/no-browser-error.ts';
import { probe } from '../../src/report/printing/probe.ts';
import { unlessStalled } from '../../src/report/printing/stall.ts';
import { scratchFolder } from './fixture.ts';

let folder: string;
let broken: string;

beforeAll(async () => {
  folder = await scratchFolder();
  broken = path.join(folder, 'broken-browser');
  await writeFile(broken, '#!/bin/sh\necho "cannot open shared object file: libnss3.so" >&2\nexit 127\n');
  await chmod(broken, 0o755);
});

function place(origin: string, find: BrowserPlace['find']): BrowserPlace {
  return { origin, find };
}

describe('findBrowser', () => {
  it('takes the places in the documented order', () => {
    expect(PLACES.map((one) => one.origin)).toEqual([
      "puppeteer's cache",
      'the bundled Chromium (@sparticuz/chromium)',
      'a Chrome or Chromium of the system',
      'a download of Chrome for printing',
    ]);
  });

  it('never falls back from PUPPETEER_EXECUTABLE_PATH', async () => {
    const never = place('never', async () => {
      throw new Error('was asked');
    });
    for (const [value, reason] of [
      ['/nowhere/chrome', /no program that may be run/],
      [broken, /cannot open shared object file: libnss3/],
    ] as const) {
      const error = await findBrowser({ ...process.env, PUPPETEER_EXECUTABLE_PATH: value }, [never]).catch((e) => e);
      expect(error).toBeInstanceOf(NoBrowserError);
      expect(error.refusals.length).toBe(1);
      expect(error.refusals[0].origin).toBe('PUPPETEER_EXECUTABLE_PATH');
      expect(error.message).toMatch(reason);
      expect(error.message).toContain('Nothing else was tried');
    }
  });

  it('goes on past a browser that does not start, and lists every reason when none is left', async () => {
    const program = { executablePath: broken, build: 'shell' as const, env: {}, notes: [] };
    const places = [
      place('first', async () => {
        throw new Error('nothing here');
      }),
      place('second', async () => [program]),
    ];
    const error = await findBrowser({ PATH: process.env.PATH }, places).catch((e) => e);
    expect(error).toBeInstanceOf(NoBrowserError);
    expect(error.message).toContain('1. first: nothing here');
    expect(error.message).toContain(`2. second: ${broken}`);
    expect(error.message).toContain('HTML report is complete');
    const found = await findBrowser(process.env, [...places, ...PLACES]);
    expect(found.version).toMatch(/Chrome\/\d+/);
    // Another browser prints other bytes.
    expect(found.notes.join('\n')).toContain(`second was passed over, because it failed: ${broken}`);
  });

  it('says what is missing at each real place of an empty machine', async () => {
    const env = { PATH: folder, HOME: folder, PUPPETEER_SKIP_DOWNLOAD: 'true' };
    const error = await findBrowser(
      env,
      PLACES.filter((one) => !one.origin.includes('bundled')),
    ).catch((e) => e);
    // A Chrome at its usual absolute place is found even with an empty PATH; that is no empty machine.
    if (!(error instanceof NoBrowserError)) return expect(error.origin).toContain('system');
    expect(error.refusals.map((refusal) => refusal.reason).join('\n')).toMatch(
      /no Chrome lies in[\s\S]*on the PATH[\s\S]*PUPPETEER_SKIP_DOWNLOAD/,
    );
  });

  it('looks for the Chrome that the installed puppeteer is made for', () => {
    const table = (puppeteer as unknown as { PUPPETEER_REVISIONS: Record<string, string> }).PUPPETEER_REVISIONS;
    expect(CHROME_BUILD).toBe(table['chrome-headless-shell']);
  });
});

describe('unlessStalled', () => {
  it('waits as long as something comes, and no longer', async () => {
    const steady = (alive: () => void) =>
      new Promise<string>((resolve) => {
        let count = 0;
        const timer = setInterval(() => {
          alive();
          if (++count < 8) return;
          clearInterval(timer);
          resolve('done');
        }, 50);
      });
    // 400 ms of work under a limit of 300 ms of silence.
    expect(await unlessStalled(steady, 0.3)).toBe('done');
    await expect(unlessStalled(() => new Promise(() => undefined), 0.05)).rejects.toThrow(/nothing came/);
    await expect(unlessStalled(() => Promise.reject(new Error('404')), 5)).rejects.toThrow('404');
  });
});

describe('the trial page', () => {
  it('refuses a browser that has no fonts, which itself reports success', async () => {
    const found = await findBrowser();
    if (!found.origin.includes('bundled')) return;
    const emptyConf = path.join(folder, 'no-fonts.conf');
    await writeFile(emptyConf, '<?xml version="1.0"?><fontconfig></fontconfig>');
    const libraries = path.join(path.dirname(found.executablePath), 'lib');
    const { browser } = await launch(
      {
        executablePath: found.executablePath,
        build: 'shell',
        env: { LD_LIBRARY_PATH: libraries, FONTCONFIG_FILE: emptyConf },
      },
      process.env,
    );
    try {
      await expect(probe(browser)).rejects.toThrow(/shows 0 of 22 characters/);
    } finally {
      await browser.close();
    }
  });
});

describe('the browser process', () => {
  afterEach(() => vi.restoreAllMocks());

  it('runs in its sandbox where it can, and says so where it cannot', async () => {
    const real = await findBrowser();
    const env = path.join(path.dirname(real.executablePath), 'fonts.conf');
    const wrapper = path.join(folder, 'no-namespaces');
    // Chromium's own words on a system that forbids user namespaces.
    await writeFile(
      wrapper,
      `#!/bin/sh\ncase "$*" in *--no-sandbox*) exec "${real.executablePath}" "$@";; esac\n` +
        'echo "FATAL:zygote_host_impl_linux.cc(129)] No usable sandbox!" >&2\nexit 1\n',
    );
    await chmod(wrapper, 0o755);
    vi.spyOn(process, 'getuid').mockReturnValue(1000);
    const program = { executablePath: wrapper, build: 'shell' as const, env: { FONTCONFIG_FILE: env } };
    const { browser, notes } = await launch(program, process.env);
    await browser.close();
    expect(notes.join()).toContain('does not let it make user namespaces');
    // Any other failure is no reason to switch the sandbox off.
    await expect(launch({ ...program, executablePath: broken }, process.env)).rejects.toThrow(/libnss3/);
  });

  it('is given no secrets', () => {
    const kept = withoutSecrets({ PATH: '/bin', PULSEJET_SMTP_PASSWORD: 'x', NPM_TOKEN: 'y', HOME: '/h' });
    expect(kept).toEqual({ PATH: '/bin', HOME: '/h' });
  });

  it('runs with web security on', async () => {
    const found = await findBrowser();
    const browser = await found.open();
    try {
      const args = browser.process()!.spawnargs.join(' ');
      expect(args).not.toMatch(/disable-web-security|allow-running-insecure|single-process|site-isolation-trials/);
      expect(args).not.toContain('remote-debugging-port');
    } finally {
      await browser.close();
    }
  });
});
