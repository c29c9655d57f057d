import { createRequire } from 'node:module';
import type DatabaseClass from 'better-sqlite3';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { judgeDatabaseFile } from './judge-database-file.ts';
import { migrate, newestVersion, readMigrations, type Migration } from './migrate.ts';
import { codeOf, storeRefusal } from './store-refusal.ts';
import { APPLICATION_ID, type Store } from './store.ts';
import { unknownEntries } from './unknown-entries.ts';

const LEAST_NODE = 22;
const BUSY_MILLISECONDS = 5000;

/** What opening a store takes from outside. */
export interface StoreHooks {
  /** Makes a copy before the schema is changed. */
  readonly backUp: (store: Store, from: number) => void;
  /** The steps of the schema; those that came with the program unless given. */
  readonly migrations?: readonly Migration[];
}

/**
 * Opens (or starts) the database file of a household: judged before it is touched, checked, brought up to date. A file that is
 * damaged, a stranger's or of a later program is refused and stays as it is, byte for byte.
 *
 * @example openStore('/home/me/cars/household.sqlite', { backUp: () => {} })
 */
export function openStore(file: string, hooks: StoreHooks): Result<Store> {
  const node = checkNode();
  if (!node.ok) return node;
  const migrations = hooks.migrations ?? readMigrations();
  const judged = judgeDatabaseFile(file, newestVersion(migrations));
  if (!judged.ok) return judged;
  const sound = judged.value === 'new' ? ok(null) : withStore(file, true, true, checkSound);
  if (!sound.ok) return sound;
  return withStore(file, false, false, (store) => prepare(store, { ...hooks, migrations }));
}

/** Refuses a Node that the database's library would end without a word. */
export function checkNode(): Result<null> {
  const running = Number(process.versions.node.split('.')[0]);
  return running < LEAST_NODE ? refuse('node-too-old', { found: process.versions.node, needed: LEAST_NODE }) : ok(null);
}

/** Opens a household's database for reading only: for a look at one that nobody has open. */
export function openStoreToRead(file: string): Result<Store> {
  return withStore(file, true, false, (store) => ok(store));
}

/** Connects and runs; the connection stays open only where that went well and `close` is false. */
function withStore<Value>(file: string, readonly: boolean, close: boolean, run: (store: Store) => Result<Value>): Result<Value> {
  let store: Store | null = null;
  let kept = false;
  try {
    store = connect(file, readonly);
    const done = run(store);
    kept = done.ok && !close;
    return done;
  } catch (error) {
    return storeRefusal(error, file);
  } finally {
    if (!kept) store?.close();
  }
}

/** The database binding is loaded only here and only on a Node that can carry it: on an older one it would crash, not throw. */
function connect(file: string, readonly: boolean): Store {
  const Database = createRequire(import.meta.url)('better-sqlite3') as typeof DatabaseClass;
  return new Database(file, { timeout: BUSY_MILLISECONDS, readonly });
}

/** Read-only, for a connection that may write would move the log into a damaged file when it closes. */
function checkSound(store: Store): Result<null> {
  try {
    const health = store.pragma('quick_check', { simple: true }) as string;
    return health === 'ok' ? ok(null) : refuse('store-damaged', { why: health.slice(0, 200) });
  } catch (error) {
    // A transaction that was broken off is waiting to be rolled back, and only a connection that may write can do that.
    if (codeOf(error).startsWith('SQLITE_READONLY_')) return ok(null);
    throw error;
  }
}

/** The mark comes first, in the plain journal: whatever stands in the file afterwards, its header says whose it is. */
function prepare(store: Store, hooks: StoreHooks & { readonly migrations: readonly Migration[] }): Result<Store> {
  if ((store.pragma('application_id', { simple: true }) as number) !== APPLICATION_ID) store.pragma(`application_id = ${APPLICATION_ID}`);
  store.pragma('journal_mode = WAL');
  store.pragma('synchronous = FULL');
  store.pragma('foreign_keys = ON');
  const migrated = migrate(store, hooks, hooks.migrations);
  return migrated.ok ? (unknownEntries(store) ?? migrated) : migrated;
}
