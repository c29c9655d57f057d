import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sweepHandedFolders } from '../../electron/host/handed-folders.ts';
import { openTestHost, temporaryFolder } from '../host/open-test-host.ts';

const NOW = Date.UTC(2026, 10, 25);
const HOURS = 3600;

/** A folder with a pack in it, as it was left so many hours ago. */
function left(within: string, name: string, hours: number): void {
  mkdirSync(join(within, name));
  writeFileSync(join(within, name, 'pack.zip'), 'x');
  utimesSync(join(within, name), NOW / 1000 - hours * HOURS, NOW / 1000 - hours * HOURS);
}

/** The id of a process that has ended. */
const ended = execFileSync(process.execPath, ['-e', 'process.stdout.write(String(process.pid))'], { encoding: 'utf8' });

test('what a killed program left is gone after a day; what is newer, in use, or not of that name stays', () => {
  const within = temporaryFolder();
  left(within, `trunnion-handed-${ended}-AbCd12`, 25);
  left(within, 'trunnion-handed-AbCd12', 25);
  const staying = [[`trunnion-handed-${ended}-new123`, 23], [`trunnion-handed-${process.pid}-AbCd12`, 100], ['trunnion-handed-of-mine', 100], ['trunnion-sample-AbCd12', 100], ['other', 100]] as const;
  for (const [name, hours] of staying) left(within, name, hours);
  const elsewhere = temporaryFolder();
  writeFileSync(join(elsewhere, 'kept'), 'x');
  symlinkSync(elsewhere, join(within, 'trunnion-handed-Linked'));
  sweepHandedFolders(NOW, within);
  expect(readdirSync(within).sort()).toEqual([...staying.map(([name]) => name), 'trunnion-handed-Linked'].sort());
  expect(existsSync(join(elsewhere, 'kept'))).toBe(true);
});

test('a folder for temporary files that is not there stops nothing', () => {
  expect(() => sweepHandedFolders(NOW, join(temporaryFolder(), 'nowhere'))).not.toThrow();
});

test('a page’s pack lies in a folder that names its process', async () => {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('pack.hand', { handed: 'a', from: 0, base64: 'YWJj' });
  expect(readdirSync(tmpdir()).filter((name) => name.startsWith(`trunnion-handed-${process.pid}-`)).length).toBeGreaterThan(0);
});
