/** Reads the files of a POSIX ustar archive that lies in memory. Source of the layout: IEEE Std 1003.1, "pax", ustar. */

export interface TarFile {
  name: string;
  data: Buffer;
  executable: boolean;
}

const BLOCK = 512;

/**
 * Regular files of the archive, in order; folders are left out.
 * Throws when a checksum is wrong, the archive is cut short, an entry is neither file nor folder, or a name leaves the
 * folder that it is unpacked into.
 */
export function readTar(archive: Buffer): TarFile[] {
  const files: TarFile[] = [];
  let at = 0;
  while (at + BLOCK <= archive.length) {
    const header = archive.subarray(at, at + BLOCK);
    if (header.every((byte) => byte === 0)) return files;
    checkHeader(header, at);
    const prefix = text(header, 345, 155);
    const name = prefix ? `${prefix}/${text(header, 0, 100)}` : text(header, 0, 100);
    const size = octal(header, 124, 12);
    const type = String.fromCharCode(header[156] || 0x30);
    const start = at + BLOCK;
    if (start + size > archive.length) throw new Error(`archive is cut short inside ${name}`);
    if (type === '0') {
      refuseEscape(name);
      const executable = (octal(header, 100, 8) & 0o111) !== 0;
      files.push({ name, data: archive.subarray(start, start + size), executable });
    } else if (type !== '5') {
      throw new Error(`archive entry ${name} is of kind "${type}"; only files and folders are unpacked`);
    }
    at = start + Math.ceil(size / BLOCK) * BLOCK;
  }
  throw new Error('archive is cut short: its end mark is missing');
}

function checkHeader(header: Buffer, at: number): void {
  let sum = 0;
  for (let i = 0; i < BLOCK; i++) sum += i >= 148 && i < 156 ? 0x20 : header[i];
  if (sum !== octal(header, 148, 8)) throw new Error(`archive header at byte ${at} has a wrong checksum`);
}

function refuseEscape(name: string): void {
  const steps = name.split('/');
  if (name.startsWith('/') || name.includes('\\') || name.includes(':') || steps.includes('..') || steps.includes(''))
    throw new Error(`archive entry "${name}" would leave its folder`);
}

function text(header: Buffer, start: number, length: number): string {
  const field = header.subarray(start, start + length);
  const end = field.indexOf(0);
  return field.toString('utf8', 0, end < 0 ? length : end);
}

function octal(header: Buffer, start: number, length: number): number {
  const digits = text(header, start, length).trim();
  if (!/^[0-7]+$/.test(digits)) throw new Error('archive header holds a number that is not octal');
  return Number.parseInt(digits, 8);
}
