import { writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { migrate, readMigrations } from '../../electron/store/migrate.ts';
import { migrationDigest, SCHEMA_FILE, schemaOf, shippedMigrations, SHIPPED_FILE } from './frozen.ts';

// Adds new migrations to the list of the frozen ones and writes the schema they lead to. What is frozen stays as it is.
const shipped = shippedMigrations();
const all = Object.fromEntries(readMigrations().map(({ name, sql }) => [name, shipped[name] ?? migrationDigest(sql)]));
writeFileSync(SHIPPED_FILE, `${JSON.stringify({ ...shipped, ...all }, null, 2)}\n`);
const store = new Database(':memory:');
migrate(store, { backUp: () => {} });
writeFileSync(SCHEMA_FILE, schemaOf(store));
