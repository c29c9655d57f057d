import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { canonicalJson } from '../../shared-core/journal/canonical-json.ts';
import { replay } from '../../shared-core/journal/replay.ts';
import { readAllFacts, readAllTouches, touchesOf, type StoredFact, type Touch } from './fact-table.ts';
import type { Fault } from './fault.ts';
import { readEntries } from './journal-table.ts';
import type { Store } from './store.ts';

/** What stands must be what a replay of the journal gives, and so must the notes of what each entry touches. */
export function examineState(store: Store): Fault[] {
  return [...examineFacts(store), ...examineTouches(store)];
}

function examineFacts(store: Store): Fault[] {
  const replayed = [...replay(entryKinds, readEntries(store))]
    .flatMap(([family, facts]) => [...facts].map(([id, fact]): StoredFact => ({ family, id, car: fact.car, seq: fact.seq, firstSeq: fact.firstSeq, value: canonicalJson(fact.value) })))
    .sort((a, b) => compare(a.family, b.family) || compare(a.id, b.id));
  const first = firstDifference(readAllFacts(store), replayed, (fact) => `${fact.family} ${fact.id}`);
  return first === null ? [] : [{ where: `${first.family} ${first.id}, entry ${first.seq}`, what: 'what stands is not what the journal says' }];
}

function examineTouches(store: Store): Fault[] {
  const replayed = [...readEntries(store)].flatMap((entry) => touchesOf(entry).toSorted((a, b) => compare(keyOf(a), keyOf(b))));
  const first = firstDifference(readAllTouches(store).toSorted((a, b) => a.seq - b.seq || compare(keyOf(a), keyOf(b))), replayed, (touch) => String(touch.seq).padStart(12, '0') + keyOf(touch));
  return first === null ? [] : [{ where: `entry ${first.seq}`, what: `what it touches (${first.family} ${first.id}) is not what the journal says` }];
}

function keyOf(touch: Touch): string {
  return `${touch.family} ${touch.id} ${touch.role}`;
}

/** The first of two lists in one order where they differ: what is, or where something is lacking, what should be. */
function firstDifference<One>(is: readonly One[], should: readonly One[], key: (one: One) => string): One | null {
  const at = Array.from({ length: Math.max(is.length, should.length) }, (_, index) => index).find((index) => JSON.stringify(is[index]) !== JSON.stringify(should[index]));
  if (at === undefined) return null;
  const [found, wanted] = [is[at], should[at]];
  return found === undefined || (wanted !== undefined && key(wanted) <= key(found)) ? (wanted ?? null) : found;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
