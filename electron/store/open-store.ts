import { createRequire } from 'node:module';
import type DatabaseClass from 'better-sqlite3';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { migrate } from './migrate.ts';

/** An open household database: one writer, WAL, every commit on disk before it is confirmed. */
export type Store = DatabaseClass.Database;

/** Marks the file as a household of ours (ASCII "TRUN"). */
export const APPLICATION_ID = 0x5452554e;
const LEAST_NODE = 22;
const BUSY_MILLISECONDS = 5000;

/**
 * Opens (or starts) the database file of a household: brought up to date, checked, never overwritten where it is damaged.
 *
 * @example openStore('/home/me/cars/household.sqlite', { backUp: () => {} })
 */
export function openStore(file: string, hooks: { readonly backUp: (store: Store, from: number) => void }): Result<Store> {
  const running = Number(process.versions.node.split('.')[0]);
  if (running < LEAST_NODE) return refuse('node-too-old', { found: process.versions.node, needed: LEAST_NODE });
  const opened = connect(file);
  if (!opened.ok) return opened;
  const sound = prepare(opened.value, hooks);
  if (!sound.ok) opened.value.close();
  return sound;
}

/** The database binding is loaded only here and only on a Node that can carry it: on an older one it would crash, not throw. */
function connect(file: string): Result<Store> {
  const Database = createRequire(import.meta.url)('better-sqlite3') as typeof DatabaseClass;
  try {
    return ok(new Database(file, { timeout: BUSY_MILLISECONDS }));
  } catch (error) {
    return storeRefusal(error);
  }
}

function prepare(store: Store, hooks: { readonly backUp: (store: Store, from: number) => void }): Result<Store> {
  try {
    const identity = store.pragma('application_id', { simple: true }) as number;
    const tables = store.prepare<[], { n: number }>('SELECT count(*) AS n FROM sqlite_schema').get()?.n ?? 0;
    if (tables > 0 && identity !== APPLICATION_ID) return refuse('not-a-household');
    const health = store.pragma('quick_check', { simple: true }) as string;
    if (health !== 'ok') return refuse('store-damaged', { why: health.slice(0, 200) });
    store.pragma('journal_mode = WAL');
    store.pragma('synchronous = FULL');
    store.pragma('foreign_keys = ON');
    if (tables === 0) store.pragma(`application_id = ${APPLICATION_ID}`);
    return migrate(store, hooks);
  } catch (error) {
    return storeRefusal(error);
  }
}

const REFUSED_BY_CODE: Readonly<Record<string, string>> = {
  SQLITE_NOTADB: 'not-a-household',
  SQLITE_CORRUPT: 'store-damaged',
  SQLITE_BUSY: 'store-locked',
  SQLITE_LOCKED: 'store-locked',
  SQLITE_FULL: 'disk-full',
  SQLITE_READONLY: 'folder-read-only',
  SQLITE_CANTOPEN: 'folder-unreachable',
  SQLITE_IOERR: 'disk-fails',
};

/** What an error of the database means to a person; an error of another sort is our bug and goes on. */
export function storeRefusal(error: unknown): { readonly ok: false; readonly refusal: { readonly code: string; readonly values: Readonly<Record<string, string>> } } {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const known = Object.keys(REFUSED_BY_CODE).find((prefix) => code === prefix || code.startsWith(`${prefix}_`));
  if (known === undefined) throw error;
  return { ok: false, refusal: { code: REFUSED_BY_CODE[known] ?? 'disk-fails', values: { why: error instanceof Error ? error.message : code } } };
}
