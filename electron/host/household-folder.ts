import { accessSync, chmodSync, constants, existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Facts } from '../../shared-core/journal/facts.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { storeFacts } from '../store/fact-table.ts';
import { countEntries } from '../store/journal-table.ts';
import { backUpBeforeMigration } from '../store/back-up.ts';
import { placeOf, type FilePlace } from '../store/file-place.ts';
import { judgeDatabaseFile } from '../store/judge-database-file.ts';
import { newestVersion, readMigrations } from '../store/migrate.ts';
import { checkNode, openStore } from '../store/open-store.ts';
import type { Store } from '../store/store.ts';
import { fileRefusal } from './file-refusal.ts';
import { makeFolder } from './make-folder.ts';
import { householdKeyPath, openHouseholdKey, type HouseholdKey } from './household-key.ts';

/** A household's folder, open: its database, what stands in it, and its key. */
export interface HouseholdFolder {
  readonly folder: string;
  readonly store: Store;
  /** Which file its database is, as it was opened; null where it is to be opened anew. */
  readonly place: FilePlace | null;
  readonly facts: Facts;
  readonly key: HouseholdKey;
}

/** The database file in a household's folder. */
export function databaseFile(folder: string): string {
  return join(folder, 'household.sqlite');
}

/** What a household's folder holds beside its database; the key's name is also that of its draft. */
const OURS = /^(papers|thumbnails|backups|packs|key(\..+\.draft)?|household\.sqlite(-.+)?|look\.json(\.draft)?)$/;

/** Opens a household's folder, making what is not there yet; only its owner may read it. */
export function openHouseholdFolder(folder: string): Result<HouseholdFolder> {
  try {
    const fit = judgeFolder(folder);
    if (!fit.ok) return fit;
    makeFolder(join(folder, 'papers'), 0o700);
    makeFolder(join(folder, 'backups'), 0o700);
    closeToOthers(folder, 0o700);
  } catch (error) {
    return mayNotBeMade(folder) ? refuse('folder-read-only', { why: folder }) : fileRefusal(error);
  }
  const store = openStore(databaseFile(folder), { backUp: (open, from) => backUpBeforeMigration(open, folder, from) });
  if (!store.ok) return store;
  closeToOthers(databaseFile(folder), 0o600);
  const key = keyIsLost(store.value, folder) ? refuse('key-missing', { folder }) : openHouseholdKey(folder);
  if (!key.ok) {
    store.value.close();
    return key;
  }
  return ok({ folder, store: store.value, place: placeOf(databaseFile(folder)), facts: storeFacts(store.value), key: key.value });
}

/**
 * A household is started in a new or an empty folder and never among other things. Its key is made last, so a folder with a key
 * and no database has lost its database: starting an empty one there would hide that.
 */
function judgeFolder(folder: string): Result<null> {
  const node = checkNode();
  if (!node.ok || !existsSync(folder)) return node;
  const judged = judgeDatabaseFile(databaseFile(folder), newestVersion(readMigrations()));
  if (!judged.ok || judged.value === 'household') return judged.ok ? ok(null) : judged;
  const names = readdirSync(folder);
  if (names.includes('key')) return refuse('store-missing', { folder });
  const strange = names.find((name) => !OURS.test(name));
  return strange === undefined ? ok(null) : refuse('folder-not-empty', { folder, found: strange });
}

/** A household that holds entries has a key; a new one made in its place would belie every seal given before. */
function keyIsLost(store: Store, folder: string): boolean {
  return !existsSync(householdKeyPath(folder)) && countEntries(store) > 0;
}

/** A disk that knows no permissions (FAT) refuses this, and a household on it works all the same. */
function closeToOthers(path: string, mode: number): void {
  try {
    chmodSync(path, mode);
  } catch {
    // What keeps it from being written to is said by what comes next.
  }
}

/** Making a folder and those above it on a read-only disk fails as if there were no such disk. */
function mayNotBeMade(folder: string): boolean {
  if (!existsSync(folder)) return folder !== dirname(folder) && mayNotBeMade(dirname(folder));
  try {
    accessSync(folder, constants.W_OK);
    return false;
  } catch {
    return true;
  }
}
