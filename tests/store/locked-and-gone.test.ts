import { cpSync, existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { composeHost } from '../../electron/host/compose-host.ts';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { openHouseholdWithPip, openTestHost } from '../host/open-test-host.ts';
import { moduleOf, startProcess } from './other-process.ts';

const DATABASE = `const { createRequire } = await import('node:module'); const Database = createRequire(${moduleOf('electron/x.js')})('better-sqlite3'); const database = new Database(process.argv[1]);`;

/** A process that holds a lock until its input ends. */
function holder(folder: string, lock: string) {
  return startProcess(`${DATABASE} database.exec(${JSON.stringify(lock)}); console.log('held'); process.stdin.resume().on('end', () => process.exit());`, databaseFile(folder));
}

describe('a household that another process holds', () => {
  test('refuses to be written after a while, can be read meanwhile, and is written when it is free', async () => {
    const host = await openHouseholdWithPip();
    host.composed.context.household().store.pragma('busy_timeout = 200');
    const other = holder(host.folder, 'BEGIN EXCLUSIVE');
    expect(await other.line()).toBe('held');
    expect(await host.call('reading.record', { car: 'pip', value: 27_000 })).toMatchObject({ ok: false, refusal: { code: 'store-locked' } });
    expect(await host.call('entry.withdraw', { entries: [3] })).toMatchObject({ ok: false, refusal: { code: 'store-locked' } });
    expect(await host.call('paper.keep', { name: 'a', base64: 'AAAA' })).toMatchObject({ ok: false, refusal: { code: 'store-locked' } });
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
    await other.end();
    await host.must('reading.record', { car: 'pip', value: 27_000 });
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 5, faults: [] });
  });

  test('waits a moment for a short lock', async () => {
    const host = await openHouseholdWithPip();
    const other = startProcess(`${DATABASE} database.exec('BEGIN EXCLUSIVE'); console.log('held'); setTimeout(() => { database.exec('ROLLBACK'); process.exit(); }, 700);`, databaseFile(host.folder));
    expect(await other.line()).toBe('held');
    await host.must('reading.record', { car: 'pip', value: 27_000 });
  });

  test('refuses to be opened, and is opened when it is free', async () => {
    const made = await openHouseholdWithPip();
    await made.composed.close();
    const other = holder(made.folder, "PRAGMA locking_mode = EXCLUSIVE; UPDATE fact SET car = car WHERE family = 'car'");
    expect(await other.line()).toBe('held');
    expect(composeHost(made.folder, realWorld())).toMatchObject({ ok: false, refusal: { code: 'store-locked' } });
    await other.end();
    expect(await openTestHost({ folder: made.folder }).must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
  });
});

describe('a folder that vanishes while it is open', () => {
  test('is refused, nothing is confirmed into the void, and all goes on when it is back', async () => {
    const host = await openHouseholdWithPip();
    const away = `${host.folder}-away`;
    renameSync(host.folder, away);
    expect(await host.call('reading.record', { car: 'pip', value: 27_000 })).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
    expect(await host.call('paper.keep', { name: 'a', base64: 'AAAA' })).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
    expect(await host.call('backup.make', {})).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
    expect(await host.call('due.show', {})).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
    expect(existsSync(host.folder)).toBe(false);
    renameSync(away, host.folder);
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
    await host.must('reading.record', { car: 'pip', value: 27_000 });
  });

  test('is opened anew where a copy was put in its place, and the windows are told', async () => {
    const host = await openHouseholdWithPip();
    const copy = `${host.folder}-copy`;
    const backup = await host.must('backup.make', {});
    await host.must('reading.record', { car: 'pip', value: 27_000 });
    cpSync(backup.folder, copy, { recursive: true });
    rmSync(host.folder, { recursive: true });
    renameSync(copy, host.folder);
    const pushes: Push[] = [];
    host.composed.onPush((push) => pushes.push(push));
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
    expect(pushes).toMatchObject([{ kind: 'changed' }]);
    await host.must('car.change', { id: 'pip', name: 'Pipkin' });
    await host.composed.close();
    expect(await openTestHost({ folder: host.folder }).must('household.examine', {})).toMatchObject({ entries: 5, faults: [] });
  });

  test('refuses what was written while it went away', async () => {
    const host = await openHouseholdWithPip();
    host.composed.onPush(() => renameSync(host.folder, `${host.folder}-away`));
    expect(await host.call('car.change', { id: 'pip', name: 'Pipkin' })).toMatchObject({ ok: false, refusal: { code: 'folder-unreachable' } });
    expect(existsSync(join(`${host.folder}-away`, 'household.sqlite'))).toBe(true);
  });
});

describe('what is written is confirmed', () => {
  test('though a window that listens has failed', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {});
    onTestFinished(() => log.mockRestore());
    const host = await openHouseholdWithPip();
    host.composed.onPush(() => {
      throw new Error('the window is gone');
    });
    expect(await host.call('car.change', { id: 'pip', name: 'Pipkin' })).toMatchObject({ ok: true, value: { undo: [4] } });
    expect(log).toHaveBeenCalledOnce();
  });
});
