import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { csvText } from '../../../shared-core/views/csv-text.ts';

test('every cell is quoted, a quote is doubled, and a line ends with CR LF', () => {
  expect(csvText([['a', 'say "b"'], ['', 'c\nd']])).toBe('"a","say ""b"""\r\n"","c\nd"\r\n');
});

test.each(['=1+1', '+44', '-5', '@x', '\tx', '\rx', '\n=x', '=a\nb', '＝1', '＋1', '－1', '＠x'])('a cell that a spreadsheet would take for a formula is made harmless: %j', (cell) => {
  expect(csvText([[cell, 'x']])).toBe(`"'${cell}","x"\r\n`);
});

test('a number is no formula and keeps its digits', () => {
  expect(csvText([[{ figure: '-34.00' }, -3, 0]])).toBe('"-34.00","-3","0"\r\n');
});

test('nothing is no table', () => expect(csvText([])).toBe(''));

test('another program reads back what was written', () => {
  fc.assert(fc.property(fc.array(fc.array(fc.string().map((text) => `x${text}`), { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 }), (rows) => {
    const read = Papa.parse<string[]>(csvText(rows), { delimiter: ',', newline: '\r\n', quoteChar: '"' });
    expect(read.data.slice(0, -1)).toEqual(rows);
  }));
});
