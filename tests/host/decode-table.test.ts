import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeTable } from '../../electron/host/decode-table.ts';

const utf16be = (text: string) => Buffer.from(text, 'utf16le').swap16();
const UNICODE = 'Unicode 16 s23.8, from memory';
const WINDOWS = 'Windows code page 1252, from memory';

describe('a table\'s bytes', () => {
  test.each([
    { case: 'UTF-8', bytes: Buffer.from('café, 41\u202f500'), text: 'café, 41\u202f500', encoding: 'UTF-8', source: UNICODE },
    { case: 'UTF-8 with its mark', bytes: Buffer.from('\ufeffcafé'), text: 'café', encoding: 'UTF-8', source: UNICODE },
    { case: 'UTF-16, little end first', bytes: Buffer.from('\ufeffcafé', 'utf16le'), text: 'café', encoding: 'UTF-16LE', source: UNICODE },
    { case: 'UTF-16, big end first', bytes: utf16be('\ufeffcafé'), text: 'café', encoding: 'UTF-16BE', source: UNICODE },
    { case: 'Windows-1252', bytes: Buffer.from([0x63, 0x61, 0x66, 0xe9, 0x20, 0x80, 0x39, 0x20, 0x93, 0x94]), text: 'café €9 “”', encoding: 'Windows-1252', source: WINDOWS },
    { case: 'nothing', bytes: Buffer.alloc(0), text: '', encoding: 'UTF-8', source: 'ours' },
  ])('are $case', ({ bytes, text, encoding }) => {
    expect(decodeTable(bytes)).toEqual({ ok: true, value: { text, encoding } });
  });

  test.each([
    { case: 'a spreadsheet', bytes: [0x50, 0x4b, 3, 4, 20], code: 'import-spreadsheet' },
    { case: 'an old spreadsheet', bytes: [0xd0, 0xcf, 0x11, 0xe0, 0xa1], code: 'import-spreadsheet' },
    { case: 'a document', bytes: [...Buffer.from('%PDF-1.7')], code: 'import-spreadsheet' },
    { case: 'UTF-8 by its mark, and not by its bytes', bytes: [0xef, 0xbb, 0xbf, 0xff], code: 'import-encoding' },
    { case: 'UTF-16 cut in the middle of a character', bytes: [0xff, 0xfe, 0x41], code: 'import-encoding' },
    { case: 'UTF-16 with half a pair', bytes: [0xff, 0xfe, 0x00, 0xd8, 0x41, 0x00], code: 'import-encoding' },
  ])('that are $case are refused', ({ bytes, code }) => {
    expect(decodeTable(Uint8Array.from(bytes))).toMatchObject({ ok: false, refusal: { code } });
  });

  test('of any well-formed text come back as it, in every encoding with a mark', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => {
      for (const bytes of [Buffer.from(`\ufeff${text}`), Buffer.from(`\ufeff${text}`, 'utf16le'), utf16be(`\ufeff${text}`)]) {
        expect(decodeTable(bytes)).toMatchObject({ ok: true, value: { text } });
      }
    }));
  });
});
