import type { Entry } from '../../shared-core/journal/entry-kind.ts';
import type { RecordVersion } from '../../shared-core/records/record-version.ts';
import { workAmended, workAmendedSchema } from '../../shared-core/records/work-amended.ts';
import { workRecorded, workRecords, workRecordSchema } from '../../shared-core/records/work-record.ts';
import { must } from '../../shared-core/result/assert.ts';
import { readEntry, readRow } from './journal-table.ts';
import type { Store } from './store.ts';

/** Every entry of a record, the first one first: as it was written, and each time it was amended. */
export function versionsOfRecord(store: Store, record: string): readonly RecordVersion[] {
  return touching(store, record, 'puts').flatMap((seq): RecordVersion[] => {
    const entry = must(readEntry(store, seq), 'entry of a record');
    const said = saidBy(entry);
    return said === null ? [] : [{ seq, at: entry.at, withdrawn: must(readRow(store, seq), 'row of a record').withdrawnBy !== null, ...said }];
  });
}

/**
 * The entries that are taken back with a record: its own that still stand, and what was noted, settled or measured in the same steps. What
 * came to stand upon it later is not among them.
 */
export function entriesOfRecord(store: Store, record: string): readonly number[] {
  const own = touching(store, record, 'puts').map((seq) => must(readRow(store, seq), 'row of a record')).filter((row) => row.withdrawnBy === null);
  const instants = new Set(own.map((row) => row.at));
  const beside = touching(store, record, 'refers').map((seq) => must(readRow(store, seq), 'row that refers to a record')).filter((row) => row.withdrawnBy === null && instants.has(row.at));
  return [...new Set([...own, ...beside].map((row) => row.seq))].sort((a, b) => a - b);
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
