import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Store } from '../../electron/store/store.ts';

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));

export const SHIPPED_FILE = here('./shipped-migrations.json');
export const SCHEMA_FILE = here('./schema.sql');

/** What to run when a migration is new; it never changes what is frozen. */
export const FREEZE = 'node_modules/.bin/node tests/migrations/freeze.ts';

/** Name of a migration -> SHA-256 of its bytes, as it was shipped. */
export function shippedMigrations(): Readonly<Record<string, string>> {
  return existsSync(SHIPPED_FILE) ? (JSON.parse(readFileSync(SHIPPED_FILE, 'utf8')) as Record<string, string>) : {};
}

/** The digest that a migration is frozen by. */
export function migrationDigest(sql: string): string {
  return createHash('sha256').update(sql).digest('hex');
}

/** The frozen rows of a version, as SQL; null where none were frozen. */
export function seedOf(version: number): string | null {
  const file = here(`./seed-${String(version).padStart(4, '0')}.sql`);
  return existsSync(file) ? readFileSync(file, 'utf8') : null;
}

/** The schema of a database as text, in a fixed order. */
export function schemaOf(store: Store): string {
  const objects = store.prepare<[], string>('SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type DESC, name').pluck().all();
  return `${objects.join(';\n\n')};\n`;
}

/** Every row of every table, as text, in order of the row. */
export function rowsOf(store: Store): Readonly<Record<string, readonly string[]>> {
  const tables = store.prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name").pluck().all();
  const columnsOf = (table: string) => (store.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => `quote(${name})`);
  return Object.fromEntries(tables.map((table) => [table, store.prepare<[], string>(`SELECT ${columnsOf(table).join(" || ', ' || ")} AS row FROM ${table} ORDER BY row`).pluck().all()]));
}
