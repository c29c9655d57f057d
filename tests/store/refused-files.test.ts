import { copyFileSync, mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { openStore } from '../../electron/store/open-store.ts';
import { openHouseholdWithPip, openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { imprint } from './imprint.ts';

const PAGE = 4096;

/** The folder of a household with a few entries, closed. */
async function closedHousehold(): Promise<string> {
  const host = await openHouseholdWithPip();
  await host.composed.close();
  return host.folder;
}

/** Opening is refused with the code, and changes nothing in the folder. */
function expectRefused(folder: string, code: string): void {
  const before = imprint(folder);
  expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code } });
  expect(imprint(folder)).toEqual(before);
}

function overwrite(file: string, at: number, bytes: Buffer): void {
  const whole = readFileSync(file);
  bytes.copy(whole, at);
  writeFileSync(file, whole);
}

/** A page, counted from 0 and not the first, that the log does not hold: frames of 24 bytes and a page follow 32 bytes of header. */
function pageNotIn(log: Buffer): number {
  const held = new Set(Array.from({ length: (log.length - 32) / (24 + PAGE) }, (_, at) => log.readUInt32BE(32 + at * (24 + PAGE))));
  return [2, 3, 4, 5, 6, 7, 8, 9].find((page) => !held.has(page + 1)) ?? 0;
}

describe('a household file that is damaged', () => {
  // Source: SQLite file format and recomputed probes: a byte of a page makes quick_check name it; a file cut short is malformed.
  test.each([
    { case: 'a page of rubbish', harm: (file: string) => overwrite(file, 3 * PAGE, Buffer.alloc(PAGE, 0x5a)) },
    { case: 'a few bytes of rubbish at the head of a page', harm: (file: string) => overwrite(file, 2 * PAGE, Buffer.from([0x5a, 1, 2, 3, 0xff, 0xff])) },
    { case: 'the last page cut off', harm: (file: string) => truncateSync(file, readFileSync(file).length - PAGE) },
    { case: 'half a page cut off', harm: (file: string) => truncateSync(file, readFileSync(file).length - PAGE / 2) },
    { case: 'cut to its first page', harm: (file: string) => truncateSync(file, PAGE) },
    { case: 'cut to half its header', harm: (file: string) => truncateSync(file, 50) },
    { case: 'cut to ten bytes', harm: (file: string) => truncateSync(file, 10) },
    { case: 'the page size in its header wrong', harm: (file: string) => overwrite(file, 16, Buffer.from([0x03, 0x03])) },
  ])('$case: refused, not changed, and opened again when it is put back', async ({ harm }) => {
    const folder = await closedHousehold();
    const whole = readFileSync(databaseFile(folder));
    harm(databaseFile(folder));
    const code = composeHost(folder, realWorld());
    expect(code).toMatchObject({ ok: false, refusal: { code: expect.stringMatching(/^(store-damaged|not-a-household)$/) as string } });
    const harmed = readFileSync(databaseFile(folder));
    composeHost(folder, realWorld());
    expect(readFileSync(databaseFile(folder)).equals(harmed)).toBe(true);
    for (const log of ['-wal', '-shm']) rmSync(databaseFile(folder) + log, { force: true });
    writeFileSync(databaseFile(folder), whole);
    expect(await openTestHost({ folder }).must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
  });

  test('is not changed though commits wait in its log', async () => {
    const host = await openHouseholdWithPip();
    const folder = join(temporaryFolder(), 'household');
    mkdirSync(folder);
    host.composed.context.household().store.pragma('wal_checkpoint(TRUNCATE)');
    await host.must('car.change', { id: 'pip', name: 'Pipkin' });
    for (const end of ['', '-wal']) copyFileSync(databaseFile(host.folder) + end, databaseFile(folder) + end);
    overwrite(databaseFile(folder), pageNotIn(readFileSync(`${databaseFile(folder)}-wal`)) * PAGE, Buffer.alloc(PAGE, 0x5a));
    const harmed = readFileSync(databaseFile(folder));
    expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'store-damaged' } });
    expect(readFileSync(databaseFile(folder)).equals(harmed)).toBe(true);
  });

  test('while it is open: refused with its sentence, and the program goes on', async () => {
    const folder = await closedHousehold();
    const whole = readFileSync(databaseFile(folder));
    const host = openTestHost({ folder });
    const rubbish = Buffer.concat([whole.subarray(0, PAGE), Buffer.alloc(whole.length - PAGE, 0x5a)]);
    writeFileSync(databaseFile(folder), rubbish);
    host.composed.context.household().store.pragma('shrink_memory');
    expect(await host.call('due.show', {})).toMatchObject({ ok: false, refusal: { code: 'store-damaged' } });
    expect(await host.call('reading.record', { car: 'pip', value: 20_000 })).toMatchObject({ ok: false, refusal: { code: 'store-damaged' } });
    writeFileSync(databaseFile(folder), whole);
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
    await host.must('reading.record', { car: 'pip', value: 27_000 });
  });
});

