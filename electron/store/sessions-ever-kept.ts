import { sessions, sessionSet, sessionSchema, isPinned, type Session } from '../../shared-core/sessions/session.ts';
import { must } from '../../shared-core/result/assert.ts';
import { readEntry } from './journal-table.ts';
import type { Store } from './store.ts';

/** Every session as it was last kept, those withdrawn and those that joined another among them: what an earlier calendar file may hold. */
export function sessionsEverKept(store: Store): readonly Session[] {
  const seqs = store
    .prepare<[string, string], number>(`SELECT touch.seq FROM touch JOIN journal ON journal.seq = touch.seq WHERE family = ? AND role = 'puts' AND kind = ? ORDER BY touch.seq`)
    .pluck()
    .all(sessions.name, sessionSet.kind);
  const said = seqs.map((seq) => sessionSchema.parse(must(readEntry(store, seq), 'entry of a session').values)).filter(isPinned);
  return [...new Map(said.map((one) => [one.id, one])).values()];
}
