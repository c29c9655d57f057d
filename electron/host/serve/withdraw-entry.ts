import { ok, type Result } from '../../../shared-core/result/result.ts';
import { withdrawEntries } from '../../store/withdraw-entries.ts';
import type { HostContext } from '../host-context.ts';
import { pushChanged } from '../push-changed.ts';

/** Undoes entries in one transaction, or refuses and leaves all as it was. */
export function withdrawEntry(context: HostContext, request: { readonly entries: readonly number[]; readonly why: string }): Result<{ withdrawn: number }> {
  const { store } = context.household();
  const { world } = context;
  const done = store.transaction(() => withdrawEntries(store, request.entries, request.why, world.now(), world.making)).immediate();
  if (!done.ok) return done;
  pushChanged(context, done.value);
  return ok({ withdrawn: new Set(request.entries).size });
}
