import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { backUpBeforeMigration } from '../../electron/store/back-up.ts';
import { newestVersion, readMigrations } from '../../electron/store/migrate.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { imprint } from '../store/imprint.ts';
import { rowsOf, schemaOf } from './frozen.ts';
import { lookInto, oldHousehold, openWith, withSteps } from './old-household.ts';

const HEAD = newestVersion(readMigrations());

function state(folder: string): unknown {
  return lookInto(databaseFile(folder), (store) => ({ version: store.pragma('user_version', { simple: true }), schema: schemaOf(store), rows: rowsOf(store) }));
}

/** Writes to a database as another program would. */
function meddle(folder: string, sql: string): void {
  const store = new Database(databaseFile(folder));
  store.exec(sql);
  store.close();
}

describe('a database from the future', () => {
  test.each([
    { case: 'in the log mode', mode: 'WAL' },
    { case: 'in the plain journal mode, as a copy is', mode: 'DELETE' },
  ])('is refused and not touched, $case', ({ mode }) => {
    const folder = oldHousehold(HEAD);
    meddle(folder, `PRAGMA user_version = ${HEAD + 10}; PRAGMA journal_mode = ${mode};`);
    const before = imprint(folder);
    expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'store-from-the-future', values: { found: HEAD + 10, known: HEAD } } });
    expect(imprint(folder)).toEqual(before);
  });

  test('is refused where its version still stands in the log alone', () => {
    const folder = oldHousehold(HEAD);
    const later = new Database(databaseFile(folder));
    later.pragma(`user_version = ${HEAD + 10}`);
    expect(readFileSync(databaseFile(folder)).readInt32BE(60)).toBe(HEAD);
    expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'store-from-the-future' } });
    later.close();
  });

  test.each([
    { case: 'of a kind that only a later program knows', sql: "UPDATE journal SET kind = 'engine-tuned' WHERE seq = 5", found: 'engine-tuned 1', known: 0 },
    { case: 'of a later version of a kind', sql: "UPDATE journal SET version = 9 WHERE seq = 3", found: 'reading-recorded 9', known: 1 },
  ])('is one that holds an entry $case', ({ sql, found, known }) => {
    const folder = oldHousehold(HEAD);
    meddle(folder, sql);
    const before = state(folder);
    expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'store-from-the-future', values: { found, known } } });
    expect(state(folder)).toEqual(before);
  });
});

describe('a step that fails', () => {
  test.each([
    { case: 'an error in its SQL', sql: 'CREATE TABLE more (a TEXT) STRICT; INSERT INTO more SELECT id FROM fact; SELECT id FROM nowhere;', why: /nowhere/ },
    { case: 'a rule of the schema that old rows break', sql: 'CREATE TABLE more (a TEXT CHECK (a IS NULL)) STRICT; DELETE FROM touch; INSERT INTO more SELECT id FROM fact;', why: /CHECK/ },
    { case: 'a reference left broken', sql: 'DELETE FROM journal_value; DELETE FROM journal WHERE seq = 1;', why: /broken references/ },
  ])('leaves the version and the rows it found: $case', ({ sql, why }) => {
    const folder = oldHousehold(HEAD);
    const before = state(folder);
    const opened = openWith(folder, withSteps({ version: 990, sql }));
    expect(opened).toMatchObject({ ok: false, refusal: { code: 'migration-failed', values: { step: '0990_test_step.sql', why: expect.stringMatching(why) as string } } });
    expect(state(folder)).toEqual(before);
    expect(openWith(folder, withSteps({ version: 990, sql: 'CREATE TABLE more (a TEXT) STRICT' }))).toMatchObject({ ok: true });
  });

  test('keeps the steps before it', () => {
    const folder = oldHousehold(HEAD);
    const opened = openWith(folder, withSteps({ version: 990, sql: 'CREATE TABLE more (a TEXT) STRICT' }, { version: 1000, sql: 'no SQL at all' }));
    expect(opened).toMatchObject({ ok: false, refusal: { code: 'migration-failed' } });
    expect(lookInto(databaseFile(folder), (store) => store.pragma('user_version', { simple: true }))).toBe(990);
  });

  test('that ends the transaction itself is found out', () => {
    const folder = oldHousehold(HEAD);
    expect(openWith(folder, withSteps({ version: 990, sql: 'COMMIT;' }))).toMatchObject({ ok: false, refusal: { values: { why: expect.stringMatching(/ends its own transaction/) as string } } });
  });

  test('is not begun where the copy before it cannot be made', () => {
    const folder = oldHousehold(HEAD);
    const before = state(folder);
    const full = () => {
      throw Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
    };
    expect(openWith(folder, withSteps({ version: 990, sql: 'CREATE TABLE more (a TEXT) STRICT' }), full)).toMatchObject({ ok: false, refusal: { code: 'disk-full' } });
    expect(state(folder)).toEqual(before);
  });
});

