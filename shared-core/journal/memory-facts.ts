import { must } from '../result/assert.ts';
import type { Entry } from './entry-kind.ts';
import type { Facts, Stamp } from './facts.ts';
import type { Family } from './family.ts';
import { replay, type EntryKinds, type StandingFact } from './replay.ts';

/** Facts held in memory, from entries alone: for tests, for the sample and for a pack taken in. */
export function memoryFacts(kinds: EntryKinds, entries: readonly Entry[]): Facts {
  const standing = replay(kinds, entries);
  const at = new Map(entries.map((entry) => [entry.seq, entry.at]));
  const rows = (family: Family<unknown>) =>
    [...(standing.get(family.name) ?? new Map<string, StandingFact>())].sort(([a], [b]) => (a < b ? -1 : 1));
  const stampOf = (fact: StandingFact): Stamp => ({
    seq: fact.seq,
    at: must(at.get(fact.seq), 'time of an entry'),
    firstSeq: fact.firstSeq,
    firstAt: must(at.get(fact.firstSeq), 'time of an entry'),
  });
  return {
    get: <Value>(family: Family<Value>, id: string) => (standing.get(family.name)?.get(id)?.value ?? null) as Value | null,
    ofCar: <Value>(family: Family<Value>, car: string) =>
      rows(family).flatMap(([, fact]) => (fact.car === car ? [fact.value as Value] : [])),
    all: <Value>(family: Family<Value>) => rows(family).map(([, fact]) => fact.value as Value),
    stamps: (family, car) =>
      new Map(rows(family).flatMap(([id, fact]) => (car === null || fact.car === car ? [[id, stampOf(fact)] as const] : []))),
  };
}
