/** Proves a log from end to end, and puts aside what does not check (see record-log.ts). */
import type { FileHandle } from 'node:fs/promises';
import { appendFile, open, rename } from 'node:fs/promises';
import { basename } from 'node:path';
import { syncFolderOf } from './durable-file.ts';
import { KeyIndex } from './key-index.ts';
import { isNote, isProven, KEY_OFFSET } from './record-line.ts';

/** A line that could not be trusted. */
export interface DamagedLine {
  line: number;
  bytes: number;
  /** torn: the last line, cut short by a stop in the middle of a write. */
  kind: 'torn' | 'corrupted';
}

const CHUNK = 1 << 22;

export interface Scan {
  positions: KeyIndex;
  /** Where notes begin, rising. */
  notes: number[];
  /** Bytes up to the end of the last sound line. */
  end: number;
  damaged: (DamagedLine & { start: number })[];
  /** Whole lines, damaged ones included. */
  lines: number;
  /** Bytes of the file. */
  size: number;
}

/** Room before each chunk for the beginning of a line that the last one ended in. */
const HEADROOM = 1 << 20;

/** Reads the log once from end to end and proves each line, while the next chunk is being read. */
export async function scanLog(file: FileHandle): Promise<Scan> {
  const scan: Scan = { positions: new KeyIndex(), notes: [], end: 0, damaged: [], lines: 0, size: 0 };
  const buffers = [0, 1].map(() => Buffer.allocUnsafe(HEADROOM + CHUNK));
  const read = (turn: number, position: number) => file.read(buffers[turn & 1], HEADROOM, CHUNK, position);
  let rest = Buffer.alloc(0);
  let coming = read(0, 0);
  for (let turn = 0; ; turn++) {
    const { bytesRead } = await coming;
    if (bytesRead === 0) break;
    let bytes = buffers[turn & 1];
    let start = HEADROOM - rest.length;
    let stop = HEADROOM + bytesRead;
    if (start >= 0) rest.copy(bytes, start);
    else {
      // A line longer than the headroom.
      bytes = Buffer.concat([rest, bytes.subarray(HEADROOM, stop)]);
      [start, stop] = [0, bytes.length];
    }
    const base = scan.size - rest.length - start;
    scan.size += bytesRead;
    coming = read(turn + 1, scan.size);
    start = proveLines(bytes, start, stop, base, scan);
    rest = Buffer.from(bytes.subarray(start, stop));
  }
  if (rest.length > 0)
    scan.damaged.push({ line: scan.lines + 1, bytes: rest.length, kind: 'torn', start: scan.size - rest.length });
  return scan;
}

/**
 * Proves the whole lines between start and stop; `base` is the place of the first byte of all in the file. Returns where the rest
 * begins. A function of its own, since loops are not compiled while they run (see v8-flags.mjs).
 */
function proveLines(bytes: Buffer, from: number, stop: number, base: number, scan: Scan): number {
  let start = from;
  for (let end = bytes.indexOf(10, start); end >= 0 && end < stop; end = bytes.indexOf(10, start)) {
    scan.lines++;
    if (isProven(bytes, start, end)) {
      if (isNote(bytes, start)) scan.notes.push(base + start);
      else scan.positions.setFrom(bytes, start + KEY_OFFSET, base + start);
      scan.end = base + end + 1;
    } else scan.damaged.push({ line: scan.lines, bytes: end - start + 1, kind: 'corrupted', start: base + start });
    start = end + 1;
  }
  return start;
}

/** Moves the damaged bytes to <log>.damaged and leaves only sound lines, so that a stop in between loses nothing. */
export async function setAside(path: string, file: FileHandle, scan: Scan): Promise<void> {
  for (const fault of scan.damaged) {
    const bytes = Buffer.alloc(fault.bytes);
    await file.read(bytes, 0, fault.bytes, fault.start);
    await appendFile(`${path}.damaged`, fault.kind === 'torn' ? Buffer.concat([bytes, Buffer.from('\n')]) : bytes);
  }
  const onlyTail = scan.damaged[0].start >= scan.end;
  if (onlyTail) {
    await file.truncate(scan.end);
    await file.datasync();
    return;
  }
  const sound = await open(`${path}.repaired`, 'w');
  let position = 0;
  const faults = [...scan.damaged, { start: scan.size, bytes: 0 }];
  for (const fault of faults) {
    while (position < fault.start) {
      const bytes = Buffer.allocUnsafe(Math.min(CHUNK, fault.start - position));
      const { bytesRead } = await file.read(bytes, 0, bytes.length, position);
      await sound.writeFile(bytes.subarray(0, bytesRead));
      position += bytesRead;
    }
    position = fault.start + fault.bytes;
  }
  await sound.sync();
  await sound.close();
  await rename(`${path}.repaired`, path);
  await syncFolderOf(path);
}

export function describeDamage(path: string, damaged: readonly DamagedLine[], kept: number): string[] {
  const name = basename(path);
  const shown = damaged
    .slice(0, 5)
    .map((fault) =>
      fault.kind === 'torn'
        ? `${name}, line ${fault.line}: cut short by a stop in the middle of a write (${fault.bytes} bytes).`
        : `${name}, line ${fault.line}: its checksum does not hold (${fault.bytes} bytes).`,
    );
  if (damaged.length > 5) shown.push(`${name}: ${damaged.length - 5} more lines do not check.`);
  shown.push(
    `${name}: ${kept} sound records are kept; the damaged lines lie in ${name}.damaged and will be computed again.`,
  );
  return shown;
}
