import { chmodSync, cpSync, existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { paperPath, writePaper } from '../../electron/papers/write-paper.ts';
import { day, openHouseholdWithPip, openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { imprint } from './imprint.ts';

async function withPaper() {
  const host = await openHouseholdWithPip();
  const { paper } = await host.must('paper.keep', { name: 'a.txt', base64: 'AAAA' });
  return { host, paper };
}

describe('a backup', () => {
  test('is a whole household of its own: database, papers and key', async () => {
    const { host, paper } = await withPaper();
    const { folder, entries } = await host.must('backup.make', {});
    expect(entries).toBe(5);
    expect(readdirSync(folder).sort()).toEqual(['household.sqlite', 'key', 'papers']);
    expect(statSync(join(folder, 'key')).mode & 0o777).toBe(0o600);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(existsSync(paperPath(folder, paper.id))).toBe(true);
    const restored = join(temporaryFolder(), 'restored');
    cpSync(folder, restored, { recursive: true });
    const again = openTestHost({ folder: restored });
    expect(await again.must('household.examine', {})).toEqual(await host.must('household.examine', {}));
    expect(again.composed.context.household().key.fingerprint).toBe(host.composed.context.household().key.fingerprint);
    await again.must('reading.record', { car: 'pip', value: 27_000 });
  });

  test('leaves out papers that were broken off', async () => {
    const { host, paper } = await withPaper();
    writeFileSync(`${paperPath(host.folder, paper.id)}.1.part`, 'half');
    const { folder } = await host.must('backup.make', {});
    expect(readdirSync(join(folder, 'papers'), { recursive: true })).toHaveLength(2);
  });

  test('holds what stands only in the log', async () => {
    const { host } = await withPaper();
    expect(statSync(`${databaseFile(host.folder)}-wal`).size).toBeGreaterThan(0);
    const { folder } = await host.must('backup.make', {});
    expect(existsSync(`${databaseFile(folder)}-wal`)).toBe(false);
    expect((await openTestHost({ folder }).must('household.examine', {})).entries).toBe(5);
  });

  test('made in the same instant as another leaves that one as it is', async () => {
    const folder = join(temporaryFolder(), 'household');
    const opened = composeHost(folder, { ...realWorld(day('2026-11-25')), now: () => '2026-11-25T09:00:00.000Z' });
    if (!opened.ok) throw new Error(opened.refusal.code);
    const host = opened.value;
    onTestFinished(() => host.close());
    await host.call('household.start', {});
    const made = [];
    for (const _ of [1, 2, 3]) made.push(await host.call('backup.make', {}));
    expect(made.map((reply) => reply.ok && basename((reply.value as { folder: string }).folder))).toEqual(['2026-11-25T09-00-00-000Z', '2026-11-25T09-00-00-000Z-2', '2026-11-25T09-00-00-000Z-3']);
    for (const name of readdirSync(join(folder, 'backups'))) expect(await openTestHost({ folder: join(folder, 'backups', name) }).must('household.examine', {})).toMatchObject({ entries: 1, faults: [] });
  });

  test('of a household that is not sound is refused, named, and taken away again', async () => {
    const { host, paper } = await withPaper();
    const { folder } = await host.must('backup.make', {});
    const before = imprint(folder);
    writeFileSync(paperPath(host.folder, paper.id), 'other bytes');
    expect(await host.call('backup.make', {})).toMatchObject({ ok: false, refusal: { code: 'backup-not-sound', values: { where: expect.stringMatching(/^paper a\.txt/) as string, what: 'has been altered' } } });
    expect(readdirSync(join(host.folder, 'backups'))).toEqual([basename(folder)]);
    expect(imprint(folder)).toEqual(before);
    writePaper(host.folder, Buffer.from('AAAA', 'base64'));
    await host.must('backup.make', {});
  });

  test('is refused where the folder for it is gone, and made when it is back', async () => {
    const { host } = await withPaper();
    rmSync(join(host.folder, 'backups'), { recursive: true });
    expect(await host.call('backup.make', {})).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
    await host.composed.close();
    await openTestHost({ folder: host.folder }).must('backup.make', {});
  });
});

describe('the files of a household', () => {
  test('can be read by their owner alone, also where the folder stood open', async () => {
    const host = await openHouseholdWithPip();
    await host.must('paper.keep', { name: 'a.txt', base64: 'AAAA' });
    await host.composed.close();
    expect(statSync(host.folder).mode & 0o777).toBe(0o700);
    chmodSync(host.folder, 0o755);
    openTestHost({ folder: host.folder });
    expect(statSync(host.folder).mode & 0o777).toBe(0o700);
  });

  test('are written with every commit on disk before it is confirmed', async () => {
    // Source: SQLite's pragma documentation (seen): WAL with synchronous = FULL (2) keeps a commit through a power cut.
    const { store } = (await openHouseholdWithPip()).composed.context.household();
    expect(store.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(store.pragma('synchronous', { simple: true })).toBe(2);
    expect(store.pragma('foreign_keys', { simple: true })).toBe(1);
  });
});
