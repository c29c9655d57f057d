import { describe, expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { day, openTestHost, type TestHost } from './open-test-host.ts';

async function sampleHost(): Promise<{ readonly host: TestHost; readonly pushes: Push[] }> {
  const host = openTestHost();
  await host.must('sample.open', {});
  const pushes: Push[] = [];
  host.composed.onPush((push) => pushes.push(push));
  return { host, pushes };
}

describe('a plan by the host', () => {
  test('is proposed, laid on the yard, kept, moved and undone', async () => {
    const { host, pushes } = await sampleHost();
    const plan = await host.must('plan.propose', { horizonDays: 21, job: 'plan-1' });
    expect(plan).toMatchObject({ status: 'optimal', horizonDays: 21 });
    expect(pushes.at(-1)).toEqual({ kind: 'job-ended', job: 'plan-1', ok: true });
    // Proposing changes nothing; the screens lay it on the yard.
    const fresh = plan.sessions.filter((session) => session.state === 'proposed');
    expect((await host.must('yard.show', {})).sessions.every((session) => session.state === 'kept')).toBe(true);
    await host.must('session.propose', { sessions: plan.sessions.map(({ day, place, tasks }) => ({ day, place, tasks: tasks.map((one) => one.task) })) });
    const laid = (await host.must('yard.show', {})).sessions;
    expect(laid.filter((session) => session.state === 'proposed').map(({ day, place }) => `${day} ${place}`)).toEqual(expect.arrayContaining(fresh.map(({ day, place }) => `${day} ${place}`)));
    expect(pushes.at(-1)).toMatchObject({ kind: 'changed', stages: ['sessions'] });

    // The same plan stands on the yard as was proposed: trying nothing changes nothing, and costs what the plan says.
    const [first] = laid.filter((session) => session.state === 'proposed');
    const tasks = first?.tasks.map((one) => one.task) ?? [];
    const place = first?.place ?? '';
    expect(await host.must('plan.try', { tasks, to: { day: first?.day ?? plan.today, place }, horizonDays: 21 })).toMatchObject({ allowed: true, deltaMinor: 0, before: { totalMinor: plan.totalMinor } });
    const later = day('2026-12-11');
    const moved = await host.must('session.move', { session: first?.id ?? '', day: later, place });
    expect((await host.must('yard.show', {})).sessions.find((session) => session.id === first?.id)).toMatchObject({ day: later, state: 'moved' });
    await host.must('entry.withdraw', { entries: [...moved.undo], why: 'a slip' });
    expect((await host.must('yard.show', {})).sessions).toEqual(laid);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  }, 120_000);

  test('is stopped by its name, and then answers with the best it has', async () => {
    const { host, pushes } = await sampleHost();
    const planning = host.must('plan.propose', { horizonDays: 120, job: 'long' });
    expect(await host.call('plan.propose', { horizonDays: 120, job: 'long' })).toMatchObject({ ok: false, refusal: { code: 'job-running' } });
    expect(await host.must('job.stop', { job: 'long' })).toEqual({ stopped: true });
    const plan = await planning;
    expect(plan.boundMinor).toBeLessThanOrEqual(plan.totalMinor);
    expect(plan.savingMinor ?? 0).toBeGreaterThanOrEqual(0);
    expect(pushes.at(-1)).toMatchObject({ kind: 'job-ended', job: 'long' });
    expect(await host.must('job.stop', { job: 'long' })).toEqual({ stopped: false });
  }, 120_000);
});
