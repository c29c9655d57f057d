import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { openHouseholdKey } from '../../electron/host/household-key.ts';
import { writePaper } from '../../electron/papers/write-paper.ts';
import { migrate, readMigrations, type Migration } from '../../electron/store/migrate.ts';
import { openStore } from '../../electron/store/open-store.ts';
import { APPLICATION_ID, type Store } from '../../electron/store/store.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { seedOf } from './frozen.ts';

/** The bytes of the one paper in the seeds. */
export const SEED_PAPER = Buffer.from('a frozen receipt');

/** A household's folder whose database stands at a version, made by the production runner and filled with that version's seed. */
export function oldHousehold(version: number): string {
  const folder = join(temporaryFolder(), 'household');
  mkdirSync(join(folder, 'backups'), { recursive: true });
  writePaper(folder, SEED_PAPER);
  openHouseholdKey(folder);
  const store = new Database(databaseFile(folder));
  store.pragma(`application_id = ${APPLICATION_ID}`);
  store.pragma('journal_mode = WAL');
  const migrated = migrate(store, { backUp: () => {} }, readMigrations().filter((one) => one.version <= version));
  if (!migrated.ok) throw new Error(migrated.refusal.code);
  insertSeed(store, version);
  store.close();
  return folder;
}

function insertSeed(store: Store, version: number): void {
  const seed = seedOf(version);
  if (seed === null) throw new Error(`no seed for version ${version}`);
  store.pragma('foreign_keys = OFF');
  store.transaction(() => store.exec(seed))();
}

/** What the head of the schema is, and after it these steps, which no one has shipped. */
export function withSteps(...steps: readonly { readonly version: number; readonly sql: string }[]): readonly Migration[] {
  return [...readMigrations(), ...steps.map((step) => ({ ...step, name: `${String(step.version).padStart(4, '0')}_test_step.sql` }))];
}

/** Opens the database of a folder with these migrations and closes it again; backups are noted by `backUp`. */
export function openWith(folder: string, migrations: readonly Migration[], backUp: (store: Store, from: number) => void = () => {}): Result<null> {
  const opened = openStore(databaseFile(folder), { backUp, migrations });
  if (!opened.ok) return opened;
  opened.value.close();
  return { ok: true, value: null };
}

/** Looks into a database without changing it. */
export function lookInto<Value>(file: string, look: (store: Store) => Value): Value {
  const store = new Database(file, { readonly: true });
  try {
    return look(store);
  } finally {
    store.close();
  }
}

/** A folder of migration files. */
export function migrationFolder(files: Readonly<Record<string, string>>): string {
  const folder = join(temporaryFolder(), 'migrations');
  for (const [name, text] of Object.entries(files)) {
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return folder;
}
