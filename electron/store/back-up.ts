import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Store } from './store.ts';

/**
 * A whole copy of the database in one file, made by the database itself, so that nothing of the log is missed.
 * VACUUM INTO refuses a file that exists: an earlier copy is never overwritten.
 */
export function copyDatabase(store: Store, file: string): void {
  const there = existsSync(file);
  try {
    store.prepare('VACUUM INTO ?').run(file);
  } catch (error) {
    if (!there) rmSync(file, { force: true });
    throw error;
  }
}

/** The copy made before the schema is changed, named after the version it holds. */
export function backUpBeforeMigration(store: Store, folder: string, from: number): void {
  copyDatabase(store, join(folder, 'backups', `before-migration-from-${from}-${process.hrtime.bigint()}.sqlite`));
}
