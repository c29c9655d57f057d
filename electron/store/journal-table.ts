import type { Entry, NewEntry } from '../../shared-core/journal/entry-kind.ts';
import { canonicalJson, type Json } from '../../shared-core/journal/canonical-json.ts';
import { composeRow } from '../../shared-core/journal/compose-row.ts';
import type { Sha256 } from '../../shared-core/journal/digest.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { rowText, rowTextHash } from '../../shared-core/journal/row.ts';
import { assert } from '../../shared-core/result/assert.ts';
import { keptStatement } from './kept-statement.ts';
import type { Store } from './store.ts';

/** What writing a row takes from outside. */
export interface RowMaking {
  readonly sha256: Sha256;
  /** 32 hexadecimal digits of chance. */
  readonly newSalt: () => string;
}

/** A row as it stands in the journal, with its hash (32 bytes). */
export interface JournalRow {
  readonly seq: number;
  readonly row: string;
  readonly hash: Uint8Array;
  readonly at: string;
  readonly kind: string;
  readonly version: number;
  readonly subject: string;
  readonly withdrawnBy: number | null;
}

/** A value with its salt, as it stands beside its row. */
export interface JournalValue {
  readonly seq: number;
  readonly name: string;
  readonly salt: string;
  readonly value: string;
}

const ROW_COLUMNS = 'seq, row, hash, at, kind, version, subject, withdrawn_by AS withdrawnBy';

/** Writes one entry at the end of the chain and answers it with its number. Runs inside the caller's transaction. */
export function appendEntry(store: Store, entry: NewEntry, at: string, making: RowMaking): Entry {
  assert(store.inTransaction, 'an entry is written in a transaction');
  const last = keptStatement<[], { seq: number; hash: Buffer }>(store, 'SELECT seq, hash FROM journal ORDER BY seq DESC LIMIT 1').get();
  const seq = last === undefined ? 0 : last.seq + 1;
  const salts = Object.fromEntries(Object.keys(entry.values).map((name) => [name, making.newSalt()]));
  const row = composeRow({ ...entry, seq, at, salts, prev: last === undefined ? null : hexText(last.hash) }, making.sha256);
  const text = rowText(row);
  const hash = Buffer.from(rowTextHash(text, making.sha256), 'hex');
  const written = keptStatement<unknown[]>(store, 'INSERT INTO journal (seq, row, hash, at, kind, version, subject) VALUES (?, ?, ?, ?, ?, ?, ?)').run(seq, text, hash, at, entry.kind, entry.version, entry.subject);
  assert(written.changes === 1, 'one row written');
  const insert = keptStatement<unknown[]>(store, 'INSERT INTO journal_value (seq, name, salt, value) VALUES (?, ?, ?, ?)');
  for (const [name, value] of Object.entries(entry.values)) insert.run(seq, name, salts[name], canonicalJson(value));
  return { ...entry, seq, at };
}

/** The number of entries. */
export function countEntries(store: Store): number {
  return store.prepare<[], { n: number }>('SELECT count(*) AS n FROM journal').get()?.n ?? 0;
}

/** All rows in order. */
export function readRows(store: Store): IterableIterator<JournalRow> {
  return store.prepare<[], JournalRow>(`SELECT ${ROW_COLUMNS} FROM journal ORDER BY seq`).iterate();
}

/** The rows of one subject in order, each with its values, in two queries. */
export function readRowsOf(store: Store, subject: string): readonly { readonly row: JournalRow; readonly values: readonly JournalValue[] }[] {
  const rows = store.prepare<[string], JournalRow>(`SELECT ${ROW_COLUMNS} FROM journal WHERE subject = ? ORDER BY seq`).all(subject);
  const all = store.prepare<[string], JournalValue>('SELECT seq, name, salt, value FROM journal_value WHERE seq IN (SELECT seq FROM journal WHERE subject = ?) ORDER BY seq, name').all(subject);
  const byRow = Map.groupBy(all, (value) => value.seq);
  return rows.map((row) => ({ row, values: byRow.get(row.seq) ?? [] }));
}

/** The hashes of all rows in order: the leaves of the tree. */
export function readHashes(store: Store): readonly Uint8Array[] {
  return store.prepare<[], Buffer>('SELECT hash FROM journal ORDER BY seq').pluck().all();
}

/** One row, or null. */
export function readRow(store: Store, seq: number): JournalRow | null {
  return keptStatement<[number], JournalRow>(store, `SELECT ${ROW_COLUMNS} FROM journal WHERE seq = ?`).get(seq) ?? null;
}

/** Values with salts: of one entry, or of all, in order of entry and name. */
export function readValues(store: Store, seq: number): readonly JournalValue[] {
  return keptStatement<[number], JournalValue>(store, 'SELECT seq, name, salt, value FROM journal_value WHERE seq = ? ORDER BY name').all(seq);
}

/** One entry, or null. */
export function readEntry(store: Store, seq: number): Entry | null {
  const row = readRow(store, seq);
  return row === null ? null : entryOf(row, readValues(store, seq));
}

/** All entries in order, in two passes over the tables and none a row. */
export function* readEntries(store: Store): Generator<Entry> {
  const values = store.prepare<[], JournalValue>('SELECT seq, name, salt, value FROM journal_value ORDER BY seq, name').all();
  let next = 0;
  for (const row of store.prepare<[], JournalRow>(`SELECT ${ROW_COLUMNS} FROM journal ORDER BY seq`).all()) {
    const from = next;
    while (values[next]?.seq === row.seq) next += 1;
    yield entryOf(row, values.slice(from, next));
  }
}

function entryOf(row: JournalRow, values: readonly JournalValue[]): Entry {
  const { seq, at, kind, version, subject } = row;
  return { seq, at, kind, version, subject, values: Object.fromEntries(values.map((one) => [one.name, JSON.parse(one.value) as Json])) };
}

/** The hash of the last row, or null where the journal is empty. */
export function lastHash(store: Store): Uint8Array | null {
  return store.prepare<[], { hash: Buffer }>('SELECT hash FROM journal ORDER BY seq DESC LIMIT 1').get()?.hash ?? null;
}
