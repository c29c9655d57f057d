import { dateOfInstant, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { must } from '../../shared-core/result/assert.ts';
import { ok, type Result } from '../../shared-core/result/result.ts';
import { checkRestored } from '../../shared-core/sessions/check-restored.ts';
import { readRow } from '../store/journal-table.ts';
import type { Store } from '../store/store.ts';
import { mayWithdraw, putsOnceWithdrawn, withdrawEntries } from '../store/withdraw-entries.ts';
import type { HostContext } from './host-context.ts';
import { pushChanged } from './push-changed.ts';

/** Withdraws what is chosen within the transaction that does it, or refuses and leaves all as it was; tells the windows. */
export function withdrawNow(context: HostContext, choose: () => Result<readonly number[]>, why: string): Result<{ withdrawn: number }> {
  const { store, facts } = context.household();
  const { world } = context;
  const done = store
    .transaction(() => {
      const chosen = choose();
      if (!chosen.ok) return chosen;
      const allowed = mayWithdraw(store, chosen.value);
      if (!allowed.ok) return allowed;
      const sound = checkRestored(facts, putsOnceWithdrawn(store, chosen.value));
      if (!sound.ok) return sound;
      const withdrawn = withdrawEntries(store, chosen.value, why, world.now(), world.making);
      return withdrawn.ok ? ok({ puts: withdrawn.value, count: new Set(chosen.value).size }) : withdrawn;
    })
    .immediate();
  if (!done.ok) return done;
  pushChanged(context, done.value.puts);
  return ok({ withdrawn: done.value.count });
}

/** What keeps entries from being withdrawn: a seal over them, or an entry that stands upon one of them. */
export type WithdrawalHeld =
  | { readonly by: 'seal' }
  | { readonly by: 'entry'; readonly entry: number; readonly on: LocalDate; readonly subject: string };

/** What keeps entries from being withdrawn together as all stands now; null where nothing does. */
export function withdrawalHeld(store: Store, entries: readonly number[]): WithdrawalHeld | null {
  const allowed = mayWithdraw(store, entries);
  if (allowed.ok) return null;
  const { by } = allowed.refusal.values;
  if (typeof by !== 'number') return { by: 'seal' };
  const { at, subject } = must(readRow(store, by), 'entry that stands upon another');
  return { by: 'entry', entry: by, on: dateOfInstant(at), subject };
}
