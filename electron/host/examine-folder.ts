import Database from 'better-sqlite3';
import type { z } from 'zod';
import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import type { hostOperations } from '../../shared-core/contract/host-operations.ts';
import { canonicalJson } from '../../shared-core/journal/canonical-json.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { NO_ROW_BEFORE } from '../../shared-core/journal/row.ts';
import { replay } from '../../shared-core/journal/replay.ts';
import { paperSchema } from '../../shared-core/records/paper.ts';
import { readPaper } from '../papers/read-paper.ts';
import { examineJournal, type Fault } from '../store/examine-journal.ts';
import { readAllFacts, type StoredFact } from '../store/fact-table.ts';
import { countEntries, lastHash, readEntries } from '../store/journal-table.ts';
import type { Store } from '../store/open-store.ts';
import { databaseFile } from './household-folder.ts';

/** What an examination comes to: how much was looked at, and every fault by place. */
export type Examination = z.output<(typeof hostOperations)['household.examine']['reply']>;

/** Examines a household in a folder that is not open, without writing to it. */
export function examineFolder(folder: string): Examination {
  const store = new Database(databaseFile(folder), { readonly: true });
  try {
    return examineStore(store, folder);
  } finally {
    store.close();
  }
}

/**
 * Checks a household: the database's own structure, every row of the journal by its hash and place, every value by its
 * digest, what stands by a replay of the journal, and every paper by its digest.
 */
export function examineStore(store: Store, folder: string): Examination {
  const structure = examineStructure(store);
  const journal = structure.length > 0 ? [] : examineJournal(store);
  const state = structure.length + journal.length > 0 ? [] : examineState(store);
  const papers = examinePapers(store, folder);
  return { entries: countEntries(store), papers: papers.count, head: lastHash(store) === null ? NO_ROW_BEFORE : hexText(lastHash(store) ?? new Uint8Array()), faults: [...structure, ...journal, ...state, ...papers.faults] };
}

function examineStructure(store: Store): Fault[] {
  const integrity = (store.pragma('integrity_check') as { integrity_check: string }[]).map((row) => row.integrity_check);
  const references = store.pragma('foreign_key_check') as { table: string; rowid: number }[];
  return [
    ...integrity.filter((line) => line !== 'ok').map((what) => ({ where: 'database', what })),
    ...references.map((row) => ({ where: `table ${row.table}, row ${row.rowid}`, what: 'refers to a row that is not there' })),
  ];
}

/** What stands must be what a replay of the journal gives; the first difference is named with its entry. */
function examineState(store: Store): Fault[] {
  const stored = readAllFacts(store);
  const replayed = [...replay(entryKinds, readEntries(store))]
    .flatMap(([family, facts]) => [...facts].map(([id, fact]): StoredFact => ({ family, id, car: fact.car, seq: fact.seq, firstSeq: fact.firstSeq, value: canonicalJson(fact.value) })))
    .sort((a, b) => compare(a.family, b.family) || compare(a.id, b.id));
  for (let at = 0; at < Math.max(stored.length, replayed.length); at += 1) {
    const [is, should] = [stored[at], replayed[at]];
    if (JSON.stringify(is) === JSON.stringify(should)) continue;
    const first = is === undefined || (should !== undefined && keyOf(should) < keyOf(is)) ? should : is;
    return [{ where: `${first?.family} ${first?.id}, entry ${should?.seq ?? is?.seq}`, what: 'what stands is not what the journal says' }];
  }
  return [];
}

function keyOf(fact: StoredFact): string {
  return `${fact.family} ${fact.id}`;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function examinePapers(store: Store, folder: string): { count: number; faults: Fault[] } {
  const kept = readAllFacts(store).filter((fact) => fact.family === 'paper').map((fact) => paperSchema.parse(JSON.parse(fact.value)));
  const faults = kept.flatMap((paper) => {
    const read = readPaper(folder, paper.id);
    return read.state === 'whole' ? [] : [{ where: `paper ${paper.name} (${paper.id.slice(0, 12)})`, what: read.state === 'missing' ? 'is missing' : 'has been altered' }];
  });
  return { count: kept.length, faults };
}
