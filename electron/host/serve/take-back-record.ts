import { workRecords } from '../../../shared-core/records/work-record.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { entriesOfRecord } from '../../store/entries-of-record.ts';
import { withdrawEntries } from '../../store/withdraw-entries.ts';
import type { HostContext } from '../host-context.ts';
import { pushChanged } from '../push-changed.ts';

/** Takes a record back with what was noted and measured in the same steps, in one transaction; all of it stays in the journal as withdrawn. */
export function takeBackRecord(context: HostContext, request: { readonly record: string; readonly why: string }): Result<{ withdrawn: number }> {
  const { store, facts } = context.household();
  const { world } = context;
  const done = store
    .transaction(() => {
      if (facts.get(workRecords, request.record) === null) return refuse('unknown-record', { record: request.record }, ['record']);
      const entries = entriesOfRecord(store, request.record);
      const withdrawn = withdrawEntries(store, entries, request.why, world.now(), world.making);
      return withdrawn.ok ? ok({ puts: withdrawn.value, count: entries.length }) : withdrawn;
    })
    .immediate();
  if (!done.ok) return done;
  pushChanged(context, done.value.puts);
  return ok({ withdrawn: done.value.count });
}
