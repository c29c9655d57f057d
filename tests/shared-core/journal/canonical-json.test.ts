import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '../../../electron/host/node-digests.ts';
import { canonicalJson, iJsonFault } from '../../../shared-core/journal/canonical-json.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { utf8Bytes } from '../../../shared-core/journal/utf8-text.ts';
import files from '../../reference/files-rfc8785.json' with { type: 'json' };
import numbers from '../../reference/numbers-rfc8785.json' with { type: 'json' };

function numberOfBits(bits: string): number {
  return new DataView(Uint8Array.from(Buffer.from(bits, 'hex')).buffer).getFloat64(0);
}

describe('canonical JSON', () => {
  // Source: companion test files of RFC 8785 (seen, recomputed).
  test.each(files.cases)('companion file $case', ({ input, output, sha256: digest }) => {
    const text = canonicalJson(JSON.parse(input));
    expect(text).toBe(output);
    expect(hexText(sha256(utf8Bytes(text)))).toBe(digest);
  });

  // Source: RFC 8785 appendix B (from memory, recomputed).
  test.each(numbers.cases)('number $bits is $text', ({ bits, text }) => {
    expect(canonicalJson(numberOfBits(bits))).toBe(text);
  });

  // Source: RFC 8785 appendix B, the three that must be errors (from memory).
  test.each(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])('number %s has no text', (bits) => {
    expect(iJsonFault(numberOfBits(bits))).toEqual({ why: 'not-finite', path: [] });
    expect(() => canonicalJson([numberOfBits(bits)])).toThrow(/not-finite/);
  });

  test('canonical text read and written again is the same text', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }).filter((value) => iJsonFault(value) === null), (value) => {
        const text = canonicalJson(value);
        expect(canonicalJson(JSON.parse(text))).toBe(text);
      }),
    );
  });
});

describe('what is not I-JSON', () => {
  const parentOfItself: unknown[] = [];
  parentOfItself.push(parentOfItself);
  // Source: RFC 7493 (from memory); values that JSON cannot carry are refused, not dropped: our own rule.
  test.each([
    { case: 'lone surrogate in a value', value: { a: ['\ud83d'] }, why: 'lone-surrogate', path: ['a', 0] },
    { case: 'lone surrogate in a name', value: { '\udc00': 1 }, why: 'lone-surrogate', path: ['\udc00'] },
    { case: 'undefined', value: { a: undefined }, why: 'not-json', path: ['a'] },
    { case: 'hole in a list', value: new Array(1), why: 'not-json', path: [0] },
    { case: 'function', value: { toJSON: () => 1 }, why: 'not-json', path: ['toJSON'] },
    { case: 'whole number of another type', value: 1n, why: 'not-json', path: [] },
    { case: 'date', value: { at: new Date(0) }, why: 'not-plain', path: ['at'] },
    { case: 'map', value: new Map(), why: 'not-plain', path: [] },
    { case: 'boxed text', value: [new String('a')], why: 'not-plain', path: [0] },
    { case: 'hidden name', value: { [Symbol('a')]: 1 }, why: 'not-plain', path: [] },
  ])('$case', ({ value, why, path }) => {
    expect(iJsonFault(value)).toEqual({ why, path });
    expect(() => canonicalJson(value)).toThrow(why);
  });

  test('a value that holds itself, or nests too deep', () => {
    expect(iJsonFault(parentOfItself)?.why).toBe('too-deep');
    expect(iJsonFault(JSON.parse('['.repeat(5000) + ']'.repeat(5000)))?.why).toBe('too-deep');
    expect(iJsonFault(JSON.parse('['.repeat(100) + ']'.repeat(100)))).toBeNull();
  });
});