describe('a step and other processes', () => {
  const module = (path: string) => JSON.stringify(new URL(`../../electron/${path}`, import.meta.url).href);

  test('a process killed in the middle of a step leaves what it found', async () => {
    const folder = oldHousehold(HEAD);
    const before = state(folder);
    const slow = 'CREATE TABLE more (a INTEGER) STRICT; DELETE FROM touch; INSERT INTO more WITH RECURSIVE up(a) AS (SELECT 1 UNION ALL SELECT a + 1 FROM up WHERE a < 30000000) SELECT a FROM up;';
    const script = `const { openStore } = await import(${module('store/open-store.ts')}); const { readMigrations } = await import(${module('store/migrate.ts')});
      openStore(${JSON.stringify(databaseFile(folder))}, { backUp: () => process.stderr.write('begun'), migrations: [...readMigrations(), { version: 990, name: 'slow', sql: ${JSON.stringify(slow)} }] });`;
    const child = execFile(process.execPath, ['--input-type=module', '-e', script]);
    await new Promise<void>((resolve) => child.stderr?.on('data', () => setTimeout(resolve, 250)));
    const ended = new Promise((resolve) => child.on('exit', (_code, signal) => resolve(signal)));
    child.kill('SIGKILL');
    expect(await ended).toBe('SIGKILL');
    expect(openWith(folder, readMigrations())).toMatchObject({ ok: true });
    expect(state(folder)).toEqual(before);
  });

  test('a step that another process took while this one made its copy is not taken twice', () => {
    const folder = oldHousehold(10);
    const steps = withSteps({ version: 990, sql: 'CREATE TABLE more (a TEXT) STRICT; INSERT INTO more VALUES (1)' });
    const opened = openWith(folder, steps, () => expect(openWith(folder, steps)).toMatchObject({ ok: true }));
    expect(opened).toMatchObject({ ok: true });
    expect(lookInto(databaseFile(folder), rowsOf)['more']).toEqual(["'1'"]);
  });

  test('four processes that start one household at once start it once', async () => {
    const folder = join(temporaryFolder(), 'household');
    const script = `const { composeHost } = await import(${module('host/compose-host.ts')}); const { realWorld } = await import(${module('host/real-world.ts')});
      const host = composeHost(process.argv[1], realWorld()); process.stdout.write(host.ok ? 'open' : host.refusal.code); if (host.ok) await host.value.close();`;
    const run = () => promisify(execFile)(process.execPath, ['--input-type=module', '-e', script, folder]);
    expect((await Promise.all([run(), run(), run(), run()])).map(({ stdout }) => stdout)).toEqual(['open', 'open', 'open', 'open']);
    expect(lookInto(databaseFile(folder), (store) => store.pragma('user_version', { simple: true }))).toBe(HEAD);
  });
});

test('the copy before a step is named by the version it holds, and is whole', () => {
  const folder = oldHousehold(10);
  const before = lookInto(databaseFile(folder), rowsOf);
  openWith(folder, withSteps({ version: 990, sql: 'DELETE FROM touch' }), (store, from) => backUpBeforeMigration(store, folder, from));
  const [copy = '', ...more] = readdirSync(join(folder, 'backups'));
  expect(more).toEqual([]);
  expect(copy).toMatch(/^before-migration-from-10-\d+\.sqlite$/);
  expect(lookInto(join(folder, 'backups', copy), (store) => [rowsOf(store), store.pragma('user_version', { simple: true })])).toEqual([before, 10]);
});
