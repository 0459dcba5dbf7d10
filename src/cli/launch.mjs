#!/usr/bin/env node
/**
 * Starts the tool from its sources: builds what has changed, then runs it in this process.
 *
 * `launch.mjs ARGUMENTS` runs the command line; `launch.mjs --entry NAME ARGUMENTS` runs src/bench/NAME.ts instead.
 * Works from any current directory.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { V8_FLAGS } from './v8-flags.mjs';

const EXIT_CANNOT_START = 70;

if (Number(process.versions.node.split('.')[0]) < 20) {
  console.error(`pulsejet-study needs Node 20 or newer; this is ${process.version}.`);
  process.exit(EXIT_CANNOT_START);
}

for (const flag of V8_FLAGS) setFlagsFromString(flag);

let entry = 'main';
if (process.argv[2] === '--entry') {
  entry = process.argv[3] ?? '';
  process.argv.splice(2, 2);
}

let folder;
try {
  const { buildEntry } = await import('./build.mjs');
  folder = await buildEntry(entry);
} catch (error) {
  console.error(`pulsejet-study cannot start: ${error.message}`);
  if (error.code === 'ERR_MODULE_NOT_FOUND')
    console.error('Its packages are not installed; run "npm ci" in its folder.');
  process.exit(EXIT_CANNOT_START);
}

// A mark that this build is in use, so that a later start of newer sources does not remove it under a night's run.
try {
  const mark = join(folder, 'users', String(process.pid));
  mkdirSync(join(folder, 'users'), { recursive: true });
  writeFileSync(mark, '');
  process.on('exit', () => rmSync(mark, { force: true }));
} catch {
  // A read-only checkout with a finished build still runs.
}

// A command either works as it loads or hands out its main.
const { main } = await import(pathToFileURL(join(folder, `${entry}.js`)).href);
if (typeof main === 'function') process.exitCode = (await main(process.argv.slice(2))) ?? process.exitCode ?? 0;
