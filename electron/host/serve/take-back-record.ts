import { workRecords } from '../../../shared-core/records/work-record.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { entriesOfRecord } from '../../store/entries-of-record.ts';
import type { HostContext } from '../host-context.ts';
import { withdrawNow } from '../withdraw-now.ts';

/** Takes a record back with what was noted and measured in the same steps, in one transaction; all of it stays in the journal as withdrawn. */
export function takeBackRecord(context: HostContext, request: { readonly record: string; readonly why: string }): Result<{ withdrawn: number }> {
  const { store, facts } = context.household();
  return withdrawNow(context, () => {
    const known = facts.get(workRecords, request.record) !== null;
    return known ? ok(entriesOfRecord(store, request.record)) : refuse('unknown-record', { record: request.record }, ['record']);
  }, request.why);
}
