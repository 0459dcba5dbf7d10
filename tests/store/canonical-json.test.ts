import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalJson, digestOf, sha256 } from '../../src/store/canonical-json.ts';

test('does not depend on the order of keys', () => {
  expect(canonicalJson({ b: [1, { y: 1, x: undefined }], a: null })).toBe('{"a":null,"b":[1,{"y":1}]}');
  expect(digestOf({ a: 1, b: 2 })).toBe(digestOf({ b: 2, a: 1 }));
});

test('refuses numbers that JSON would turn into null', () => {
  expect(() => canonicalJson({ a: Number.NaN })).toThrow(RangeError);
  expect(() => canonicalJson([Infinity])).toThrow(RangeError);
});

test('reads back to the same value', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
});

test('SHA-256 as FIPS 180-4 says for "abc"', () => {
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});