describe('a file that is not a household', () => {
  const foreign = (file: string, ...sql: string[]) => {
    const database = new Database(file);
    for (const one of sql) database.exec(one);
    database.close();
  };

  test.each([
    { case: 'text', make: (file: string) => writeFileSync(file, 'not a database\n'.repeat(500)), code: 'not-a-household' },
    { case: 'one byte', make: (file: string) => writeFileSync(file, 'x'), code: 'not-a-household' },
    { case: 'a database of another program', make: (file: string) => foreign(file, 'PRAGMA application_id = 1196444487', 'CREATE TABLE theirs (a)'), code: 'not-a-household' },
    { case: 'a database of another program without a table', make: (file: string) => foreign(file, 'PRAGMA application_id = 1196444487'), code: 'not-a-household' },
    { case: 'a database that says not whose it is', make: (file: string) => foreign(file, 'CREATE TABLE theirs (a)'), code: 'not-a-household' },
    { case: 'a folder', make: (file: string) => mkdirSync(file), code: 'not-a-file' },
  ])('is refused and not touched: $case', ({ make, code }) => {
    const folder = temporaryFolder();
    make(databaseFile(folder));
    expectRefused(folder, code);
  });

  test('is refused by the store itself too, whoever opens it', () => {
    for (const [bytes, code] of [['not a database at all', 'not-a-household'], ['SQLite format 3\0', 'store-damaged']] as const) {
      const file = join(temporaryFolder(), 'household.sqlite');
      writeFileSync(file, bytes);
      expect(openStore(file, { backUp: () => {} })).toMatchObject({ ok: false, refusal: { code } });
      expect(readFileSync(file, 'latin1')).toBe(bytes);
    }
    expect(openStore(join(temporaryFolder(), 'nowhere', 'household.sqlite'), { backUp: () => {} })).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
  });

  test('is not brought up to date either: a stranger\'s log stays as it is', () => {
    const folder = temporaryFolder();
    const theirs = new Database(join(folder, 'theirs'));
    theirs.exec('PRAGMA journal_mode = WAL; CREATE TABLE theirs (a); INSERT INTO theirs VALUES (1)');
    mkdirSync(join(folder, 'household'));
    for (const end of ['', '-wal']) copyFileSync(join(folder, 'theirs') + end, databaseFile(join(folder, 'household')) + end);
    expectRefused(join(folder, 'household'), 'not-a-household');
    theirs.close();
  });
});

describe('a folder that is not a household', () => {
  test('is refused and left alone where it holds other things', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'letter.txt'), 'mine');
    expectRefused(folder, 'folder-not-empty');
  });

  test.each([{ case: 'is gone', harm: (file: string) => rmSync(file) }, { case: 'is empty', harm: (file: string) => truncateSync(file, 0) }])('does not begin anew where the household file $case', async ({ harm }) => {
    const folder = await closedHousehold();
    harm(databaseFile(folder));
    expectRefused(folder, 'store-missing');
  });

  test('may be empty, or hold what a start that was cut off has left', async () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'papers'));
    writeFileSync(databaseFile(folder), '');
    expect(await openTestHost({ folder }).must('household.state', {})).toMatchObject({ household: null });
  });

  test.each([
    { case: 'the folder', path: '' },
    { case: 'the folder above it', path: '..' },
    { case: 'its papers', path: 'papers' },
    { case: 'its backups', path: 'backups' },
  ])('is refused where a file stands in place of $case', ({ path }) => {
    const folder = join(temporaryFolder(), 'above', 'household');
    const place = resolve(folder, path);
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, 'a file');
    expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'not-a-folder' } });
  });

  test('is refused where a folder stands in place of its key', async () => {
    const folder = await closedHousehold();
    rmSync(join(folder, 'key'));
    mkdirSync(join(folder, 'key'));
    expect(composeHost(folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'key-unreadable' } });
  });
});
