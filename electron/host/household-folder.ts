import { chmodSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Facts } from '../../shared-core/journal/facts.ts';
import { ok, type Result } from '../../shared-core/result/result.ts';
import { storeFacts } from '../store/fact-table.ts';
import { openStore, type Store } from '../store/open-store.ts';
import { backUpBeforeMigration } from '../store/back-up.ts';
import { fileRefusal } from './file-refusal.ts';
import { openHouseholdKey, type HouseholdKey } from './household-key.ts';

/** A household's folder, open: its database, what stands in it, and its key. */
export interface HouseholdFolder {
  readonly folder: string;
  readonly store: Store;
  readonly facts: Facts;
  readonly key: HouseholdKey;
}

/** The database file in a household's folder. */
export function databaseFile(folder: string): string {
  return join(folder, 'household.sqlite');
}

/** Opens a household's folder, making what is not there yet; only its owner may read it. */
export function openHouseholdFolder(folder: string): Result<HouseholdFolder> {
  try {
    mkdirSync(join(folder, 'papers'), { recursive: true, mode: 0o700 });
    mkdirSync(join(folder, 'backups'), { recursive: true, mode: 0o700 });
    chmodSync(folder, 0o700);
  } catch (error) {
    return fileRefusal(error);
  }
  const store = openStore(databaseFile(folder), { backUp: (open, from) => backUpBeforeMigration(open, folder, from) });
  if (!store.ok) return store;
  const key = openHouseholdKey(folder);
  if (!key.ok) {
    store.value.close();
    return key;
  }
  return ok({ folder, store: store.value, facts: storeFacts(store.value), key: key.value });
}
