import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { gridText, readGrid } from '../../../../shared-core/views/import/import-grid.ts';
import { findDelimiter } from '../../../../shared-core/views/import/import-delimiter.ts';
import { day } from '../../calendar/day.ts';

const RFC = 'RFC 4180 s2, from memory';

function rowsOf(text: string, delimiter: ',' | ';' = ',') {
  const whole = gridText(text);
  return whole.ok ? readGrid(whole.value.text, delimiter, 1000) : whole;
}

describe('a table as text', () => {
  test.each([
    { case: 'lines that end as on the wire', text: 'aaa,bbb\r\nzzz,yyy\r\n', rows: [{ line: 1, cells: ['aaa', 'bbb'] }, { line: 2, cells: ['zzz', 'yyy'] }], source: `${RFC}: records, each on a line` },
    { case: 'no end after the last line', text: 'aaa,bbb\r\nzzz,yyy', rows: [{ line: 1, cells: ['aaa', 'bbb'] }, { line: 2, cells: ['zzz', 'yyy'] }], source: `${RFC}: the last may lack its line end` },
    { case: 'blanks within cells', text: ' a ,b c\n', rows: [{ line: 1, cells: [' a ', 'b c'] }], source: `${RFC}: blanks are part of a cell` },
    { case: 'quoted cells', text: '"aaa","b,b"\n', rows: [{ line: 1, cells: ['aaa', 'b,b'] }], source: `${RFC}: delimiters within quotes` },
    { case: 'a line end within quotes', text: '"a\r\na",b\r\nc,d', rows: [{ line: 1, cells: ['a\na', 'b'] }, { line: 3, cells: ['c', 'd'] }], source: `${RFC}: line ends within quotes; the next row begins at line 3` },
    { case: 'a doubled quote', text: '"a""b",c\n', rows: [{ line: 1, cells: ['a"b', 'c'] }], source: `${RFC}: a quote is written twice` },
    { case: 'blank lines', text: '\na,b\n , \n\nc,d\n', rows: [{ line: 2, cells: ['a', 'b'] }, { line: 5, cells: ['c', 'd'] }], source: 'ours: left out, and counted' },
    { case: 'lines that end in three ways', text: 'a,b\rc,d\r\ne,f\ng,h', rows: [1, 2, 3, 4].map((line) => ({ line, cells: ['ab', 'cd', 'ef', 'gh'][line - 1]?.split('') })), source: 'ours' },
    { case: 'a mark of byte order', text: '\ufeffa,b\n', rows: [{ line: 1, cells: ['a', 'b'] }], source: 'Unicode 16 s23.8, from memory' },
    { case: 'a quote within an unquoted cell', text: 'a 17" rim,b\n', rows: [{ line: 1, cells: ['a 17" rim', 'b'] }], source: 'ours: it is plain what is meant' },
    { case: 'a mark of byte order before a line that names the delimiter', text: '\ufeffsep=,\na,b\n', rows: [{ line: 2, cells: ['a', 'b'] }], source: 'ours' },
    { case: 'a line that names the delimiter', text: 'sep=,\na,b\n', rows: [{ line: 2, cells: ['a', 'b'] }], source: 'practice of spreadsheets, from memory' },
  ])('$case', ({ text, rows }) => {
    expect(rowsOf(text)).toEqual({ ok: true, value: rows });
  });

  test.each([
    { case: 'a quote that does not close', text: 'a,b\n1,"x\n2,y\n', code: 'import-quotes', line: 2 },
    { case: 'one after a cell of two lines', text: 'a,b\n"x\ny","z\n2,y\n', code: 'import-quotes', line: 3 },
    { case: 'a quote that closes too early', text: 'a,b\n1,2\n"x"y,z\n', code: 'import-quotes', line: 3 },
    { case: 'a NUL', text: 'a,b\n1,\0\n', code: 'import-nul', line: 2 },
  ])('$case is refused with its line', ({ text, code, line }) => {
    expect(rowsOf(text)).toMatchObject({ ok: false, refusal: { code, values: { line } } });
  });

  test('stops at the most rows', () => {
    const rows = readGrid('a\n'.repeat(5000), ',', 10);
    expect(rows.ok && rows.value.length).toBe(11);
  });

  test('is read again as it was written, and each row stands at its line', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\n', ' ', 'é', '1'), maxLength: 6 });
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 8 }).filter((rows) => rows.every((cells) => cells.some((one) => one.trim() !== '')));
    fc.assert(fc.property(table, fc.constantFrom(',' as const, ';' as const), (rows, delimiter) => {
      const read = rowsOf(Papa.unparse(rows, { delimiter, quotes: true, newline: '\r\n' }), delimiter);
      const lines = rows.map((_, at) => 1 + rows.slice(0, at).join('\n').split('\n').length - (at === 0 ? 1 : 0));
      expect(read).toEqual({ ok: true, value: rows.map((cells, at) => ({ line: lines[at], cells })) });
    }));
  });
});

describe('what parts the columns', () => {
  test.each([
    { case: 'commas', text: 'date,km\n2026-01-05,1\n', value: ',', source: 'one delimiter only' },
    { case: 'semicolons, with decimal commas', text: 'date;km\n2026-01-05;41,5\n', value: ';', source: 'the head has one column by commas' },
    { case: 'semicolons without a head, with decimal commas', text: '2026-01-05;41,5\n2026-01-06;42,5\n', value: ';', source: 'only then a cell is a date' },
    { case: 'tabs', text: 'date\tkm\tnote\n2026-01-05\t1\ta, b; c\n', value: '\t', source: 'heads are known' },
    { case: 'upright lines', text: 'date|km\n2026-01-05|1\n', value: '|', source: 'one delimiter only' },
    { case: 'commas, with semicolons in one text', text: 'date,km,note\n2026-01-05,1,a;b\n2026-01-06,2,c\n', value: ',', source: 'semicolons cut one row only' },
    { case: 'nothing', text: 'a\nb\n', value: ',', source: 'ours' },
  ])('$case', ({ text, value }) => {
    expect(findDelimiter(text, day('2026-11-25')).value).toBe(value);
  });

  test('names the others that cut the table too, and no more', () => {
    expect(findDelimiter('date;km\n2026-01-05;41,5\n2026-01-06;42,5\n', day('2026-11-25')).others).toEqual([',']);
    expect(findDelimiter('date,km\n2026-01-05,1\n', day('2026-11-25')).others).toEqual([]);
  });
});
