/** What the tool stands on: pinned versions, known licences, and no install script that it needs. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

interface Locked {
  version: string;
  license?: string;
  integrity?: string;
  dev?: boolean;
  optional?: boolean;
  hasInstallScript?: boolean;
}

const root = new URL('../../', import.meta.url);
const read = (path: string) => JSON.parse(readFileSync(new URL(path, root), 'utf8'));
const declared = read('package.json');
const lock: Record<string, Locked> = read('package-lock.json').packages;
const packages = Object.entries(lock)
  .filter(([path]) => path !== '')
  .map(([path, locked]) => ({ path, name: path.replace(/^.*node_modules\//, ''), ...locked }));
const runtime = packages.filter(({ dev }) => !dev);

/** Licences that ask for no more than that they are named and passed on with their text. */
const PERMISSIVE = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
  'MIT-0',
  'OFL-1.1',
  'Python-2.0',
];

/** Why the tool works when these packages' install scripts are not run. */
const SCRIPTS_NOT_NEEDED: Record<string, string> = {
  esbuild: 'it checks and shortens the way to a binary that comes as a package of its own',
  'msgpackr-extract': 'it builds a faster reader for the queue; without it plain JavaScript reads',
  puppeteer:
    'it fetches a browser; one of the system or the optional package prints as well, and without any the HTML stands',
};

const byName = (a: { name: string; version: string }, b: { name: string; version: string }) =>
  a.name === b.name ? a.version.localeCompare(b.version, 'en', { numeric: true }) : a.name < b.name ? -1 : 1;

function licenceTable(): string {
  const rows = new Map(
    runtime
      .toSorted(byName)
      .map(({ name, version, license, optional }) => [
        `${name} ${version}`,
        `| ${name} | ${version} | ${license} | ${optional ? 'optional' : ''} |`,
      ]),
  );
  return [
    '# Licences of everything that runs',
    '',
    'Packages that are installed for running, those of packages included, from the lock file; `npx vitest run tests/packages -u`',
    'writes this table. Each package carries its licence text. The optional Chromium package also carries Chromium, NSS and Open',
    'Sans under licences of their own.',
    '',
    '| package | version | licence | |',
    '|---|---|---|---|',
    ...rows.values(),
    '',
  ].join('\n');
}

describe('runtime packages', () => {
  test.each(runtime.map(({ path, license }) => [path, license]))(
    '%s has a licence that may be passed on: %s',
    (_, license) => {
      expect(PERMISSIVE).toContain(license);
    },
  );

  test('what is installed says the same licence and version as the lock file', () => {
    const installed = runtime.filter(({ path }) => existsSync(new URL(`${path}/package.json`, root)));
    expect(installed.length).toBeGreaterThan(100);
    for (const { path, version, license } of installed) {
      const own = read(`${path}/package.json`);
      expect(own.version, path).toBe(version);
      expect(own.license, path).toBe(license);
    }
  });

  test('are listed with their licences', async () => {
    await expect(licenceTable()).toMatchFileSnapshot('../../src/bench/LICENCES.md');
  });
});

describe('every package', () => {
  test('is pinned to one version, and its content to a digest', () => {
    const wanted = { ...declared.dependencies, ...declared.optionalDependencies, ...declared.devDependencies };
    for (const [name, version] of Object.entries<string>(wanted)) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
      expect(lock[`node_modules/${name}`].version, name).toBe(version);
    }
    for (const { path, integrity } of packages) expect(integrity, path).toMatch(/^sha512-/);
  });

  test('installs without a script that is needed', () => {
    const scripted = runtime.filter(({ hasInstallScript }) => hasInstallScript).map(({ name }) => name);
    for (const name of scripted) expect(SCRIPTS_NOT_NEEDED, name).toHaveProperty([name]);
    expect(['preinstall', 'install', 'postinstall', 'prepare'].filter((script) => script in declared.scripts)).toEqual(
      [],
    );
  });
});
