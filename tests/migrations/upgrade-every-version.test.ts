import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { newestVersion, readMigrations } from '../../electron/store/migrate.ts';
import { readEntries } from '../../electron/store/journal-table.ts';
import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { must } from '../../shared-core/result/assert.ts';
import { openTestHost } from '../host/open-test-host.ts';
import { rowsOf, schemaOf } from './frozen.ts';
import { lookInto, oldHousehold, openWith, withSteps } from './old-household.ts';

const versions = readMigrations().map(({ version }) => ({ version }));

/** A step as a later program may have it: a table rebuilt with one column more, though others refer to it. */
const REBUILD = `
CREATE TABLE journal_new (seq INTEGER PRIMARY KEY, row TEXT NOT NULL, hash BLOB NOT NULL CHECK (length(hash) = 32), at TEXT NOT NULL, kind TEXT NOT NULL,
  version INTEGER NOT NULL, subject TEXT NOT NULL, withdrawn_by INTEGER REFERENCES journal (seq), remark TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO journal_new SELECT *, '' FROM journal;
DROP TABLE journal;
ALTER TABLE journal_new RENAME TO journal;
CREATE INDEX journal_by_subject ON journal (subject, seq);`;

describe.each(versions)('a household written at version $version', ({ version }) => {
  test('is brought to the newest version with every row of its journal, and is sound', async () => {
    const folder = oldHousehold(version);
    const before = lookInto(databaseFile(folder), rowsOf);
    const host = openTestHost({ folder });
    const { store } = host.composed.context.household();
    expect(store.pragma('user_version', { simple: true })).toBe(newestVersion(readMigrations()));
    expect(store.pragma('foreign_key_check')).toEqual([]);
    expect(store.pragma('integrity_check', { simple: true })).toBe('ok');
    const after = rowsOf(store);
    for (const table of ['journal', 'journal_value', 'seal_given']) expect(after[table], table).toEqual(before[table]);
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 30, papers: 1, faults: [] });
    expect((await host.must('due.show', {})).cars.map((car) => car.id)).toEqual(['pip', 'camper']);
  });

  test('holds entries that this program reads: each kind and version as its schema has it', () => {
    const entries = lookInto(databaseFile(oldHousehold(version)), (store) => [...readEntries(store)]);
    expect(entries).toHaveLength(30);
    for (const entry of entries) {
      const kind = must(entryKinds.get(entry.kind), entry.kind);
      const values = entry.version === kind.version ? entry.values : must(kind.upgrade, `${entry.kind} has no upgrade from ${entry.version}`)(entry.values, entry.version);
      expect(kind.schema.safeParse(values).error, `entry ${entry.seq}: a shipped kind changes only with a new version and an upgrade of the old one`).toBeUndefined();
    }
  });
});

describe('a step of the schema', () => {
  test('may rebuild a table that others refer to, and loses nothing', () => {
    const folder = oldHousehold(newestVersion(readMigrations()));
    const before = lookInto(databaseFile(folder), rowsOf);
    expect(openWith(folder, withSteps({ version: 990, sql: REBUILD }))).toMatchObject({ ok: true });
    const after = lookInto(databaseFile(folder), rowsOf);
    expect(after['journal']).toEqual(before['journal']?.map((row) => `${row}, ''`));
    expect({ ...after, journal: null }).toEqual({ ...before, journal: null });
    expect(lookInto(databaseFile(folder), (store) => [store.pragma('foreign_key_check'), store.pragma('user_version', { simple: true })])).toEqual([[], 990]);
  });

  test('comes after a copy of the database as it was', () => {
    const folder = oldHousehold(10);
    const before = lookInto(databaseFile(folder), rowsOf);
    const copied: [number, unknown][] = [];
    openWith(folder, withSteps({ version: 990, sql: 'CREATE TABLE more (a) STRICT' }, { version: 1000, sql: 'CREATE TABLE most (a TEXT) STRICT' }), (store, from) => copied.push([from, rowsOf(store)]));
    expect(copied).toEqual([[10, before]]);
  });

  test('is copied before by the folder itself, into backups', () => {
    const folder = oldHousehold(10);
    const before = lookInto(databaseFile(folder), (store) => [rowsOf(store), schemaOf(store)]);
    openTestHost({ folder });
    expect(readdirSync(join(folder, 'backups')).length).toBe(newestVersion(readMigrations()) > 10 ? 1 : 0);
    expect(before[0]).not.toEqual({});
  });
});
