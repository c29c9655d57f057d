import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { base32Bytes, base32Text } from '../../../shared-core/journal/base32-text.ts';
import { crc32 } from '../../../shared-core/journal/crc32.ts';
import { hexBytes, hexText, joinBytes, sameBytes } from '../../../shared-core/journal/hex-text.ts';
import { compareUtf8, utf8Bytes, utf8Length } from '../../../shared-core/journal/utf8-text.ts';

const anyText = fc.string({ unit: 'grapheme' });

describe('UTF-8', () => {
  // Source: the platform's own encoder.
  test('is what the platform writes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(Buffer.from(utf8Bytes(text))).toEqual(Buffer.from(text, 'utf8'));
        expect(utf8Length(text)).toBe(Buffer.byteLength(text, 'utf8'));
      }),
    );
  });

  test.each([0x7f, 0x80, 0x7ff, 0x800, 0xd7ff, 0xe000, 0xffff, 0x10000, 0x10ffff])('code point %i at the edge of a length', (point) => {
    const text = String.fromCodePoint(point);
    expect(Buffer.from(utf8Bytes(text))).toEqual(Buffer.from(text, 'utf8'));
  });

  test('a lone surrogate is our own bug', () => {
    expect(() => utf8Bytes('a\ud800')).toThrow(/Bug/);
  });

  test('order by bytes is not order by UTF-16 unit', () => {
    expect(compareUtf8('\ufb33', '\u{1f600}')).toBe(-1);
    expect('\ufb33' < '\u{1f600}').toBe(false);
    fc.assert(
      fc.property(anyText, anyText, (a, b) => {
        expect(compareUtf8(a, b)).toBe(Buffer.compare(Buffer.from(a), Buffer.from(b)));
      }),
    );
  });
});

describe('hexadecimal', () => {
  test('goes there and back', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(hexText(bytes)).toBe(Buffer.from(bytes).toString('hex'));
        expect(sameBytes(hexBytes(hexText(bytes)), bytes)).toBe(true);
      }),
    );
  });

  test.each(['0', 'FF', 'zz', '0x'])('%s is refused', (text) => {
    expect(() => hexBytes(text)).toThrow(/Bug/);
  });

  test('joined bytes keep their order', () => {
    expect(joinBytes(hexBytes('01'), hexBytes(''), hexBytes('0203'))).toEqual(hexBytes('010203'));
    expect(sameBytes(hexBytes('01'), hexBytes('0102'))).toBe(false);
  });
});

describe('base 32', () => {
  test('goes there and back', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(base32Bytes(base32Text(bytes))).toEqual(bytes);
      }),
    );
  });

  test('look-alikes are read as digits, others refused', () => {
    expect(base32Bytes('ilo0')).toEqual(base32Bytes('1100'));
    expect(base32Bytes('U0')).toBeNull();
    expect(base32Bytes('ZZ')).toBeNull();
  });
});

describe('CRC-32', () => {
  // Source: IEEE 802.3 check values (recomputed).
  test.each([
    { text: '', crc: 0 },
    { text: 'abc', crc: 0x352441c2 },
    { text: '123456789', crc: 0xcbf43926 },
    { text: 'The quick brown fox jumps over the lazy dog', crc: 0x414fa339 },
  ])('of "$text"', ({ text, crc }) => {
    expect(crc32(utf8Bytes(text))).toBe(crc);
  });
});
