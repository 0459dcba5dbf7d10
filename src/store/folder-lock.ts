/**
 * One run a folder: a lock file that names its owner.
 *
 * The file appears with its whole content or not at all (written beside, then linked). A lock whose process is dead is
 * taken over; the process's start time tells a reused process number apart where the system says it.
 */
import { randomBytes } from 'node:crypto';
import { readFileSync, unlinkSync } from 'node:fs';
import { link, readFile, rename, unlink, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { digestOf } from '../config/canonical.ts';
import { StoreError, writeFailure } from './store-error.ts';

export const LOCK_NAME = 'lock';

interface Owner {
  pid: number;
  host: string;
  /** Ticks since boot at which the process started; null where the system does not say. */
  started: string | null;
  token: string;
}

/** Field 22 of /proc/<pid>/stat; the command's name before it may hold spaces. */
function startOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}

function isAlive(owner: Owner): boolean {
  try {
    process.kill(owner.pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  const started = startOf(owner.pid);
  return started === null || owner.started === null || started === owner.started;
}

function parseOwner(text: string): Owner | null {
  try {
    const owner = JSON.parse(text);
    return Number.isInteger(owner.pid) && typeof owner.host === 'string' ? owner : null;
  } catch {
    return null;
  }
}

export interface FolderLock {
  release(): void;
  /** True when the lock of a dead process was taken over. */
  takenOver: boolean;
}

/**
 * Locks a folder for this process.
 * @throws {StoreError} 'locked' while another run holds it, 'cannot write' when the folder cannot be written
 */
export async function lockFolder(folder: string): Promise<FolderLock> {
  const path = join(folder, LOCK_NAME);
  const mine: Owner = {
    pid: process.pid,
    host: hostname(),
    started: startOf(process.pid),
    token: randomBytes(8).toString('hex'),
  };
  const text = `${JSON.stringify(mine)}\n`;
  const beside = `${path}.${mine.token}`;
  const lock = (takenOver: boolean): FolderLock => ({ release: () => release(path, text), takenOver });
  try {
    await writeFile(beside, text, { flag: 'wx' });
    for (let attempt = 0; attempt < 20; attempt++) {
      if (await appear(beside, path, text)) return lock(false);
      const found = await readFile(path, 'utf8').catch(() => '');
      // Released meanwhile.
      if (found === '') continue;
      refuseIfHeld(folder, path, parseOwner(found), mine.host);
      if (await takeOver(path, found, beside, text)) return lock(true);
      await setTimeout(5);
    }
    throw new StoreError(
      'locked',
      `another run is starting on ${folder} at the same moment. Wait for it, or give the command again.`,
    );
  } catch (error) {
    throw error instanceof StoreError ? error : writeFailure(path, error);
  } finally {
    await unlink(beside).catch(() => {});
  }
}

/** Puts the lock in place unless one is there. A disk without hard links gets an exclusive creation instead. */
async function appear(beside: string, path: string, text: string): Promise<boolean> {
  try {
    await link(beside, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
  }
  try {
    await writeFile(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

function refuseIfHeld(folder: string, path: string, owner: Owner | null, here: string): void {
  if (owner === null)
    throw new StoreError(
      'locked',
      `${path} is not a lock that this tool wrote. If no run is working on ${folder}, delete that file.`,
    );
  if (owner.host !== here) {
    throw new StoreError(
      'locked',
      `process ${owner.pid} on machine "${owner.host}" holds ${folder}. If nothing runs there any more, delete ${path}.`,
    );
  }
  if (isAlive(owner)) {
    throw new StoreError(
      'locked',
      `process ${owner.pid} is already working on ${folder}. Wait for it, stop it, or choose another folder with --out.`,
    );
  }
}

/**
 * Replaces a dead process's lock by our own. Whoever takes over first claims that very lock by name, so that of many starts
 * at once only one proceeds; under the claim nobody else may replace it.
 */
async function takeOver(path: string, dead: string, beside: string, text: string): Promise<boolean> {
  const claim = `${path}.after-${digestOf(dead).slice(0, 16)}`;
  if (!(await appear(beside, claim, text))) {
    const claimant = parseOwner(await readFile(claim, 'utf8').catch(() => ''));
    if (claimant && !isAlive(claimant)) await unlink(claim).catch(() => {});
    return false;
  }
  try {
    if ((await readFile(path, 'utf8').catch(() => '')) !== dead) return false;
    const ready = `${beside}.ready`;
    await writeFile(ready, text, { flag: 'wx' });
    await rename(ready, path);
    return true;
  } finally {
    await unlink(claim).catch(() => {});
  }
}

function release(path: string, text: string): void {
  try {
    if (readFileSync(path, 'utf8') === text) unlinkSync(path);
  } catch {
    // Already gone.
  }
}
