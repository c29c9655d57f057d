import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import type { Entry, NewEntry, Put } from '../../shared-core/journal/entry-kind.ts';
import { putsOf } from '../../shared-core/journal/replay.ts';
import { firstSeqOf, writeFact, writeTouches } from './fact-table.ts';
import { appendEntry, type RowMaking } from './journal-table.ts';
import type { Store } from './store.ts';

/** What was written: the entries with their numbers, and what of the state they changed. */
export interface Written {
  readonly entries: readonly Entry[];
  readonly puts: readonly Put[];
}

/** Writes entries and what they put, in the caller's transaction: all or none. */
export function writeEntries(store: Store, entries: readonly NewEntry[], at: string, making: RowMaking): Written {
  const written = entries.map((entry) => appendEntry(store, entry, at, making));
  return { entries: written, puts: written.flatMap((entry) => settleEntry(store, entry)) };
}

/** Applies one written entry to the state, and notes what it touches. */
function settleEntry(store: Store, entry: Entry): readonly Put[] {
  const puts = putsOf(entryKinds, entry);
  for (const change of puts) writeFact(store, change, entry.seq, firstSeqOf(store, change.family, change.id) ?? entry.seq);
  writeTouches(store, entry);
  return puts;
}
