/** What can go wrong with a study's folder, in words for the person who started the run. */

export type StoreFault = 'locked' | 'cannot write' | 'disk full' | 'different study' | 'damaged' | 'missing';

export class StoreError extends Error {
  readonly fault: StoreFault;

  constructor(fault: StoreFault, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'StoreError';
    this.fault = fault;
  }
}

const WORDS: Record<string, string> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EFBIG: 'the file has reached the greatest size that the system allows this process',
  EROFS: 'the disk is read-only',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  ENOTDIR: 'a file stands where a folder is needed',
  EISDIR: 'a folder stands where a file is needed',
  ENOENT: 'the folder is gone',
  EIO: 'the disk reports an input/output error',
  ENAMETOOLONG: 'the name is too long',
  EMFILE: 'too many files are open',
};

/** A system error of writing, told as a StoreError; says that nothing acknowledged is lost. */
export function writeFailure(path: string, cause: unknown): StoreError {
  if (cause instanceof StoreError) return cause;
  const code = (cause as NodeJS.ErrnoException)?.code ?? '';
  const words = WORDS[code] ?? (cause instanceof Error ? cause.message : String(cause));
  const full = code === 'ENOSPC' || code === 'EDQUOT' || code === 'EFBIG';
  const cure = full ? 'Free some space or raise the limit' : 'Make it writable or choose another folder with --out';
  return new StoreError(
    full ? 'disk full' : 'cannot write',
    `cannot write ${path}: ${words}. ${cure}, then give the same command again; what was stored so far is kept.`,
    {
      cause,
    },
  );
}
