import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { day } from '../shared-core/calendar/day.ts';
import { temporaryFolder } from './open-test-host.ts';

type Event = { readonly uid: string; readonly sequence: number; readonly status: string | null; readonly from: string };

/** Opens the household on a day, changes it, and answers the sessions of the calendar file it then writes. */
async function on(folder: string, date: string, ...changes: readonly (readonly [string, object])[]): Promise<readonly Event[]> {
  const host = composeHost(folder, realWorld(day(date)));
  if (!host.ok) throw new Error(host.refusal.code);
  for (const [name, request] of changes) {
    const reply = await host.value.call(name as 'car.add', request as never);
    if (!reply.ok) throw new Error(`refused ${name}: ${JSON.stringify(reply.refusal)}`);
  }
  const written = await host.value.call('calendar.write', { omit: ['item', 'obligation'] });
  await host.value.close();
  if (!written.ok) throw new Error(JSON.stringify(written.refusal));
  const events = new ICAL.Component(ICAL.parse((written.value as { text: string }).text) as unknown[]).getAllSubcomponents('vevent');
  return events.map((one) => ({
    uid: String(one.getFirstPropertyValue('uid')), sequence: Number(one.getFirstPropertyValue('sequence')),
    status: one.getFirstPropertyValue('status') as string | null, from: String(one.getFirstPropertyValue('dtstart')),
  }));
}

const START = [
  ['household.start', { name: 'Ours' }],
  ['car.add', { id: 'pip', name: 'Pip', power: 'petrol', year: 2020, firstRegistered: '2020-03-01' }],
  ...['oil', 'plugs'].map((id) => ['item.add', { id, car: 'pip', name: id, interval: { repeat: { months: 12, distance: null } } }] as const),
  ['session.keep', { sessions: [{ id: 'one', day: '2026-12-05', place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }, { id: 'other', day: '2026-12-12', place: 'home', tasks: [{ kind: 'item', id: 'plugs' }] }] }],
] as const;

test('a session that joins another one, or is dropped, is cancelled in the next file, and forgotten a month after its day', async () => {
  const folder = temporaryFolder();
  const first = await on(folder, '2026-11-25', ...START);
  expect(first.map((one) => [one.from, one.status])).toEqual([['2026-12-05', null], ['2026-12-12', null]]);
  const joined = await on(folder, '2026-11-26', ['session.move', { session: 'one', day: '2026-12-12' }]);
  expect(joined.map((one) => [one.uid, one.status])).toEqual([[first[1]?.uid, null], [first[0]?.uid, 'CANCELLED']]);
  const dropped = await on(folder, '2026-11-26', ['session.end', { session: 'other', as: 'cancelled' }]);
  expect(dropped.map((one) => one.status)).toEqual(['CANCELLED', 'CANCELLED']);
  expect(await on(folder, '2027-02-01')).toEqual([]);
});

test('each file stands over the one before: with the day alone, and with every entry', async () => {
  const folder = temporaryFolder();
  const [first] = await on(folder, '2026-11-25', ...START);
  const [next] = await on(folder, '2026-11-26');
  const [last] = await on(folder, '2026-11-26', ['session.move', { session: 'one', day: '2026-12-06' }]);
  expect(next?.sequence).toBeGreaterThan(first?.sequence ?? 0);
  expect(last?.sequence).toBeGreaterThan(next?.sequence ?? 0);
});
