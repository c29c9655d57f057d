import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { localDate, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { findCar, findHousehold } from '../fleet/find-car.ts';
import { recordReading } from '../fleet/record-reading.ts';
import type { EntryKinds } from '../journal/replay.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { overlayFacts } from '../journal/overlay-facts.ts';
import { addRecord, addRecordRequest } from '../records/add-record.ts';
import { recordReadingRequest } from '../fleet/record-reading.ts';
import { unitShownOn } from '../fleet/unit-shown.ts';
import { must } from '../result/assert.ts';
import { parseRequest } from '../result/parse-request.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sayRefusal } from '../result/words/say.ts';
import { minorFromText } from '../units/money.ts';
import { matchColumns, type ImportColumn, type MatchedColumns } from './import-columns.ts';

/** A line of a table as it was read; the first line of the file is 1. */
export interface ImportLine {
  readonly line: number;
  readonly cells: readonly string[];
}

export const importedRowSchema = z.object({
  line: z.int(),
  state: z.enum(['accepted', 'set-aside', 'refused']),
  car: z.string().nullable(),
  date: dateSchema.nullable(),
  what: z.string(),
  code: z.string().nullable(),
  text: z.string(),
});
export type ImportedRow = z.infer<typeof importedRowSchema>;

export const importViewSchema = z.object({
  kind: z.enum(['readings', 'history']),
  ignored: z.array(z.string()),
  accepted: z.int(),
  setAside: z.int(),
  refused: z.int(),
  rows: z.array(importedRowSchema),
});
export type ImportView = z.infer<typeof importViewSchema>;

/** What an import comes to: what is said of every row, and the entries of those that are not refused. */
export interface ImportDecision {
  readonly entries: readonly NewEntry[];
  readonly view: ImportView;
}

/** The car for rows that name none, and how to lay an entry over the facts. */
export interface ImportOptions {
  readonly car: string | null;
  readonly kinds: EntryKinds;
}

/**
 * Decides on a table of readings or of work done, in order of date, each row seeing the ones before. A bad row is named by
 * its line and left out; nothing is stored here.
 */
export function decideImport(facts: Facts, head: readonly string[], lines: readonly ImportLine[], options: ImportOptions, moment: Moment): Result<ImportDecision> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const columns = matchColumns(head);
  if (!columns.ok) return columns;
  const context: RowContext = { facts: overlayFacts(facts), columns: columns.value, options, moment, currency: household.value.currency };
  const entries: NewEntry[] = [];
  const rows = inOrderOfDate(lines, columns.value).map((line) => {
    const decided = decideRow(context, line);
    entries.push(...decided.entries);
    return decided.row;
  });
  rows.sort((a, b) => a.line - b.line);
  const count = (state: ImportedRow['state']) => rows.filter((row) => row.state === state).length;
  const kind = columns.value.at.has('work') ? 'history' : 'readings';
  return ok({ entries, view: { kind, ignored: [...columns.value.ignored], accepted: count('accepted'), setAside: count('set-aside'), refused: count('refused'), rows } });
}

interface RowContext {
  readonly facts: ReturnType<typeof overlayFacts>;
  readonly columns: MatchedColumns;
  readonly options: ImportOptions;
  readonly moment: Moment;
  readonly currency: string;
}

function inOrderOfDate(lines: readonly ImportLine[], columns: MatchedColumns): readonly ImportLine[] {
  const date = (line: ImportLine) => line.cells[columns.at.get('date') ?? -1]?.trim() ?? '';
  return [...lines].sort((a, b) => (date(a) < date(b) ? -1 : date(a) > date(b) ? 1 : a.line - b.line));
}

