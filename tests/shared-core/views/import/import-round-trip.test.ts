import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { DateOrder } from '../../../../shared-core/calendar/date-text.ts';
import { fromDayNumber } from '../../../../shared-core/calendar/local-date.ts';
import { decodeTable } from '../../../../electron/host/decode-table.ts';
import { decide, preview, withPip, type Said } from './take-in.ts';

/** How one table is written. */
interface Writing {
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly newline: '\n' | '\r\n';
  readonly quotes: boolean;
  readonly mark: '' | '\ufeff';
  readonly order: DateOrder;
  readonly dash: '-' | '/' | '.';
  readonly decimal: '.' | ',';
  readonly group: '' | ' ' | '\u202f' | "'" | 'other';
  readonly columns: readonly ('date' | 'odometer' | 'unit' | 'note')[];
}

const writings: fc.Arbitrary<Writing> = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  newline: fc.constantFrom('\n', '\r\n'),
  quotes: fc.boolean(),
  mark: fc.constantFrom('', '\ufeff'),
  order: fc.constantFrom<DateOrder>('ymd', 'dmy', 'mdy'),
  dash: fc.constantFrom('-', '/', '.'),
  decimal: fc.constantFrom('.', ','),
  group: fc.constantFrom('', ' ', '\u202f', "'", 'other'),
  columns: fc.shuffledSubarray(['date', 'odometer', 'unit', 'note'], { minLength: 4 }),
});

const note = fc
  .string({ unit: fc.constantFrom('a', 'é', '"', ',', ';', '|', '\n', ' ', '=', '+', '-', '@', "'", '7'), maxLength: 8 })
  .map((text) => text.trim())
  // A text that begins as a guarded one does is not told from it: writers of tables have no way to say so.
  .filter((text) => !/^'[=+\-@]/.test(text));
const rows = fc.uniqueArray(
  fc.record({ day: fc.integer({ min: 18_000, max: 20_700 }), tenths: fc.integer({ min: 0, max: 3_000_000 }), unit: fc.constantFrom('km', 'mi'), note }),
  { minLength: 1, maxLength: 12, selector: ({ day }) => day },
);

function cells(row: { readonly day: number; readonly tenths: number; readonly unit: string; readonly note: string }, writing: Writing): Record<Writing['columns'][number], string> {
  const [year = '', month = '', day = ''] = fromDayNumber(row.day).split('-');
  const date = { ymd: [year, month, day], dmy: [day, month, year], mdy: [month, day, year] }[writing.order].join(writing.dash);
  const group = writing.group === 'other' ? (writing.decimal === '.' ? ',' : '.') : writing.group;
  const whole = String(Math.floor(row.tenths / 10)).replace(/\B(?=(\d{3})+$)/g, group);
  return { date, odometer: row.tenths % 10 === 0 ? whole : `${whole}${writing.decimal}${row.tenths % 10}`, unit: row.unit, note: row.note };
}

describe('readings written as a table', () => {
  test('are the same once taken in, however the table is written', () => {
    fc.assert(fc.property(rows, writings, (given, writing) => {
      const table = [[...writing.columns], ...given.map((row) => writing.columns.map((column) => cells(row, writing)[column]))];
      const text = writing.mark + Papa.unparse(table, { delimiter: writing.delimiter, newline: writing.newline, quotes: writing.quotes, escapeFormulae: /^[=+\-@\t\r]/ });
      const said: Said = { dateOrder: writing.order, decimalMark: writing.decimal, delimiter: writing.delimiter };
      const decided = decide(withPip(), text, said);
      if (!decided.ok) throw new Error(JSON.stringify(decided.refusal));
      const stored = decided.value.entries.map(({ values }) => values as { date: string; typed: { value: number; unit: string }; note: string; source: string });
      const expected = given.map((row) => ({ date: fromDayNumber(row.day), value: row.tenths / 10, unit: row.unit, note: row.note, source: 'import' }));
      const byDate = (a: { date: string }, b: { date: string }) => (a.date < b.date ? -1 : 1);
      expect(stored.map(({ date, typed, note: kept, source }) => ({ date, ...typed, note: kept, source })).sort(byDate)).toEqual(expected.sort(byDate));
    }), { numRuns: 150 });
  });

  test('need no choice where nothing in them is open: what is found is what was written', () => {
    fc.assert(fc.property(rows, writings, (given, writing) => {
      const text = Papa.unparse([[...writing.columns], ...given.map((row) => writing.columns.map((column) => cells({ ...row, note: 'a' }, writing)[column]))], { delimiter: writing.delimiter });
      const view = preview(withPip(), text);
      expect(view.detected.delimiter.value).toBe(writing.delimiter);
      if (view.questions.length > 0) return void expect(view.questions.every(({ answer }) => answer === 'dateOrder' || answer === 'decimalMark')).toBe(true);
      const dates = given.map((row) => fromDayNumber(row.day)).slice(0, view.first.length);
      expect(view.first.map(({ date, reading }) => [date, reading?.value])).toEqual(dates.map((date, at) => [date, (given[at]?.tenths ?? 0) / 10]));
    }), { numRuns: 150 });
  });

  test('and taken in twice, come to nothing the second time', () => {
    const text = 'date,miles\n2026-01-05,41500\n2026-02-05,42000\n';
    const household = withPip([['2026-01-05', 41_500], ['2026-02-05', 42_000]]);
    expect(preview(household, text)).toMatchObject({ ready: false, counts: { duplicates: 2, readings: 0 } });
  });
});

describe('whatever is given', () => {
  const household = withPip([['2024-01-10', 9000], ['2025-01-10', 18_000]]);
  const said: fc.Arbitrary<Said> = fc.record(
    { dateOrder: fc.constantFrom<DateOrder>('ymd', 'dmy', 'mdy'), delimiter: fc.constantFrom(',', ';', '\t', '|'), hasHeader: fc.boolean(), decimalMark: fc.constantFrom('.', ','), columns: fc.dictionary(fc.constantFrom('date', 'reading', 'work', 'cost', 'unit', 'car'), fc.option(fc.integer({ min: 1, max: 5 }))) },
    { requiredKeys: [] },
  );

  test('any bytes are decided on or refused, and nothing throws', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), said, (bytes, choices) => {
      const text = decodeTable(bytes);
      if (text.ok) decide(household, text.value.text, choices);
    }), { numRuns: 400 });
  });

  test('any table of odd cells is shown as its schema has it, each row once', () => {
    const odd = fc.oneof(fc.constantFrom('date', 'km', 'work', 'cost', 'unit', 'car', '2026-01-05', '3/4/25', '25 Mar 24', '41,500', '41.500 km', '=1', '-x', '', 'oil', 'brake fliud, wash', '£12', '(1.234,5)', 'pip', '\u202e', '\ud800', '"'), fc.string({ maxLength: 6 }));
    fc.assert(fc.property(fc.array(fc.array(odd, { maxLength: 6 }), { maxLength: 8 }), fc.constantFrom(',', ';'), said, (table, delimiter, choices) => {
      const decided = decide(household, Papa.unparse(table, { delimiter }), choices);
      if (!decided.ok) return void expect(decided.refusal.code).toMatch(/^import-/);
      const { counts } = preview(household, Papa.unparse(table, { delimiter }), choices);
      expect(counts.stored + counts.setAside + counts.duplicates + counts.refused + counts.waiting).toBe(counts.rows);
    }), { numRuns: 400 });
  });
});
