/**
 * Bundles the TypeScript sources into plain JavaScript that threads can run.
 *
 * One build holds one entry and the evaluation worker. It lies in dist/<hash of all sources and the entry's name>/, is
 * made in a temporary folder and renamed into place, so that two starts at once cannot see half a build.
 */
import { createHash, randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const DIST = join(ROOT, 'dist');
const WORKER = join(ROOT, 'src', 'evaluation', 'worker.ts');
const MODEL_DOOR = join(ROOT, 'shared', 'index.ts');
/** A build that nobody runs is kept this long, ms. */
const KEPT = 3_600_000;

/** Every source file that can change a build, sorted, as absolute paths. */
async function sourceFiles() {
  const found = [join(ROOT, 'package.json'), join(ROOT, 'package-lock.json'), fileURLToPath(import.meta.url)];
  for (const room of ['src', 'shared']) {
    for (const entry of await readdir(join(ROOT, room), { recursive: true, withFileTypes: true })) {
      if (entry.isFile() && /\.(ts|json|data)$/.test(entry.name))
        found.push(join(entry.parentPath ?? entry.path, entry.name));
    }
  }
  return found.sort();
}

async function hashOfSources(entry) {
  const hash = createHash('sha256').update(`${entry}\n${process.version}\n`);
  for (const file of await sourceFiles()) {
    hash.update(relative(ROOT, file).split(sep).join('/')).update('\0');
    hash.update(await readFile(file)).update('\0');
  }
  return hash.digest('hex').slice(0, 24);
}

/** The TypeScript file behind an entry's name: main lies in src/cli, commands for developers in src/bench (bench-search: search.ts). */
export function entryFile(entry) {
  if (!/^[a-z][a-z0-9-]*$/.test(entry))
    throw new Error(`"${entry}" is no entry's name: lower-case letters and hyphens expected`);
  const places = [`src/cli/${entry}.ts`, `src/bench/${entry}.ts`, `src/bench/${entry.replace(/^bench-/, '')}.ts`];
  const found = places.map((place) => join(ROOT, place)).find((file) => existsSync(file));
  if (found === undefined)
    throw new Error(`there is no entry "${entry}": looked for ${[...new Set(places)].join(', ')}`);
  return found;
}

/**
 * SHA-256 of the performance model as minified code: layout and comments do not count, every equation and constant does.
 * @returns {Promise<string>} 64 hexadecimal digits
 */
export async function modelVersion() {
  const { build } = await import('esbuild');
  const built = await build({
    entryPoints: [MODEL_DOOR],
    absWorkingDir: ROOT,
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    target: 'es2022',
    legalComments: 'none',
    logLevel: 'silent',
  });
  return createHash('sha256').update(built.outputFiles[0].contents).digest('hex');
}

async function bundle(entry, folder) {
  const { build } = await import('esbuild');
  const tool = JSON.parse(await readFile(join(ROOT, 'package.json'), 'utf8'));
  const version = await modelVersion();
  await build({
    entryPoints: [
      { in: entryFile(entry), out: entry },
      { in: WORKER, out: 'worker' },
    ],
    absWorkingDir: ROOT,
    outdir: folder,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    sourcemap: true,
    legalComments: 'none',
    logLevel: 'silent',
    define: { MODEL_VERSION: JSON.stringify(version), TOOL_VERSION: JSON.stringify(tool.version) },
  });
  await writeFile(join(folder, 'model-version'), version);
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Removes builds that nobody has started for an hour and that no living process runs. */
async function prune(current) {
  for (const name of await readdir(DIST)) {
    const folder = join(DIST, name);
    if (folder === current) continue;
    try {
      if (Date.now() - (await stat(folder)).mtimeMs < KEPT) continue;
      const users = existsSync(join(folder, 'users')) ? await readdir(join(folder, 'users')) : [];
      if (!users.some((pid) => isAlive(Number(pid)))) await rm(folder, { recursive: true, force: true });
    } catch {
      // Another start prunes the same folder; it is gone or will be.
    }
  }
}

/**
 * Builds an entry unless its build is there already.
 * @param {string} entry "main", or the name of a developer's command
 * @returns {Promise<string>} the folder that holds <entry>.js and worker.js
 * @throws {Error} with the compiler's messages when the sources do not compile, or when dist/ cannot be written
 */
export async function buildEntry(entry) {
  entryFile(entry);
  const folder = join(DIST, await hashOfSources(entry));
  if (existsSync(join(folder, `${entry}.js`))) {
    const now = new Date();
    await utimes(folder, now, now).catch(() => {});
    return folder;
  }
  const temporary = join(DIST, `building-${process.pid}-${randomBytes(4).toString('hex')}`);
  await mkdir(temporary, { recursive: true });
  try {
    await bundle(entry, temporary);
    await rename(temporary, folder);
  } catch (error) {
    await rm(temporary, { recursive: true, force: true });
    // Another start was faster: its build is the same.
    if (!existsSync(join(folder, `${entry}.js`))) throw error;
  }
  await prune(folder);
  return folder;
}
