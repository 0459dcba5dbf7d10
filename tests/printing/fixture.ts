/** Folders and pages for the printing tests. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll } from 'vitest';

/** A folder that is deleted after the test file. */
export async function scratchFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'printing-test-'));
  afterAll(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

export async function writePage(folder: string, name: string, body: string, head = ''): Promise<string> {
  const file = path.join(folder, name);
  const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title>${head}</head><body>${body}</body></html>`;
  await writeFile(file, html);
  return file;
}

/** The embedded font as a rule for a style element. */
export async function interFace(): Promise<string> {
  const file = createRequire(import.meta.url).resolve('@fontsource/inter/files/inter-latin-400-normal.woff2');
  const data = (await readFile(file)).toString('base64');
  return `@font-face{font-family:Inter;src:url(data:font/woff2;base64,${data}) format('woff2')}`;
}
