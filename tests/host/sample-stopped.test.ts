import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { sampleFolder, unfinishedSample } from '../../electron/host/sample-folder.ts';
import { openHouseholdWithPip } from './open-test-host.ts';

test('a sample that is stopped while it is written leaves nothing, and opens when it is asked for again', async () => {
  const host = await openHouseholdWithPip();
  const before = await host.must('household.examine', {});
  const pushes: Push[] = [];
  // Stopped as soon as it has told how far it is.
  host.composed.onPush((push) => {
    pushes.push(push);
    if (push.kind === 'job-progress' && push.done > 0) void host.call('job.stop', { job: 'writing' });
  });
  expect(await host.call('sample.open', { job: 'writing' })).toMatchObject({ ok: false, refusal: { code: 'sample-stopped' } });
  expect(pushes.at(-1)).toEqual({ kind: 'job-ended', job: 'writing', ok: false });
  const far = pushes.find((push) => push.kind === 'job-progress' && push.done > 0);
  expect(far?.kind === 'job-progress' ? far.total : null).toBeGreaterThan(500);
  expect([sampleFolder(host.folder), unfinishedSample(host.folder)].map((one) => existsSync(one))).toEqual([false, false]);
  expect(await host.must('household.examine', {})).toEqual(before);
  await host.must('sample.open', { job: 'again' });
  const told = pushes.filter((push) => push.kind === 'job-progress' && push.job === 'again');
  expect(told.length).toBeGreaterThan(20);
  expect(await host.must('household.state', {})).toMatchObject({ sample: true });
});
