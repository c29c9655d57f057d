import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { assert } from '../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { isOfTheDisk } from './store-refusal.ts';
import type { Store } from './store.ts';

/** One step of the schema: its number and its SQL. */
export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

const FOLDER = process.env['TRUNNION_MIGRATIONS'] ?? fileURLToPath(new URL('../../migrations/', import.meta.url));
const NAME = /^(\d{4})_[a-z0-9_]+\.sql$/;

/** All migrations in order. Numbers go up; a file that does not fit the naming is our bug. */
export function readMigrations(folder: string = FOLDER): readonly Migration[] {
  const list = readdirSync(folder).filter((name) => name.endsWith('.sql')).sort().map((name) => {
    const version = Number(NAME.exec(name)?.[1]);
    assert(Number.isInteger(version), `a migration named ${name}`);
    return { version, name, sql: readFileSync(join(folder, name), 'utf8') };
  });
  assert(new Set(list.map((one) => one.version)).size === list.length, 'two migrations of one number');
  return list;
}

/** The version that the last of some migrations leads to; 0 for none. */
export function newestVersion(migrations: readonly Migration[]): number {
  return migrations.at(-1)?.version ?? 0;
}

/**
 * Brings a database up to the newest version, each step in one transaction with its version number, after a backup.
 * A database of a later version than this program knows is refused and not touched. A step that fails is refused with
 * 'migration-failed' and leaves the version and the rows it found; a fault of the disk is thrown.
 */
export function migrate(
  store: Store,
  hooks: { readonly backUp: (store: Store, from: number) => void },
  migrations: readonly Migration[] = readMigrations(),
): Result<Store> {
  assert(migrations.every((one, at) => one.version > (migrations[at - 1]?.version ?? 0)), 'the numbers of the migrations go up');
  const at = versionOf(store);
  const newest = newestVersion(migrations);
  if (at > newest) return refuse('store-from-the-future', { found: at, known: newest });
  const open = migrations.filter((one) => one.version > at);
  if (open.length > 0 && at > 0) hooks.backUp(store, at);
  for (const step of open) {
    const done = tryStep(store, step);
    if (!done.ok) return done;
  }
  return ok(store);
}

function versionOf(store: Store): number {
  return store.pragma('user_version', { simple: true }) as number;
}

/** Our own mistake, met by somebody's data: they are told that nothing is lost, and not shown a program that breaks off. */
function tryStep(store: Store, step: Migration): Result<null> {
  try {
    runStep(store, step);
    return ok(null);
  } catch (error) {
    if (isOfTheDisk(error)) throw error;
    return refuse('migration-failed', { step: step.name, why: error instanceof Error ? error.message : String(error) });
  }
}

/** Foreign keys are off while a table may be rebuilt, and checked before the commit. */
function runStep(store: Store, step: Migration): void {
  store.pragma('foreign_keys = OFF');
  try {
    store.transaction(() => {
      // Another process may have come first while this one waited.
      if (versionOf(store) >= step.version) return;
      store.exec(step.sql);
      assert(store.inTransaction, `migration ${step.name} ends its own transaction`);
      const broken = store.pragma('foreign_key_check') as unknown[];
      assert(broken.length === 0, `migration ${step.name} leaves broken references`);
      store.pragma(`user_version = ${step.version}`);
    }).exclusive();
  } finally {
    store.pragma('foreign_keys = ON');
  }
}
