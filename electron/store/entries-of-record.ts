import { measurements } from '../../shared-core/care/measurement.ts';
import { HOUSEHOLD_SUBJECT, type Entry } from '../../shared-core/journal/entry-kind.ts';
import { wastes } from '../../shared-core/parts/waste.ts';
import type { RecordVersion } from '../../shared-core/records/record-version.ts';
import { workAmended, workAmendedSchema } from '../../shared-core/records/work-amended.ts';
import { workRecorded, workRecords, workRecordSchema } from '../../shared-core/records/work-record.ts';
import { must } from '../../shared-core/result/assert.ts';
import { followUps } from '../../shared-core/work/follow-up.ts';
import { readEntry, readRow, type JournalRow } from './journal-table.ts';
import type { Store } from './store.ts';

/** Every entry of a record, the first one first: as it was written, and each time it was amended. */
export function versionsOfRecord(store: Store, record: string): readonly RecordVersion[] {
  return touching(store, record, 'puts').flatMap((seq): RecordVersion[] => {
    const entry = must(readEntry(store, seq), 'entry of a record');
    const said = saidBy(entry);
    return said === null ? [] : [{ seq, at: entry.at, withdrawn: must(readRow(store, seq), 'row of a record').withdrawnBy !== null, ...said }];
  });
}

/** Something written in the same step as a record though its entry does not name it: measured, to be looked at again, or kept as leavings. */
export interface BesideRecord {
  readonly family: string;
  readonly id: string;
  readonly seq: number;
  /** It stays when the record is taken back: something was entered on it since, or another record of that step has it too. */
  readonly stays: boolean;
}

/**
 * What was measured, is to be looked at again or is kept as leavings by the steps in which a record was written. Of several records of one
 * car in one step nobody knows of which it is, so there it is of none; leavings are of all records of a step, and go with the last.
 */
export function besideRecord(store: Store, record: string): readonly BesideRecord[] {
  const found = standingRows(store, record, 'puts').flatMap(({ at, subject }) => {
    const others = store.prepare<[string, string, string], { subject: string }>(`SELECT subject FROM touch JOIN journal USING (seq) WHERE family = ? AND role = 'puts' AND withdrawn_by IS NULL AND id <> ? AND at = ?`).all(workRecords.name, record, at);
    if (others.some((one) => one.subject === subject)) return [];
    return besideAt(store, at, subject).map(({ later, ...one }) => ({ ...one, stays: later > 0 || (one.family === wastes.name && others.length > 0) }));
  });
  return [...new Map(found.map((one) => [one.seq, one])).values()];
}

function besideAt(store: Store, at: string, subject: string): readonly (Omit<BesideRecord, 'stays'> & { readonly later: number })[] {
  return store.prepare<string[], Omit<BesideRecord, 'stays'> & { later: number }>(
    `SELECT mine.family, mine.id, mine.seq,
       (SELECT count(*) FROM touch AS later JOIN journal AS upon ON upon.seq = later.seq WHERE later.family = mine.family AND later.id = mine.id AND later.seq > mine.seq AND upon.withdrawn_by IS NULL) AS later
     FROM touch AS mine JOIN journal ON journal.seq = mine.seq
     WHERE subject IN (?, ?) AND at = ? AND withdrawn_by IS NULL AND role = 'puts' AND family IN (?, ?, ?) ORDER BY mine.seq`,
  ).all(subject, HOUSEHOLD_SUBJECT, at, measurements.name, followUps.name, wastes.name);
}

/**
 * The entries that are taken back with a record: its own that still stand, and what was noted, settled, measured, put down to be looked at
 * again or kept as leavings in the same steps. What came to stand upon it later is not among them.
 */
export function entriesOfRecord(store: Store, record: string): readonly number[] {
  const own = standingRows(store, record, 'puts');
  const instants = new Set(own.map((row) => row.at));
  const naming = standingRows(store, record, 'refers').filter((row) => instants.has(row.at));
  const beside = besideRecord(store, record).filter((one) => !one.stays);
  return [...new Set([...own, ...naming, ...beside].map((row) => row.seq))].sort((a, b) => a - b);
}

function standingRows(store: Store, record: string, role: 'puts' | 'refers'): readonly JournalRow[] {
  return touching(store, record, role).map((seq) => must(readRow(store, seq), 'row of a record')).filter((row) => row.withdrawnBy === null);
}

function touching(store: Store, record: string, role: 'puts' | 'refers'): readonly number[] {
  return store.prepare<[string, string, string], number>('SELECT seq FROM touch WHERE family = ? AND id = ? AND role = ? ORDER BY seq').pluck().all(workRecords.name, record, role);
}

function saidBy({ kind, values }: Entry): Pick<RecordVersion, 'record' | 'why'> | null {
  if (kind === workRecorded.kind) return { record: workRecordSchema.parse(values), why: null };
  if (kind !== workAmended.kind) return null;
  const { why, ...record } = workAmendedSchema.parse(values);
  return { record, why };
}
