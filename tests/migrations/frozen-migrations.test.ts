import { readFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { migrate, readMigrations } from '../../electron/store/migrate.ts';
import { FREEZE, migrationDigest, SCHEMA_FILE, schemaOf, seedOf, shippedMigrations } from './frozen.ts';
import { migrationFolder } from './old-household.ts';

describe('what has been shipped is frozen', () => {
  test('no shipped migration is edited, renamed or taken away', () => {
    const present = new Map(readMigrations().map(({ name, sql }) => [name, migrationDigest(sql)]));
    for (const [name, digest] of Object.entries(shippedMigrations())) {
      expect(present.get(name), `migrations/${name} is frozen: households have been through it. Put it back as it was ("git log -- migrations/${name}") and write the change as a new file with the next number.`).toBe(digest);
    }
  });

  test('every migration is on the list', () => {
    const missing = readMigrations().map(({ name }) => name).filter((name) => shippedMigrations()[name] === undefined);
    expect(missing, `new migrations are frozen by "${FREEZE}", and then committed with it`).toEqual([]);
  });

  test('every version has its frozen rows', () => {
    const missing = readMigrations().map(({ version }) => version).filter((version) => seedOf(version) === null);
    expect(missing, 'make a household at this version and freeze its rows with tests/migrations/dump-seed.ts').toEqual([]);
  });

  test('together they make the schema as it was written down', () => {
    const store = new Database(':memory:');
    migrate(store, { backUp: () => {} });
    expect(schemaOf(store), `the schema is another than in ${SCHEMA_FILE}: where a new migration means it, run "${FREEZE}" and look at the difference`).toBe(readFileSync(SCHEMA_FILE, 'utf8'));
  });

  test('leave transactions, versions and settings to the runner, and say why they are there', () => {
    for (const { name, sql } of readMigrations()) {
      const code = sql.replace(/--[^\n]*/g, '');
      expect(code, name).not.toMatch(/\b(BEGIN|COMMIT|ROLLBACK|SAVEPOINT|PRAGMA|ATTACH|VACUUM)\b/i);
      expect(sql, name).toMatch(/^-- Why: .*\n-- Existing rows: /);
    }
  });
});

describe('the numbers of migrations', () => {
  test.each([
    { case: 'two files of one number', files: { '0010_a.sql': '', '0010_b.sql': '' }, error: 'two migrations of one number' },
    { case: 'a name without a number', files: { '0010_a.sql': '', 'notes.sql': '' }, error: 'a migration named notes.sql' },
    { case: 'a name in capitals', files: { '0010_A.sql': '' }, error: 'a migration named 0010_A.sql' },
  ])('$case is our bug', ({ files, error }) => {
    expect(() => readMigrations(migrationFolder(files))).toThrow(error);
  });

  test('are read in order, and other files are left alone', () => {
    const folder = migrationFolder({ '0100_c.sql': 'c', '0020_b.sql': 'b', '0010_a.sql': 'a', 'readme.md': '' });
    expect(readMigrations(folder).map(({ version, sql }) => [version, sql])).toEqual([[10, 'a'], [20, 'b'], [100, 'c']]);
  });

  test('must go up', () => {
    const steps = [20, 10].map((version) => ({ version, name: `${version}`, sql: '' }));
    expect(() => migrate(new Database(':memory:'), { backUp: () => {} }, steps)).toThrow('the numbers of the migrations go up');
  });
});
