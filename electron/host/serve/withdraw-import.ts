import { imports } from '../../../shared-core/records/import.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { entriesOfImport } from '../../store/entries-of-import.ts';
import { withdrawEntries } from '../../store/withdraw-entries.ts';
import type { HostContext } from '../host-context.ts';
import { pushChanged } from '../push-changed.ts';

/** Withdraws a whole import in one transaction: all it brought that still stands, or nothing where something stands upon it. */
export function withdrawImport(context: HostContext, request: { readonly id: string; readonly why: string }): Result<{ withdrawn: number }> {
  const { store, facts } = context.household();
  const { world } = context;
  const done = store
    .transaction(() => {
      const one = facts.get(imports, request.id);
      if (one === null) return refuse('unknown-import', { id: request.id }, ['id']);
      const entries = entriesOfImport(store, facts, one);
      const withdrawn = withdrawEntries(store, entries, request.why, world.now(), world.making);
      return withdrawn.ok ? ok({ puts: withdrawn.value, count: entries.length }) : withdrawn;
    })
    .immediate();
  if (!done.ok) return done;
  pushChanged(context, done.value.puts);
  return ok({ withdrawn: done.value.count });
}
