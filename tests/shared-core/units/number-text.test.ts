import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { markShown, numberFromText, type DecimalMark } from '../../../shared-core/units/number-text.ts';

const BLANKS = 'ISO 80000-1 on blanks between groups, from memory';
const BOTH = 'thousands in one country, decimals in another: common practice';

describe('a number as people write it', () => {
  test.each([
    { text: '41500', shown: null, point: '41500', comma: '41500', source: 'no mark' },
    { text: '41,500', shown: 'either', point: '41500', comma: '41.500', source: BOTH },
    { text: '41.500', shown: 'either', point: '41.500', comma: '41500', source: BOTH },
    { text: '1,041,500', shown: '.', point: '1041500', comma: '1041500', source: 'a decimal mark stands once' },
    { text: '1.041.500', shown: ',', point: '1041500', comma: '1041500', source: 'a decimal mark stands once' },
    { text: '1,041.5', shown: '.', point: '1041.5', comma: '1041.5', source: 'the last of two marks is the decimal one' },
    { text: '1.041,5', shown: ',', point: '1041.5', comma: '1041.5', source: 'the last of two marks is the decimal one' },
    { text: '41,5', shown: ',', point: '41.5', comma: '41.5', source: 'thousands have three digits' },
    { text: '4150,500', shown: ',', point: '4150.500', comma: '4150.500', source: 'thousands have at most three digits before them' },
    { text: '0,500', shown: ',', point: '0.500', comma: '0.500', source: 'no group begins with 0' },
    { text: '41 500', shown: null, point: '41500', comma: '41500', source: BLANKS },
    { text: '41\u00a0500', shown: null, point: '41500', comma: '41500', source: BLANKS },
    { text: '41\u202f500', shown: null, point: '41500', comma: '41500', source: BLANKS },
    { text: '1\u2009041\u2009500', shown: null, point: '1041500', comma: '1041500', source: BLANKS },
    { text: "41'500", shown: null, point: '41500', comma: '41500', source: 'Swiss practice, from memory' },
    { text: '41 500,125', shown: ',', point: '41500.125', comma: '41500.125', source: 'blanks part the thousands' },
    { text: '-12.50', shown: '.', point: '-12.50', comma: '-12.50', source: 'a sign' },
    { text: '\u2212 12', shown: null, point: '-12', comma: '-12', source: 'the true minus' },
    { text: '12.', shown: '.', point: '12', comma: '12', source: 'nothing after the mark' },
    { text: '41 50', shown: undefined, point: null, comma: null, source: 'groups have three digits' },
    { text: '1,04,500', shown: undefined, point: null, comma: null, source: 'groups have three digits' },
    { text: '1.5.0', shown: undefined, point: null, comma: null, source: 'two decimal marks' },
    { text: '1,041.500,2', shown: undefined, point: null, comma: null, source: 'a mark before and after the other' },
    { text: '1e5', shown: undefined, point: null, comma: null, source: 'no number of a table' },
    { text: '12 km', shown: undefined, point: null, comma: null, source: 'a word' },
    { text: '', shown: undefined, point: null, comma: null, source: 'nothing' },
    { text: '1'.repeat(41), shown: undefined, point: null, comma: null, source: 'too long' },
  ])('$text', ({ text, shown, point, comma }) => {
    expect([markShown(text), numberFromText(text, '.'), numberFromText(text, ',')]).toEqual([shown, point, comma]);
    expect(numberFromText(text, null)).toBe(shown === 'either' ? null : point);
  });

  test('written with either mark and any way of grouping is read again', () => {
    const groups = fc.constantFrom('', ' ', '\u00a0', '\u202f', "'", 'other');
    fc.assert(fc.property(fc.nat(9_999_999), fc.nat(99), fc.constantFrom<DecimalMark>('.', ','), groups, (whole, parts, mark, group) => {
      const parted = String(whole).replace(/\B(?=(\d{3})+$)/g, group === 'other' ? (mark === '.' ? ',' : '.') : group);
      const text = parts === 0 ? parted : `${parted}${mark}${String(parts).padStart(2, '0')}`;
      expect(Number(numberFromText(text, mark))).toBe(Number(`${whole}.${String(parts).padStart(2, '0')}`));
    }));
  });
});
