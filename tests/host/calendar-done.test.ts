import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { day, openTestHost, temporaryFolder, type TestHost } from './open-test-host.ts';

interface Event { readonly sequence: number; readonly status: string | null; readonly from: string; readonly rings: number }

async function written(host: TestHost): Promise<ReadonlyMap<string, Event>> {
  const { text } = await host.must('calendar.write', {});
  const events = new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent');
  const all = events.map((one) => [String(one.getFirstPropertyValue('uid')), {
    sequence: Number(one.getFirstPropertyValue('sequence')), status: one.getFirstPropertyValue('status') as string | null,
    from: String(one.getFirstPropertyValue('dtstart')), rings: one.getAllSubcomponents('valarm').length,
  }] as const);
  expect(new Set(all.map(([uid]) => uid)).size).toBe(all.length);
  return new Map(all);
}

/** A late item without a repeat in sight, a follow-up, a second look, and a session; seen is never to be looked at again. */
async function started(folder: string): Promise<TestHost> {
  const host = openTestHost({ on: '2026-12-05', folder });
  await host.must('household.start', { name: 'Ours' });
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'Oil', history: 'never-done', interval: { repeat: { months: 60, distance: null } } });
  await host.must('follow-up.add', { id: 'bolts', car: 'pip', text: 'Bolts', dueOn: day('2026-12-08') });
  await host.must('observation.note', { id: 'leak', car: 'pip', text: 'Damp', recheckOn: day('2026-12-20') });
  await host.must('observation.note', { id: 'scratch', car: 'pip', text: 'Scratch' });
  await host.must('session.keep', { sessions: [{ id: 'one', day: day('2026-12-12'), place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] });
  return host;
}

test('what is ticked, closed, dropped or done and moved on out of sight is struck under its UID; a session done is told on its day and does not ring', async () => {
  const folder = temporaryFolder();
  const host = await started(folder);
  const first = await written(host);
  expect([...first.values()].map((one) => `${one.from} ${one.status ?? '-'} ${one.rings}`).sort()).toEqual(['2026-12-05 - 0', '2026-12-08 - 1', '2026-12-12 - 1', '2026-12-20 - 1']);
  await host.must('session.move', { session: 'one', day: day('2026-12-05') });
  await host.must('record.add', { id: 'work', car: 'pip', lines: [{ item: 'oil' }] });
  await host.must('session.end', { session: 'one', as: 'done' });
  await host.must('follow-up.done', { followUp: 'bolts' });
  const { undo } = await host.must('observation.close', { observation: 'leak', record: 'work' });
  await host.must('observation.close', { observation: 'scratch', record: 'work' });
  const second = await written(host);
  expect([...second.keys()].sort()).toEqual([...first.keys()].sort());
  for (const [uid, one] of second) expect(one.sequence, uid).toBeGreaterThan(first.get(uid)?.sequence ?? Infinity);
  expect([...second.values()].map((one) => `${one.status ?? one.from} ${one.rings}`).sort()).toEqual(['2026-12-05 0', 'CANCELLED 0', 'CANCELLED 0', 'CANCELLED 0']);
  await host.must('entry.withdraw', { entries: [...undo] });
  expect([...(await written(host)).values()].filter((one) => one.status === null).map((one) => `${one.from} ${one.rings}`).sort()).toEqual(['2026-12-05 0', '2026-12-20 1']);
  await host.composed.close();
  // The item's next day, five years on, is in sight of no calendar of two years; the rest is a month old.
  expect([...(await written(openTestHost({ on: '2027-02-01', folder }))).values()].map((one) => one.status)).toEqual([null]);
});

test('what was added by mistake and withdrawn is struck; a car that leaves takes its own along', async () => {
  const host = await started(temporaryFolder());
  const { undo } = await host.must('follow-up.add', { car: 'pip', text: 'A mistake', dueOn: day('2026-12-30') });
  const first = await written(host);
  await host.must('entry.withdraw', { entries: [...undo] });
  expect([...(await written(host))].filter(([, one]) => one.status === 'CANCELLED').map(([uid]) => first.get(uid)?.from)).toEqual(['2026-12-30']);
  await host.must('car.leave', { car: 'pip', how: 'scrapped', sure: true });
  const left = await written(host);
  expect([...first.keys()].filter((uid) => left.get(uid)?.status !== 'CANCELLED')).toEqual([]);
});
