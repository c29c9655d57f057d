import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { sampleFolder } from '../../electron/host/sample-folder.ts';
import { openHouseholdWithPip, openTestHost } from '../host/open-test-host.ts';

describe('the sample household', () => {
  test('stands in a folder of its own, is left without a trace, and the household is as it was', async () => {
    const host = await openHouseholdWithPip();
    const before = await host.must('household.examine', {});
    // What an opening that was cut off has left.
    mkdirSync(`${sampleFolder(host.folder)}.unfinished`, { recursive: true });
    writeFileSync(join(`${sampleFolder(host.folder)}.unfinished`, 'household.sqlite'), 'half');
    await host.must('sample.open', {});
    expect(await host.must('household.state', {})).toMatchObject({ sample: true, folder: sampleFolder(host.folder), household: { sample: true } });
    expect((await host.must('household.examine', {})).faults).toEqual([]);
    expect(host.composed.context.household().store.pragma('synchronous', { simple: true })).toBe(2);
    expect(await host.call('sample.open', {})).toMatchObject({ ok: false, refusal: { code: 'sample-open' } });
    mkdirSync(join(`${sampleFolder(host.folder)}.unfinished`, 'left'), { recursive: true });
    await host.must('sample.leave', {});
    expect(readdirSync(dirname(host.folder))).toEqual(['household']);
    expect(await host.must('household.examine', {})).toEqual(before);
    expect(await host.call('sample.leave', {})).toMatchObject({ ok: false, refusal: { code: 'sample-not-open' } });
  });

  test('left in one window is left in the other too', async () => {
    const first = await openHouseholdWithPip();
    await first.must('sample.open', {});
    const second = openTestHost({ folder: first.folder });
    expect(await second.must('household.state', {})).toMatchObject({ sample: true });
    const told: Push[] = [];
    second.composed.onPush((push) => told.push(push));
    await first.must('sample.leave', {});
    expect(await second.must('household.state', {})).toMatchObject({ sample: false, household: { name: 'Test household' } });
    expect(told).toMatchObject([{ kind: 'changed' }]);
    await second.must('reading.record', { car: 'pip', value: 27_000 });
    expect(await first.must('household.examine', {})).toMatchObject({ entries: 5, faults: [] });
    expect(existsSync(sampleFolder(first.folder))).toBe(false);
  });
});
