import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import type { Store } from './store.ts';

/** Refuses a journal that holds entries of a kind, or of a version of one, that only a later program knows; else null. */
export function unknownEntries(store: Store): Result<never> | null {
  const held = store.prepare<[], { kind: string; version: number }>('SELECT kind, max(version) AS version FROM journal GROUP BY kind ORDER BY kind').all();
  const strange = held.find((one) => one.version > (entryKinds.get(one.kind)?.version ?? 0));
  if (strange === undefined) return null;
  return refuse('store-from-the-future', { found: `${strange.kind} ${strange.version}`, known: entryKinds.get(strange.kind)?.version ?? 0 });
}
