import { inflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { sizeAsSent } from '../../src/delivery/attachments.ts';
import { zip } from '../../src/delivery/zip.ts';

describe('zip', () => {
  // Offsets from PKWARE APPNOTE 6.3: 4.3.16 end record, 4.3.12 central entry, 4.3.7 local entry.
  it('can be followed from the end record to every file', () => {
    const files = [
      { name: 'patterns/a.dxf', data: Buffer.from('one '.repeat(500)) },
      { name: 'patterns/ü.svg', data: Buffer.alloc(0) },
    ];
    const bytes = zip(files);
    const end = bytes.length - 22;
    expect(bytes.readUInt32LE(end)).toBe(0x06054b50);
    expect(bytes.readUInt16LE(end + 10)).toBe(files.length);
    let at = bytes.readUInt32LE(end + 16);
    expect(at + bytes.readUInt32LE(end + 12)).toBe(end);
    for (const { name, data } of files) {
      expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
      const nameLength = bytes.readUInt16LE(at + 28);
      expect(bytes.toString('utf8', at + 46, at + 46 + nameLength)).toBe(name);
      const local = bytes.readUInt32LE(at + 42);
      expect(bytes.readUInt32LE(local)).toBe(0x04034b50);
      const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
      const unpacked = inflateRawSync(bytes.subarray(start, start + bytes.readUInt32LE(local + 18)));
      expect(unpacked.equals(data)).toBe(true);
      at += 46 + nameLength;
    }
    expect(zip(files).equals(bytes)).toBe(true);
  });
});

describe('sizeAsSent', () => {
  it('is the length of base64 lines as Node writes them', () => {
    for (const length of [0, 1, 57, 58, 1000]) {
      const lines =
        Buffer.alloc(length)
          .toString('base64')
          .match(/.{1,76}/g) ?? [];
      expect(sizeAsSent(length)).toBe(lines.reduce((sum, line) => sum + line.length + 2, 0));
    }
  });
});
