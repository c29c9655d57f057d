import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { parseOdometerLog } from '../../../shared-core/fleet/odometer-log.ts';

const rows = (text: string) => {
  const parsed = parseOdometerLog(text);
  return parsed.ok ? parsed.value.map(({ line, date, km }) => [line, date, km]) : parsed.refusal;
};

describe('a bare log', () => {
  const two = [[2, '2024-01-08', 61_500], [3, '2024-02-01', 62_000.5]];

  // Source: common practice of spreadsheets, no source.
  test.each([
    { case: 'with its header', text: 'date,km\n2024-01-08,61500\n2024-02-01,62000.5\n', is: two },
    { case: 'with a byte order mark and Windows line ends', text: '\ufeffdate,km\r\n2024-01-08,61500\r\n2024-02-01,62000.5\r\n', is: two },
    { case: 'with a byte order mark and no header', text: '\ufeff2024-01-08,61500', is: [[1, '2024-01-08', 61_500]] },
    { case: 'with quotes and spaces', text: '"date", "km"\n "2024-01-08" , "61500" \n2024-02-01, 62000.5', is: two },
    { case: 'without a header, empty lines between', text: '\n2024-01-08,61500\n2024-02-01,62000.5\n\n', is: two },
    { case: 'out of order', text: 'date,km\n2024-02-01,300\n2024-01-08,200', is: [[3, '2024-01-08', 200], [2, '2024-02-01', 300]] },
    { case: 'two on one day, the higher last', text: 'date,km\n2024-01-08,300\n2024-01-08,200', is: [[3, '2024-01-08', 200], [2, '2024-01-08', 300]] },
  ])('$case', ({ text, is }) => {
    expect(rows(text)).toEqual(is);
  });

  test('read back is what was written', () => {
    const reading = fc.record({ day: fc.integer({ min: -25_000, max: 84_000 }), km: fc.integer({ min: 0, max: 10_000_000 }) });
    fc.assert(fc.property(fc.uniqueArray(reading, { minLength: 1, selector: ({ day }) => day }), (written) => {
      const parsed = parseOdometerLog(['date,km', ...written.map(({ day, km }) => `${fromDayNumber(day)},${km}`)].join('\n'));
      const read = parsed.ok ? parsed.value.map(({ day, km }) => ({ day, km })) : [];
      expect(read).toEqual([...written].sort((a, b) => a.day - b.day));
    }));
  });
});

describe('what is refused, by its line', () => {
  test.each([
    { case: 'a date that is none', text: 'date,km\n2024-01-08,1\n2024-02-30,2', code: 'log-line-date', values: { line: 3, value: '2024-02-30' } },
    { case: 'another order of the date', text: '08/01/2024,1', code: 'log-line-date', values: { line: 1, value: '08/01/2024' } },
    { case: 'another header', text: 'day,km\n2024-01-08,1', code: 'log-line-date', values: { line: 1, value: 'day' } },
    { case: 'a header further down', text: '2024-01-08,1\ndate,km', code: 'log-line-date', values: { line: 2, value: 'date' } },
    { case: 'a negative distance', text: 'date,km\n2024-01-08,-1', code: 'log-line-km', values: { line: 2, value: '-1' } },
    { case: 'no distance', text: '2024-01-08,', code: 'log-line-km', values: { line: 1, value: '' } },
    { case: 'a distance with its unit', text: '2024-01-08,61500 km', code: 'log-line-km', values: { line: 1, value: '61500 km' } },
    { case: 'a number in another notation', text: '2024-01-08,6e4', code: 'log-line-km', values: { line: 1, value: '6e4' } },
    { case: 'a distance beyond any car', text: '2024-01-08,10000001', code: 'log-line-km', values: { line: 1, value: '10000001' } },
    { case: 'a formula', text: '2024-01-08,=1+1', code: 'log-line-km', values: { line: 1, value: '=1+1' } },
    { case: 'a thousands comma', text: '2024-01-08,61,500', code: 'log-line-columns', values: { line: 1, columns: 3 } },
    { case: 'one cell', text: 'date,km\n2024-01-08', code: 'log-line-columns', values: { line: 2, columns: 1 } },
    { case: 'semicolons', text: '2024-01-08;61500', code: 'log-line-columns', values: { line: 1, columns: 1 } },
    { case: 'control characters are not repeated', text: '2024-01-08,6\u0007\u202e1', code: 'log-line-km', values: { line: 1, value: '6??1' } },
    { case: 'a long cell is cut', text: `2024-01-08,${'9'.repeat(5000)}`, code: 'log-line-km', values: { line: 1, value: '9'.repeat(40) } },
    { case: 'nothing', text: '', code: 'log-empty', values: {} },
    { case: 'a header alone', text: 'date,km\n', code: 'log-empty', values: {} },
    { case: 'no end of lines', text: '\n'.repeat(200_000), code: 'log-too-long', values: { most: 110_000 } },
  ])('$case', ({ text, code, values }) => {
    expect(rows(text)).toEqual({ code, values });
  });
});
