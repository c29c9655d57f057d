import { workRecords } from '../../../shared-core/records/work-record.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { entriesOfRecord } from '../../store/entries-of-record.ts';
import type { HostContext } from '../host-context.ts';
import { withdrawNow } from '../withdraw-now.ts';
import { besideOf } from './show-record.ts';

/** Takes a record back with what was noted, measured and left over in the same steps, in one transaction, and says what stays; all of it stays in the journal as withdrawn. */
export function takeBackRecord(context: HostContext, request: { readonly record: string; readonly why: string }): Result<{ withdrawn: number; stays: string[] }> {
  const { store, facts } = context.household();
  const { stays } = besideOf(facts, store, request.record);
  const done = withdrawNow(context, () => {
    const known = facts.get(workRecords, request.record) !== null;
    return known ? ok(entriesOfRecord(store, request.record)) : refuse('unknown-record', { record: request.record }, ['record']);
  }, request.why);
  return done.ok ? ok({ ...done.value, stays }) : done;
}
