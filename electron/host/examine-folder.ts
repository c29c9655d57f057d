import type { z } from 'zod';
import type { hostOperations } from '../../shared-core/contract/host-operations.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { NO_ROW_BEFORE } from '../../shared-core/journal/row.ts';
import { paperSchema } from '../../shared-core/records/paper.ts';
import { previousPackSchema } from '../../shared-core/records/previous-pack.ts';
import { ok, type Result } from '../../shared-core/result/result.ts';
import { readPaper } from '../papers/read-paper.ts';
import { examineJournal } from '../store/examine-journal.ts';
import { examineSeals } from '../store/examine-seals.ts';
import { examineState } from '../store/examine-state.ts';
import { readAllFacts } from '../store/fact-table.ts';
import type { Fault } from '../store/fault.ts';
import { countEntries, lastHash } from '../store/journal-table.ts';
import { openStoreToRead } from '../store/open-store.ts';
import type { Store } from '../store/store.ts';
import { databaseFile } from './household-folder.ts';

/** What an examination comes to: how much was looked at, and every fault by place. */
export type Examination = z.output<(typeof hostOperations)['household.examine']['reply']>;

/** Examines a household in a folder that is not open, without writing to it. */
export function examineFolder(folder: string): Result<Examination> {
  const store = openStoreToRead(databaseFile(folder));
  if (!store.ok) return store;
  try {
    return ok(examineStore(store.value, folder));
  } finally {
    store.value.close();
  }
}

/**
 * Checks a household: the database's own structure, every row of the journal by its hash and place, every value by its
 * digest, what stands and what is touched by a replay of the journal, every seal given by its root, and every paper by its
 * digest. All of it at one moment, whatever another process writes meanwhile.
 */
export function examineStore(store: Store, folder: string): Examination {
  return store.transaction(() => examineNow(store, folder)).deferred();
}

function examineNow(store: Store, folder: string): Examination {
  const structure = examineStructure(store);
  const journal = structure.length > 0 ? [] : examineJournal(store);
  const state = structure.length + journal.length > 0 ? [] : [...examineState(store), ...examineSeals(store)];
  const papers = examinePapers(store, folder);
  const head = lastHash(store);
  return { entries: countEntries(store), papers: papers.count, head: head === null ? NO_ROW_BEFORE : hexText(head), faults: [...structure, ...journal, ...state, ...papers.faults] };
}

function examineStructure(store: Store): Fault[] {
  const integrity = (store.pragma('integrity_check') as { integrity_check: string }[]).map((row) => row.integrity_check);
  const references = store.pragma('foreign_key_check') as { table: string; rowid: number | null }[];
  return [
    ...integrity.filter((line) => line !== 'ok').map((what) => ({ where: 'database', what })),
    ...references.map((row) => ({ where: row.rowid === null ? `table ${row.table}` : `table ${row.table}, row ${row.rowid}`, what: 'refers to a row that is not there' })),
  ];
}

/** A paper whose own fact cannot be read is named as a fact, not here. */
function examinePapers(store: Store, folder: string): { count: number; faults: Fault[] } {
  const kept = readAllFacts(store).filter((fact) => fact.family === 'paper').flatMap((fact) => readablePaper(fact.value));
  const packs = readAllFacts(store).filter((fact) => fact.family === 'previous-pack').flatMap((fact) => readablePack(fact.value));
  const all = [...kept.map((one) => ({ ...one, what: 'paper' })), ...packs.map((one) => ({ id: one.pack, name: one.name, what: 'pack of an earlier keeper' }))];
  const faults = all.flatMap((paper) => {
    const read = readPaper(folder, paper.id);
    return read.state === 'whole' ? [] : [{ where: `${paper.what} ${paper.name} (${paper.id.slice(0, 12)})`, what: read.state === 'missing' ? 'is missing' : 'has been altered' }];
  });
  return { count: all.length, faults };
}

function readablePaper(text: string) {
  try {
    return [paperSchema.parse(JSON.parse(text))];
  } catch {
    return [];
  }
}

function readablePack(text: string) {
  const read = previousPackSchema.safeParse(JSON.parse(text));
  return read.success ? [read.data] : [];
}
