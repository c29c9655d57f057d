import { assert } from '../result/assert.ts';
import { must } from '../result/assert.ts';
import type { AnyEntryKind, Entry, Put, Reference } from './entry-kind.ts';
import type { EntryValues } from './entry-values.ts';
import type { Json } from './canonical-json.ts';
import { withdrawnKind, withdrawnSeqs } from './withdrawal.ts';

/** Every kind of entry by its name. */
export type EntryKinds = ReadonlyMap<string, AnyEntryKind>;

/** A fact as it stands after a replay. */
export interface StandingFact {
  readonly car: string | null;
  readonly seq: number;
  readonly firstSeq: number;
  readonly value: Json;
}

/** family name -> id -> fact. */
export type StandingFacts = ReadonlyMap<string, ReadonlyMap<string, StandingFact>>;

/** What one entry puts, its values read through the kind's upgrade where they are of an older version. */
export function putsOf(kinds: EntryKinds, entry: Entry): readonly Put[] {
  if (entry.kind === withdrawnKind.kind) return [];
  const kind = kindOf(kinds, entry);
  return kind.apply(presentValues(kind, entry));
}

/** What one entry stands upon, its values read in the same way. */
export function referencesOf(kinds: EntryKinds, entry: Entry): readonly Reference[] {
  if (entry.kind === withdrawnKind.kind) return [];
  const kind = kindOf(kinds, entry);
  return kind.refersTo(presentValues(kind, entry));
}

function kindOf(kinds: EntryKinds, entry: Entry): AnyEntryKind {
  return must(kinds.get(entry.kind), `kind of entry '${entry.kind}'`);
}

function presentValues(kind: AnyEntryKind, entry: Entry): EntryValues {
  assert(entry.version <= kind.version, `entry ${entry.seq} is of a later version than this program knows`);
  return entry.version === kind.version ? entry.values : must(kind.upgrade, `upgrade of '${entry.kind}'`)(entry.values, entry.version);
}

/**
 * What stands after all entries: under every key, what the last standing entry that touched it says.
 *
 * @example replay(kinds, entries).get('car')?.get('pip')?.value
 */
export function replay(kinds: EntryKinds, entries: Iterable<Entry>): StandingFacts {
  const list = [...entries];
  const withdrawn = new Set(list.flatMap((entry) => withdrawnSeqs(entry)));
  const families = new Map<string, Map<string, StandingFact>>();
  for (const entry of list) {
    if (withdrawn.has(entry.seq)) continue;
    for (const change of putsOf(kinds, entry)) settle(families, entry.seq, change);
  }
  return families;
}

function settle(families: Map<string, Map<string, StandingFact>>, seq: number, change: Put): void {
  const facts = families.get(change.family) ?? new Map<string, StandingFact>();
  families.set(change.family, facts);
  if (change.value === null) facts.delete(change.id);
  else facts.set(change.id, { car: change.car, seq, firstSeq: facts.get(change.id)?.firstSeq ?? seq, value: change.value });
}
