import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { canonicalJson } from '../../shared-core/journal/canonical-json.ts';
import type { Entry, Put } from '../../shared-core/journal/entry-kind.ts';
import type { Facts, Stamp } from '../../shared-core/journal/facts.ts';
import type { Family } from '../../shared-core/journal/family.ts';
import { putsOf, referencesOf } from '../../shared-core/journal/replay.ts';
import { keptStatement } from './kept-statement.ts';
import { DamagedValueError } from './store-refusal.ts';
import type { Store } from './store.ts';

interface FactRow {
  readonly id: string;
  readonly value: string;
}

/** What stands, read from the database; every list is one query. */
export function storeFacts(store: Store): Facts {
  const one = store.prepare<[string, string], FactRow>('SELECT id, value FROM fact WHERE family = ? AND id = ?');
  const ofCar = store.prepare<[string, string], FactRow>('SELECT id, value FROM fact WHERE family = ? AND car = ? ORDER BY id');
  const all = store.prepare<[string], FactRow>('SELECT id, value FROM fact WHERE family = ? ORDER BY id');
  const stamps = store.prepare<{ family: string; car: string | null }, Stamp & { readonly id: string }>(
    `SELECT fact.id, fact.seq, now.at, fact.first_seq AS firstSeq, first.at AS firstAt FROM fact
     JOIN journal AS now ON now.seq = fact.seq JOIN journal AS first ON first.seq = fact.first_seq
     WHERE family = :family AND (:car IS NULL OR car = :car)`,
  );
  return {
    get: <Value>(family: Family<Value>, id: string) => {
      const row = one.get(family.name, id);
      return row === undefined ? null : valueOf<Value>(row);
    },
    ofCar: <Value>(family: Family<Value>, car: string) => ofCar.all(family.name, car).map((row) => valueOf<Value>(row)),
    all: <Value>(family: Family<Value>) => all.all(family.name).map((row) => valueOf<Value>(row)),
    stamps: (family, car) => new Map(stamps.all({ family: family.name, car }).map(({ id, ...stamp }) => [id, stamp])),
  };
}

/** The value of a row; one that is no JSON has been altered from outside, and no screen can be trusted to it. */
function valueOf<Value>(row: FactRow): Value {
  try {
    return JSON.parse(row.value) as Value;
  } catch (error) {
    throw new DamagedValueError(row.id, error);
  }
}

/** Puts one fact, or takes it away, as entry `seq` says; `firstSeq` is the entry that first put what stands now. */
export function writeFact(store: Store, change: Put, seq: number, firstSeq: number): void {
  if (change.value === null) {
    keptStatement<unknown[]>(store, 'DELETE FROM fact WHERE family = ? AND id = ?').run(change.family, change.id);
    return;
  }
  keptStatement<unknown[]>(
    store,
    `INSERT INTO fact (family, id, car, seq, first_seq, value) VALUES (:family, :id, :car, :seq, :firstSeq, :value)
     ON CONFLICT (family, id) DO UPDATE SET car = :car, seq = :seq, first_seq = :firstSeq, value = :value`,
  ).run({ family: change.family, id: change.id, car: change.car, seq, firstSeq, value: canonicalJson(change.value) });
}

/** The entry that first put what stands under a key, or null where nothing stands. */
export function firstSeqOf(store: Store, family: string, id: string): number | null {
  return keptStatement<[string, string], { firstSeq: number }>(store, 'SELECT first_seq AS firstSeq FROM fact WHERE family = ? AND id = ?').get(family, id)?.firstSeq ?? null;
}

/** A fact that an entry puts, or stands upon. */
export interface Touch {
  readonly family: string;
  readonly id: string;
  readonly seq: number;
  readonly role: 'puts' | 'refers';
}

/** What an entry touches, each once; a withdrawal touches nothing. */
export function touchesOf(entry: Entry): readonly Touch[] {
  const put = putsOf(entryKinds, entry).map(({ family, id }): Touch => ({ family, id, seq: entry.seq, role: 'puts' }));
  const referred = referencesOf(entryKinds, entry).map(({ family, id }): Touch => ({ family, id, seq: entry.seq, role: 'refers' }));
  return [...new Map([...put, ...referred].map((touch) => [`${touch.family}/${touch.id}/${touch.role}`, touch])).values()];
}

/** Notes what an entry touches. */
export function writeTouches(store: Store, entry: Entry): void {
  const insert = keptStatement<unknown[]>(store, 'INSERT INTO touch (family, id, seq, role) VALUES (:family, :id, :seq, :role)');
  for (const touch of touchesOf(entry)) insert.run(touch);
}

/** All notes of what entries touch. */
export function readAllTouches(store: Store): readonly Touch[] {
  return store.prepare<[], Touch>('SELECT family, id, seq, role FROM touch').all();
}

/** A fact as it stands in the table, its value as text. */
export interface StoredFact {
  readonly family: string;
  readonly id: string;
  readonly car: string | null;
  readonly seq: number;
  readonly firstSeq: number;
  readonly value: string;
}

/** All facts, in order of family and id: for the comparison with a replay. */
export function readAllFacts(store: Store): readonly StoredFact[] {
  return store.prepare<[], StoredFact>('SELECT family, id, car, seq, first_seq AS firstSeq, value FROM fact ORDER BY family, id').all();
}
