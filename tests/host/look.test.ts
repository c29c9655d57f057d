import { chmodSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { countEntries } from '../../electron/store/journal-table.ts';
import { laySample } from '../sample-build.ts';
import { openTestHost, temporaryFolder } from './open-test-host.ts';

/** Source for all: our own rule. */
describe('the look that was chosen', () => {
  test('is the computer’s own until one is chosen, and then stands for every later host of the folder', async () => {
    const folder = join(temporaryFolder(), 'household');
    const first = openTestHost({ folder });
    expect((await first.must('household.state', {})).look).toBe('system');
    expect(await first.must('look.set', { look: 'contrast-dark' })).toEqual({ look: 'contrast-dark', undo: [] });
    await first.composed.close();
    expect((await openTestHost({ folder }).must('household.state', {})).look).toBe('contrast-dark');
  });

  test('may be chosen before there is a household, which is then started all the same, and may be lost with nothing else', async () => {
    const folder = join(temporaryFolder(), 'household');
    const host = openTestHost({ folder });
    await host.must('look.set', { look: 'dark' });
    await host.must('household.start', { name: 'Ours' });
    expect(countEntries(host.composed.context.household().store)).toBe(1);
    rmSync(join(folder, 'look.json'));
    expect((await host.must('household.state', {})).look).toBe('system');
  });

  test('stands while the sample is open, and after it was left', async () => {
    const host = openTestHost();
    await host.must('sample.open', {});
    await host.must('look.set', { look: 'light' });
    expect(await host.must('household.state', {})).toMatchObject({ sample: true, look: 'light' });
    await host.must('sample.leave', {});
    expect(await host.must('household.state', {})).toMatchObject({ sample: false, look: 'light' });
  });

  test('is kept under a sample that was left open, though there is no household yet', async () => {
    const folder = join(temporaryFolder(), 'household');
    await laySample(folder);
    const host = openTestHost({ folder });
    await host.must('look.set', { look: 'dark' });
    await host.must('sample.leave', {});
    expect(await host.must('household.state', {})).toMatchObject({ household: null, look: 'dark' });
    await host.must('household.start', { name: 'Ours' });
  });

  test('tells every window of its change', async () => {
    const host = openTestHost();
    const told: string[] = [];
    host.composed.onPush((push) => told.push(push.kind));
    await host.must('look.set', { look: 'dark' });
    expect(told).toEqual(['changed']);
  });

  test('in a file that cannot be understood is none', async () => {
    const host = openTestHost();
    for (const text of ['', '"pink"', '{"look":"dark"}', '"dark']) {
      writeFileSync(join(host.folder, 'look.json'), text);
      expect((await host.must('household.state', {})).look, text).toBe('system');
    }
  });

  test('is kept for its owner alone, with nothing beside it', async () => {
    const host = openTestHost();
    await host.must('look.set', { look: 'dark' });
    expect(statSync(join(host.folder, 'look.json')).mode & 0o777).toBe(0o600);
    expect(readdirSync(host.folder).filter((name) => name.startsWith('look'))).toEqual(['look.json']);
  });

  test('that is none of ours is refused', async () => {
    const refused = await openTestHost().call('look.set', { look: 'pink' as never });
    expect(refused.ok).toBe(false);
  });

  test.skipIf(process.getuid?.() === 0)('is refused in words where the folder may not be written to', async () => {
    const host = openTestHost();
    chmodSync(host.folder, 0o500);
    const refused = await host.call('look.set', { look: 'dark' });
    chmodSync(host.folder, 0o700);
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'folder-read-only' } });
  });
});
