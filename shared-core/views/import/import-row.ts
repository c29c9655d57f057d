import type { LocalDate } from '../../calendar/local-date.ts';
import type { Car } from '../../fleet/car.ts';
import { recordReading, recordReadingRequest } from '../../fleet/record-reading.ts';
import { newEntry, type NewEntry } from '../../journal/entry-kind.ts';
import type { Moment } from '../../journal/operation.ts';
import { addRecord, addRecordRequest } from '../../records/add-record.ts';
import { workRecorded, type RecordLine } from '../../records/work-record.ts';
import { parseRequest } from '../../result/parse-request.ts';
import { ok, refuse, type Refusal, type Result } from '../../result/result.ts';
import type { DistanceAsTyped } from '../../units/distance.ts';
import { cutName } from './import-cells.ts';
import type { ImportFacts } from './import-facts.ts';
import { saidAlready, type KnownRows, type WorkIdentity } from './import-known.ts';
import type { MeantLine } from './import-work.ts';

/** A row of which nothing is open. */
export interface WholeRow {
  readonly line: number;
  readonly car: Car;
  readonly date: LocalDate;
  readonly reading: DistanceAsTyped | null;
  /** As it stands in the file. */
  readonly work: string;
  readonly lines: readonly MeantLine[];
  readonly outcome: RecordLine['outcome'];
  readonly costMinor: number | null;
  readonly place: 'home' | 'garage';
  readonly placeName: string | null;
  readonly by: string | null;
  readonly note: string;
}

/** What a row comes to: entries and perhaps a doubt, or that it is known already. */
export type RowOutcome =
  | { readonly state: 'stored' | 'set-aside'; readonly entries: readonly NewEntry[]; readonly doubt: string | null; readonly cleaned: readonly Refusal[] }
  | { readonly state: 'duplicate'; readonly why: Refusal };

/** What rows are decided with. */
export interface RowDeciding {
  readonly facts: ImportFacts;
  readonly known: KnownRows;
  readonly moment: Moment;
}

/** Decides on one row as on one entered by hand: its reading judged, its work recorded as written from memory. Nothing is laid down here. */
export function decideRow(deciding: RowDeciding, row: WholeRow): Result<RowOutcome> {
  deciding.facts.look(row.date);
  if (row.lines.length > 0) return decideWork(deciding, row);
  return row.reading === null ? refuse('import-row-empty') : decideReadingRow(deciding, row, row.reading);
}

function decideReadingRow({ facts, known, moment }: RowDeciding, row: WholeRow, reading: DistanceAsTyped): Result<RowOutcome> {
  const already = known.reading(row.car.id, row.date, reading);
  if (already !== null) return ok({ state: 'duplicate', why: saidAlready(already) });
  const request = parseRequest(recordReadingRequest, { car: row.car.id, ...reading, date: row.date, source: 'import', note: row.note });
  if (!request.ok) return request;
  const decided = recordReading.decide(facts, request.value, moment);
  if (!decided.ok) return decided;
  known.addReading(row.car.id, row.date, reading, decided.value.reply.reading.id, row.line);
  return ok(outcome(decided.value.entries, decided.value.reply.code, []));
}

function decideWork({ facts, known, moment }: RowDeciding, row: WholeRow): Result<RowOutcome> {
  const identity: WorkIdentity = { date: row.date, title: row.work, lines: row.lines.map(({ item, name }) => item?.id ?? name), costMinor: row.costMinor };
  const already = known.work(row.car.id, identity);
  if (already !== null) return ok({ state: 'duplicate', why: saidAlready(already) });
  // A reading that stands already is pointed to, and not written twice.
  const read = row.reading === null ? null : known.reading(row.car.id, row.date, row.reading);
  const request = parseRequest(addRecordRequest, recordFor(row, read === null ? row.reading : null));
  if (!request.ok) return request;
  const decided = addRecord.decide(facts, request.value, moment);
  if (!decided.ok) return decided;
  const { record, reading } = decided.value.reply;
  known.addWork(row.car.id, identity, record.id, row.line);
  if (row.reading !== null && reading !== null) known.addReading(row.car.id, row.date, row.reading, reading.reading.id, row.line);
  const entries = read === null ? decided.value.entries : decided.value.entries.map((entry) => (entry.kind === workRecorded.kind ? newEntry(workRecorded, { ...record, reading: read.id }) : entry));
  const cleaned = row.lines.some(({ item, text, name }) => item === null && text !== name) ? [refuse('import-cut').refusal] : [];
  return ok(outcome(entries, reading?.code ?? null, cleaned));
}

function recordFor(row: WholeRow, reading: DistanceAsTyped | null): unknown {
  const cut = row.lines.some(({ item, text, name }) => item === null && text !== name);
  return {
    car: row.car.id, date: row.date, reading, place: row.place, placeName: row.placeName, doneBy: row.by,
    title: cutName(row.work.replace(/\s*\n\s*/g, ', ')),
    // What was to be watched long ago is not looked at again now.
    lines: row.lines.map(({ item, name, work }) => ({ item: item?.id ?? null, name, work, outcome: row.outcome, recheckOn: null })),
    printedTotalMinor: row.costMinor,
    note: cut ? [row.work, row.note].filter((text) => text !== '').join('\n') : row.note,
    reconstructed: true,
  };
}

function outcome(entries: readonly NewEntry[], doubt: string | null, cleaned: readonly Refusal[]): RowOutcome {
  return { state: doubt === null ? 'stored' : 'set-aside', entries, doubt, cleaned };
}
