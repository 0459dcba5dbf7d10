/** The user's own cache folder, and whether it may be trusted with a program that will be run. */
import { lstat, mkdir, realpath } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';

/**
 * Folder for what this tool may rebuild at any time.
 * PULSEJET_CACHE_DIR wins; else the usual place of the system (XDG_CACHE_HOME or ~/.cache, ~/Library/Caches, LOCALAPPDATA).
 */
export function userCacheFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform = process.platform): string {
  if (env.PULSEJET_CACHE_DIR) return path.resolve(env.PULSEJET_CACHE_DIR);
  const home = env.HOME || homedir();
  if (platform === 'win32') return path.join(env.LOCALAPPDATA || path.join(home, 'AppData', 'Local'), 'pulsejet-study');
  if (platform === 'darwin') return path.join(home, 'Library', 'Caches', 'pulsejet-study');
  // The XDG base directory specification says that a relative value must be ignored.
  const xdg =
    env.XDG_CACHE_HOME && path.isAbsolute(env.XDG_CACHE_HOME) ? env.XDG_CACHE_HOME : path.join(home, '.cache');
  return path.join(xdg, 'pulsejet-study');
}

/** Makes the folder (mode 0700) where it is missing. Errors of the file system pass through. */
export async function makePrivateFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
}

/**
 * Says why somebody else could put a program into `folder`, or null when nobody but this user (and root) can.
 * Every folder up to the root counts, since who may rename a parent may replace what lies below it.
 */
export async function whyNotTrusted(folder: string): Promise<string | null> {
  if (process.platform === 'win32' || !process.getuid || !process.getgid) return null;
  // The path as named and the path that it leads to: either could be turned elsewhere.
  for (const start of [path.resolve(folder), await realpath(folder)]) {
    const why = await whyChainNotTrusted(start, process.getuid(), process.getgid());
    if (why) return why;
  }
  return null;
}

async function whyChainNotTrusted(start: string, uid: number, gid: number): Promise<string | null> {
  for (let at = start; ; at = path.dirname(at)) {
    const stat = await lstat(at);
    if (stat.uid !== uid && stat.uid !== 0) return `${at} belongs to another user`;
    const sticky = (stat.mode & 0o1000) !== 0;
    // Distributions that give each user a group of the same number let it write; nobody else is in that group.
    const ownGroup = uid !== 0 && stat.gid === uid && gid === uid;
    const othersWrite = (stat.mode & 0o002) !== 0 || ((stat.mode & 0o020) !== 0 && !ownGroup);
    if (othersWrite && !sticky && !stat.isSymbolicLink()) return `other users may write to ${at}`;
    if (at === path.dirname(at)) return null;
  }
}
