/**
 * The Chromium that comes inside the optional package @sparticuz/chromium (Linux on x64): unpacked once into the user's
 * own cache, complete or not at all. The package's own unpacker is not used: it takes a fixed path in the shared
 * temporary folder and runs whatever lies there.
 */
import { createHash, randomBytes } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { brotliDecompress, createBrotliDecompress } from 'node:zlib';
import { fontsConf } from './fonts-conf.ts';
import { readTar } from './tar.ts';
import { makePrivateFolder, userCacheFolder, whyNotTrusted } from './user-cache.ts';

const decompress = promisify(brotliDecompress);

/** Changes whenever the layout of the unpacked folder changes, so that an older one is not taken. */
const LAYOUT = 1;
const FONT_FAMILY = 'Open Sans';
const LIST = 'unpacked.json';

export interface BundledChromium {
  executablePath: string;
  /** Variables that it needs to find its libraries and fonts. */
  env: { LD_LIBRARY_PATH: string; FONTCONFIG_FILE: string };
  /** Folder to delete when the process ends; null when it lies in the cache and stays. */
  temporaryFolder: string | null;
  notes: string[];
}

/** Root of the installed package. Throws with a reason for people when this machine cannot use it or it is not there. */
export function bundledPackageFolder(platform = process.platform, arch: string = process.arch): string {
  if (platform !== 'linux' || arch !== 'x64') throw new Error(`made for Linux on x64, this is ${platform} on ${arch}`);
  let entry: string;
  try {
    entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  } catch {
    throw new Error('the optional package @sparticuz/chromium is not installed');
  }
  const marker = `${path.sep}build${path.sep}`;
  return entry.slice(0, entry.lastIndexOf(marker));
}

/**
 * Unpacks the bundled Chromium where it is not yet there, and says how to start it.
 * Falls back to a private temporary folder, with a note, when the cache cannot be written or trusted.
 * Throws when the package is missing, damaged, or no folder can be written.
 */
export async function prepareBundledChromium(env: NodeJS.ProcessEnv, packageFolder: string): Promise<BundledChromium> {
  const name = await folderName(packageFolder);
  const cache = userCacheFolder(env);
  try {
    await makePrivateFolder(cache);
    const why = await whyNotTrusted(cache);
    if (why) throw new Error(why);
    const folder = path.join(cache, name);
    await removeLeftovers(cache);
    if (!(await isComplete(folder))) await unpackInto(packageFolder, cache, folder);
    return describe(folder, null, []);
  } catch (error) {
    const temporary = await mkdtemp(path.join(tmpdir(), 'pulsejet-chromium-'));
    try {
      const folder = path.join(temporary, name);
      await unpackInto(packageFolder, temporary, folder);
      const note = `the browser was unpacked into a temporary folder, since the cache could not be used: ${(error as Error).message}`;
      return describe(folder, temporary, [note]);
    } catch (second) {
      await rm(temporary, { recursive: true, force: true });
      throw second;
    }
  }
}

function describe(folder: string, temporaryFolder: string | null, notes: string[]): BundledChromium {
  return {
    executablePath: path.join(folder, 'chromium'),
    env: { LD_LIBRARY_PATH: path.join(folder, 'lib'), FONTCONFIG_FILE: path.join(folder, 'fonts.conf') },
    temporaryFolder,
    notes,
  };
}

/** Name that differs for every package version, content size and layout. */
async function folderName(packageFolder: string): Promise<string> {
  const manifest = JSON.parse(await readFile(path.join(packageFolder, 'package.json'), 'utf8')) as { version: string };
  const sizes: number[] = [];
  for (const file of ['chromium.br', 'al2023.tar.br', 'fonts.tar.br'])
    sizes.push((await stat(path.join(packageFolder, 'bin', file))).size);
  const digest = createHash('sha256')
    .update(JSON.stringify([manifest.version, sizes, LAYOUT]))
    .digest('hex');
  return `chromium-${manifest.version.replace(/[^\w.-]/g, '_')}-${digest.slice(0, 12)}`;
}

/** True when every file of the list is there with its size. */
async function isComplete(folder: string): Promise<boolean> {
  try {
    const list = JSON.parse(await readFile(path.join(folder, LIST), 'utf8')) as Record<string, number>;
    if (!('chromium' in list)) return false;
    for (const [file, size] of Object.entries(list))
      if ((await stat(path.join(folder, file))).size !== size) return false;
    return true;
  } catch {
    return false;
  }
}

/** Writes everything into a new folder beside `folder`, then renames it: nobody ever sees half of it. */
async function unpackInto(packageFolder: string, parent: string, folder: string): Promise<void> {
  const work = await mkdtemp(path.join(parent, '.unpack-'));
  try {
    const list: Record<string, number> = {};
    for (const archive of ['al2023.tar.br', 'fonts.tar.br']) {
      const tar = await decompress(await readFile(path.join(packageFolder, 'bin', archive)));
      for (const file of readTar(tar)) {
        // The package's own fonts.conf names folders of another system; ours is written below.
        if (!/^(lib|fonts)\//.test(file.name)) continue;
        await mkdir(path.join(work, path.dirname(file.name)), { recursive: true });
        await writeFile(path.join(work, file.name), file.data, { mode: file.executable ? 0o700 : 0o600 });
        list[file.name] = file.data.length;
      }
    }
    const program = path.join(work, 'chromium');
    await pipeline(
      createReadStream(path.join(packageFolder, 'bin', 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(program, { mode: 0o700, flush: true }),
    );
    list.chromium = (await stat(program)).size;
    const conf = fontsConf(path.join(folder, 'fonts'), FONT_FAMILY, path.join(folder, 'font-cache'));
    await writeFile(path.join(work, 'fonts.conf'), conf);
    list['fonts.conf'] = Buffer.byteLength(conf);
    await writeFile(path.join(work, LIST), JSON.stringify(list, null, 1));
    await moveIntoPlace(work, folder);
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

async function moveIntoPlace(work: string, folder: string): Promise<void> {
  try {
    await rename(work, folder);
  } catch (error) {
    // Another process finished first, or a damaged one is in the way.
    if (await isComplete(folder)) return;
    const code = (error as NodeJS.ErrnoException).code;
    if (code !== 'ENOTEMPTY' && code !== 'EEXIST' && code !== 'ENOTDIR') throw error;
    await rename(folder, path.join(path.dirname(folder), `.unpack-damaged-${randomBytes(6).toString('hex')}`));
    await rename(work, folder);
  }
}

/** Deletes what killed processes left behind; an hour is far longer than unpacking takes. */
async function removeLeftovers(cache: string): Promise<void> {
  for (const name of await readdir(cache)) {
    if (!name.startsWith('.unpack-')) continue;
    const leftover = path.join(cache, name);
    const age = await stat(leftover).then(
      (found) => Date.now() - found.mtimeMs,
      () => 0,
    );
    if (age > 3_600_000) await rm(leftover, { recursive: true, force: true }).catch(() => undefined);
  }
}
