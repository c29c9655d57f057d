import { describe, expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { sayRefusal } from '../../shared-core/result/words/say.ts';
import { openTestHost } from './open-test-host.ts';

describe('an order that is stopped', () => {
  test('at once or on the way, ends with a plain answer, and nothing is stored', async () => {
    const host = openTestHost();
    await host.must('sample.open', {});
    const pushes: Push[] = [];
    host.composed.onPush((push) => pushes.push(push));
    const before = await host.must('parts.show', {});
    for (const milliseconds of [0, 50, 200, 600]) {
      const proposing = host.call('order.propose', { job: 'long' });
      expect(await host.call('order.propose', { job: 'long' })).toMatchObject({ ok: false, refusal: { code: 'job-running' } });
      if (milliseconds > 0) await new Promise((resolve) => setTimeout(resolve, milliseconds));
      const { stopped } = await host.must('job.stop', { job: 'long' });
      const reply = await proposing;
      expect(pushes.at(-1)).toEqual({ kind: 'job-ended', job: 'long', ok: reply.ok });
      // Before anything was found there is nothing to show; afterwards the best found so far stands, whenever the wish comes.
      if (milliseconds === 0) expect([stopped, reply]).toMatchObject([true, { ok: false, refusal: { code: 'order-not-found' } }]);
      if (reply.ok) expect(reply.value.boundMinor).toBeLessThanOrEqual(reply.value.totalMinor);
      else expect([reply.refusal.code, sayRefusal(reply.refusal)]).toEqual(['order-not-found', expect.stringMatching(/^[A-Z].*\.$/)]);
      expect(await host.must('job.stop', { job: 'long' })).toEqual({ stopped: false });
    }
    expect(pushes.filter(({ kind }) => kind === 'changed')).toEqual([]);
    expect(await host.must('parts.show', {})).toEqual(before);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  }, 120_000);
});
