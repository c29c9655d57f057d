import type { Facts } from '../../../shared-core/journal/facts.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { refuse, type Result } from '../../../shared-core/result/result.ts';
import { besideWords } from '../../../shared-core/views/beside-words.ts';
import { recordView, type RecordView } from '../../../shared-core/views/record-view.ts';
import { besideRecord, entriesOfRecord, versionsOfRecord } from '../../store/entries-of-record.ts';
import type { Store } from '../../store/store.ts';
import type { HostContext } from '../host-context.ts';
import { withdrawalHeld } from '../withdraw-now.ts';

/** All about one record, its entries and what keeps it from being taken back included. */
export function showRecord(context: HostContext, request: { readonly record: string }): Result<RecordView> {
  const { store, facts } = context.household();
  const record = facts.get(workRecords, request.record);
  if (record === null) return refuse('unknown-record', { record: request.record }, ['record']);
  return recordView(facts, record, versionsOfRecord(store, record.id), { held: heldBy(store, record.id), beside: besideOf(facts, store, record.id) }, context.world.today());
}

function heldBy(store: Store, record: string): RecordView['held'] {
  const held = withdrawalHeld(store, entriesOfRecord(store, record));
  return held === null ? null : { by: held.by, on: held.by === 'entry' ? held.on : null };
}

/** What is taken back with a record that was written in the same step, and what stays. */
export function besideOf(facts: Facts, store: Store, record: string): RecordView['beside'] {
  const beside = besideRecord(store, record);
  return { goes: besideWords(facts, beside.filter((one) => !one.stays)), stays: besideWords(facts, beside.filter((one) => one.stays)) };
}
