import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { sampleFolder } from '../../electron/host/sample-folder.ts';
import { openHouseholdWithPip, openTestHost } from '../host/open-test-host.ts';

test('the sample stands in a folder of its own, in every window at once, and is left without a trace', async () => {
  const host = await openHouseholdWithPip();
  const before = await host.must('household.examine', {});
  const unfinished = `${sampleFolder(host.folder)}.unfinished`;
  // What an opening that was cut off has left.
  mkdirSync(unfinished);
  writeFileSync(join(unfinished, 'household.sqlite'), 'half');
  await host.must('sample.open', {});
  expect(await host.must('household.state', {})).toMatchObject({ sample: true, folder: sampleFolder(host.folder), household: { sample: true } });
  expect((await host.must('household.examine', {})).faults).toEqual([]);
  expect(host.composed.context.household().store.pragma('synchronous', { simple: true })).toBe(2);
  expect(await host.call('sample.open', {})).toMatchObject({ ok: false, refusal: { code: 'sample-open' } });

  const other = openTestHost({ folder: host.folder });
  expect(await other.must('household.state', {})).toMatchObject({ sample: true });
  const told: Push[] = [];
  other.composed.onPush((push) => told.push(push));
  mkdirSync(join(unfinished, 'left'), { recursive: true });
  await host.must('sample.leave', {});
  expect(readdirSync(dirname(host.folder))).toEqual(['household']);
  expect(await host.must('household.examine', {})).toEqual(before);
  expect(await host.call('sample.leave', {})).toMatchObject({ ok: false, refusal: { code: 'sample-not-open' } });

  expect(await other.must('household.state', {})).toMatchObject({ sample: false, household: { name: 'Test household' } });
  expect(told).toMatchObject([{ kind: 'changed' }]);
  await other.must('reading.record', { car: 'pip', value: 27_000 });
  expect(await host.must('household.examine', {})).toMatchObject({ entries: 5, faults: [] });
  expect(existsSync(sampleFolder(host.folder))).toBe(false);
});
