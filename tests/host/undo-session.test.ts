import { describe, expect, test } from 'vitest';
import { day, openTestHost, type TestHost } from './open-test-host.ts';

const FIFTH = day('2026-12-05');
const NINTH = day('2026-12-09');
const item = (id: string) => ({ kind: 'item' as const, id });
const keep = (host: TestHost, id: string, on: typeof FIFTH, ...tasks: readonly string[]) => host.must('session.keep', { sessions: [{ id, day: on, place: 'home', tasks: tasks.map(item) }] });

/** Pip with three yearly items, and oil and plugs kept for the fifth. */
async function withOneKept(): Promise<TestHost> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Ours' });
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  for (const [id, name] of [['oil', 'Engine oil'], ['plugs', 'Plugs'], ['filter', 'Filter']] as const) await host.must('item.add', { id, car: 'pip', name, interval: { repeat: { months: 12, distance: null } } });
  await keep(host, 'one', FIFTH, 'oil', 'plugs');
  return host;
}
const standing = async (host: TestHost) => (await host.must('sessions.show', {})).sessions.map((one) => `${one.day} ${one.state}: ${one.tasks.map(({ task }) => task.id).join(' ')}`);

describe('an undo that gives a task a second session', () => {
  test('of its release is refused and names the other; nothing is changed, and other sessions are kept as before', async () => {
    const host = await withOneKept();
    const { undo } = await host.must('session.release', { session: 'one', tasks: [item('oil')] });
    await keep(host, 'three', NINTH, 'oil');
    const refused = await host.call('entry.withdraw', { entries: [...undo] });
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'undo-task-in-session', values: { task: 'Pip: Engine oil', day: NINTH } } });
    expect(await standing(host)).toEqual(['2026-12-05 kept: plugs', '2026-12-09 kept: oil']);
    await keep(host, 'four', day('2026-12-12'), 'filter');
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('is done once the other has given it up', async () => {
    const host = await withOneKept();
    const { undo } = await host.must('session.release', { session: 'one', tasks: [item('oil')] });
    await keep(host, 'three', NINTH, 'oil');
    await host.must('session.end', { session: 'three', as: 'cancelled' });
    await host.must('entry.withdraw', { entries: [...undo] });
    expect(await standing(host)).toEqual(['2026-12-05 kept: oil plugs']);
  });

  test('of a cancellation is refused where the task is kept for another day', async () => {
    const host = await withOneKept();
    const { undo } = await host.must('session.end', { session: 'one', as: 'cancelled' });
    await keep(host, 'three', NINTH, 'plugs');
    expect(await host.call('entry.withdraw', { entries: [...undo] })).toMatchObject({ ok: false, refusal: { code: 'undo-task-in-session', values: { task: 'Pip: Plugs', day: NINTH } } });
    expect(await standing(host)).toEqual(['2026-12-09 kept: plugs']);
  });

  test('of both entries together goes back to what was', async () => {
    const host = await withOneKept();
    const released = await host.must('session.release', { session: 'one', tasks: [item('oil')] });
    const kept = await keep(host, 'three', NINTH, 'oil');
    await host.must('entry.withdraw', { entries: [...kept.undo, ...released.undo] });
    expect(await standing(host)).toEqual(['2026-12-05 kept: oil plugs']);
  });
});

describe('an undo that gives a day and place a second session', () => {
  test('of a cancellation is refused, whatever is to be done there', async () => {
    const host = await withOneKept();
    const { undo } = await host.must('session.end', { session: 'one', as: 'cancelled' });
    await keep(host, 'two', FIFTH, 'filter');
    expect(await host.call('entry.withdraw', { entries: [...undo] })).toMatchObject({ ok: false, refusal: { code: 'undo-day-taken', values: { day: FIFTH, place: 'Home' } } });
    expect(await standing(host)).toEqual(['2026-12-05 kept: filter']);
    await host.must('session.move', { session: 'two', day: NINTH });
    await host.must('entry.withdraw', { entries: [...undo] });
    expect(await standing(host)).toEqual(['2026-12-05 kept: oil plugs', '2026-12-09 moved: filter']);
  });

  test('of a move that joined another is no such undo', async () => {
    const host = await withOneKept();
    await keep(host, 'two', NINTH, 'filter');
    const { undo } = await host.must('session.move', { session: 'one', day: NINTH });
    expect(await standing(host)).toEqual(['2026-12-09 kept: filter oil plugs']);
    await host.must('entry.withdraw', { entries: [...undo] });
    expect(await standing(host)).toEqual(['2026-12-05 kept: oil plugs', '2026-12-09 kept: filter']);
  });
});
