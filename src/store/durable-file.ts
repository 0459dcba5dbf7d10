/** Small files that are either the old one or the new one, never half of one. */
import { randomBytes } from 'node:crypto';
import { open, rename, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';
import { writeFailure } from './store-error.ts';

/** Makes a new or renamed file's folder entry durable; not every system can, and then it is let be. */
export async function syncFolderOf(path: string): Promise<void> {
  try {
    const folder = await open(dirname(path), 'r');
    await folder.sync().finally(() => folder.close());
  } catch {
    // Windows and some network disks cannot open a folder.
  }
}

/**
 * Writes a file by temporary file, fsync and rename.
 * @throws {StoreError} when the disk refuses
 */
export async function writeDurably(path: string, content: string | Uint8Array): Promise<void> {
  const temporary = `${path}.${process.pid}-${randomBytes(3).toString('hex')}.part`;
  try {
    const file = await open(temporary, 'wx');
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, path);
    await syncFolderOf(path);
  } catch (error) {
    await unlink(temporary).catch(() => {});
    throw writeFailure(path, error);
  }
}
