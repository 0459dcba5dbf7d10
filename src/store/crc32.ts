/** CRC-32 as in gzip and PNG (ISO 3309, reflected polynomial 0xEDB88320). */
import * as zlib from 'node:zlib';

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The plain way, for a Node before 20.15, whose zlib has no crc32. */
export function crc32ByTable(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) value = TABLE[(value ^ bytes[i]) & 255] ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}

const native = (zlib as { crc32?: (bytes: Uint8Array) => number }).crc32;

/** CRC-32 of the bytes, 0 to 2³²−1. */
export const crc32: (bytes: Uint8Array) => number = native ?? crc32ByTable;