function decideRow(context: RowContext, line: ImportLine): { readonly entries: readonly NewEntry[]; readonly row: ImportedRow } {
  const cell = (column: ImportColumn) => line.cells[context.columns.at.get(column) ?? -1]?.trim() ?? '';
  const what = cell('work') || cell('odometer');
  const decided = rowOf(context, cell);
  const base = { line: line.line, what, date: decided.ok ? decided.value.date : null, car: decided.ok ? decided.value.car : null };
  if (!decided.ok) return { entries: [], row: { ...base, state: 'refused', code: decided.refusal.code, text: sayRefusal(decided.refusal) } };
  const { entries, doubt } = decided.value;
  for (const entry of entries) context.facts.lay(must(context.options.kinds.get(entry.kind), 'kind of entry').apply(entry.values));
  return { entries, row: { ...base, state: doubt === null ? 'accepted' : 'set-aside', code: doubt, text: doubt === null ? '' : sayRefusal({ code: `doubt-${doubt}`, values: {} }) } };
}

interface DecidedRow {
  readonly entries: readonly NewEntry[];
  readonly doubt: string | null;
  readonly date: LocalDate;
  readonly car: string;
}

function rowOf(context: RowContext, cell: (column: ImportColumn) => string): Result<DecidedRow> {
  const date = localDate(cell('date'));
  if (!date.ok) return date;
  const named = cell('car') || context.options.car;
  if (named === null || named === '') return refuse('import-without-car');
  const car = findCar(context.facts, named);
  if (!car.ok) return car;
  const odometer = odometerOf(context, car.value, date.value, cell);
  if (!odometer.ok) return odometer;
  return cell('work') === '' ? readingRow(context, car.value, date.value, odometer.value, cell) : workRow(context, car.value, date.value, odometer.value, cell);
}

type Odometer = { readonly value: number; readonly unit: 'km' | 'mi' } | null;

function odometerOf({ facts, columns }: RowContext, car: Car, date: LocalDate, cell: (column: ImportColumn) => string): Result<Odometer> {
  const text = cell('odometer').replace(/[\s\u00a0\u202f']/g, '');
  if (text === '') return ok(null);
  // One mark and three digits after it: thousands in one country, decimals in another. It is asked about, never guessed.
  if (/^\d{1,3}([.,]\d{3})+$/.test(text)) return refuse('import-thousands', { value: text.slice(0, 40) });
  if (!/^\d+([.,]\d+)?$/.test(text)) return refuse('not-a-distance', { value: text.slice(0, 40) });
  const named = cell('unit').toLowerCase();
  if (named !== '' && named !== 'km' && named !== 'mi') return refuse('unknown-unit', { field: 'unit' });
  return ok({ value: Number(text.replace(',', '.')), unit: named === '' ? (columns.unit ?? unitShownOn(facts, car, date)) : named });
}

function readingRow({ facts, moment }: RowContext, car: Car, date: LocalDate, odometer: Odometer, cell: (column: ImportColumn) => string): Result<DecidedRow> {
  if (odometer === null) return refuse('value-missing');
  const request = parseRequest(recordReadingRequest, { car: car.id, ...odometer, date, source: 'import', note: cell('note') });
  if (!request.ok) return request;
  const decided = recordReading.decide(facts, request.value, moment);
  if (!decided.ok) return decided;
  return ok({ entries: decided.value.entries, doubt: decided.value.reply.code, date, car: car.id });
}

function workRow({ facts, moment, currency }: RowContext, car: Car, date: LocalDate, odometer: Odometer, cell: (column: ImportColumn) => string): Result<DecidedRow> {
  const amount = cell('cost') === '' ? null : minorFromText(cell('cost'), currency);
  if (cell('cost') !== '' && amount === null) return refuse('import-amount', { value: cell('cost').slice(0, 40), currency });
  const request = parseRequest(addRecordRequest, {
    car: car.id, date, title: cell('work').slice(0, 120), reading: odometer, note: cell('note'),
    place: cell('place').toLowerCase() === 'garage' ? 'garage' : 'home',
    doneBy: cell('by') === '' ? null : cell('by'),
    lines: [{ name: cell('work').slice(0, 120) }],
    printedTotalMinor: amount,
    reconstructed: true,
  });
  if (!request.ok) return request;
  const decided = addRecord.decide(facts, request.value, moment);
  if (!decided.ok) return decided;
  return ok({ entries: decided.value.entries, doubt: decided.value.reply.reading?.code ?? null, date, car: car.id });
}
