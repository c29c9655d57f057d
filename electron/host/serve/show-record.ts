import { dateOfInstant } from '../../../shared-core/calendar/local-date.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { refuse, type Result } from '../../../shared-core/result/result.ts';
import { recordView, type RecordView } from '../../../shared-core/views/record-view.ts';
import { entriesOfRecord, versionsOfRecord } from '../../store/entries-of-record.ts';
import { readRow } from '../../store/journal-table.ts';
import type { Store } from '../../store/store.ts';
import { mayWithdraw } from '../../store/withdraw-entries.ts';
import type { HostContext } from '../host-context.ts';

/** All about one record, its entries and what keeps it from being taken back included. */
export function showRecord(context: HostContext, request: { readonly record: string }): Result<RecordView> {
  const { store, facts } = context.household();
  const record = facts.get(workRecords, request.record);
  if (record === null) return refuse('unknown-record', { record: request.record }, ['record']);
  return recordView(facts, record, versionsOfRecord(store, record.id), heldBy(store, record.id), context.world.today());
}

function heldBy(store: Store, record: string): RecordView['held'] {
  const allowed = mayWithdraw(store, entriesOfRecord(store, record));
  if (allowed.ok) return null;
  const { by } = allowed.refusal.values;
  if (typeof by !== 'number') return { by: 'seal', on: null };
  return { by: 'entry', on: dateOfInstant(must(readRow(store, by), 'entry that stands upon a record').at) };
}
