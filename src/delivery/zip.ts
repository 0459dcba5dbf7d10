/** Packs files into one ZIP archive. Source of the layout: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16. */
import { deflateRawSync } from 'node:zlib';
import { crc32 } from '../store/crc32.ts';

export interface ZipEntry {
  /** Path inside the archive, with forward slashes. */
  name: string;
  data: Buffer;
}

/** 1 January 1980 00:00, the earliest date of the format: the same files give the same bytes. */
const DOS_DATE = 0x0021;
const UTF8_NAMES = 0x0800;
const DEFLATE = 8;
const VERSION = 20;

/** Throws when there are more files or bytes than the plain format (without ZIP64) can hold. */
export function zip(entries: readonly ZipEntry[]): Buffer {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, data } of entries) {
    const path = Buffer.from(name, 'utf8');
    const packed = deflateRawSync(data, { level: 9 });
    const common = Buffer.alloc(26);
    common.writeUInt16LE(VERSION, 0);
    common.writeUInt16LE(UTF8_NAMES, 2);
    common.writeUInt16LE(DEFLATE, 4);
    common.writeUInt16LE(DOS_DATE, 8);
    common.writeUInt32LE(crc32(data), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(data.length, 18);
    common.writeUInt16LE(path.length, 22);
    parts.push(Buffer.from('PK\x03\x04', 'latin1'), common, path, packed);
    // Central entry: version that made it, the common fields, then comment, disk and attributes (all zero), offset.
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    directory.push(Buffer.from('PK\x01\x02', 'latin1'), Buffer.from([VERSION, 0]), common, tail, path);
    offset += 30 + path.length + packed.length;
  }
  const central = Buffer.concat(directory);
  if (entries.length > 0xffff || offset + central.length > 0xffffffff)
    throw new Error(`${entries.length} files with ${offset} bytes are too much for one ZIP archive`);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...parts, central, end]);
}
