import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runCommand } from '../cli/run-command.ts';
import { unzipped } from '../pack/unzipped.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from './open-test-host.ts';

/** Two cars that share a session and a fluid; one has a filter of its own on the shelf, an insurance and something due. */
async function household(): Promise<TestHost> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('specification.set', { id: 'dot4', name: 'DOT 4', unit: 'litre' });
  await host.must('specification.set', { id: 'filter', name: 'Filter F', unit: 'each' });
  for (const car of ['pip', 'moth']) {
    await host.must('car.add', { id: car, name: car, use: car === 'pip' ? 'everyday' : 'hobby', firstRegistered: day('2020-01-01'), keptSince: day('2020-01-01') });
    await host.must('item.add', { id: `${car}-fluid`, car, name: 'Brake fluid', interval: { repeat: { months: 24, distance: null } }, history: 'never-done', needs: [{ specification: 'dot4', quantity: 1 }, ...(car === 'pip' ? [{ specification: 'filter', quantity: 1 }] : [])] });
  }
  await host.must('obligation.add', { id: 'insured', car: 'pip', kind: 'insurance', name: 'Insurance', lastValidDay: day('2027-03-01') });
  for (const [part, meets] of [['fluid', 'dot4'], ['filter-f', 'filter']] as const) {
    await host.must('part.set', { id: part, name: part, meets: [meets] });
    await host.must('lot.set', { id: `lot-${part}`, part, quantity: 1, receivedOn: day('2026-01-01') });
  }
  await host.must('session.keep', { sessions: [{ day: day('2026-12-05'), place: 'home', tasks: [{ kind: 'item', id: 'pip-fluid' }, { kind: 'item', id: 'moth-fluid' }] }] });
  await host.must('record.add', { id: 'r1', car: 'pip', date: day('2026-01-02'), place: 'home', title: 'Bulb', lines: [{ name: 'Bulb' }], costs: [{ kind: 'parts', text: 'bulb', amountMinor: 500 }] });
  return host;
}

const dueCars = async (host: TestHost) => (await host.must('due.show', {})).cars.map((car) => car.id);
const lanes = async (host: TestHost) => (await host.must('yard.show', {})).lanes.map((lane) => lane.id);

test('a car that is sold leaves due, yard, needs and sessions, and keeps its records and its pack', async () => {
  const host = await household();
  expect(await host.must('car.leaving', { car: 'pip' })).toMatchObject({
    departure: null, obligations: [{ name: 'Insurance', lastValidDay: '2027-03-01' }], sessions: [{ day: '2026-12-05', alone: false }], shelf: [{ lot: 'lot-filter-f', left: 1 }], orders: [], bookings: [],
  });
  const left = await host.must('car.leave', { car: 'pip', how: 'sold', on: day('2026-11-24'), reading: { value: 50_000, unit: 'km' }, priceMinor: 300_000, buyer: 'A neighbour' });
  expect(left).toMatchObject({ departure: { on: '2026-11-24', how: 'sold', priceMinor: 300_000 }, sessions: { changed: 1, cancelled: 0 } });
  expect([await dueCars(host), await lanes(host)]).toEqual([['moth'], ['moth']]);
  expect((await host.must('sessions.show', {})).sessions.flatMap((one) => one.tasks.map((task) => task.car))).not.toContain('pip');
  expect((await host.must('needs.show', {})).needs.map((need) => need.car)).not.toContain('pip');
  const shown = await host.must('car.show', { car: 'pip' });
  expect([shown.records.map((one) => one.record.title), shown.readings.length]).toEqual([['Bulb'], 1]);
  expect(await host.must('car.left', {})).toMatchObject({ cars: [{ car: { id: 'pip' }, departure: { buyer: 'A neighbour' } }] });
  // To whom it went, and for how much, is not for its next keeper.
  const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
  const folder = unzipped(path, temporaryFolder());
  const inside = readdirSync(folder, { recursive: true, withFileTypes: true }).flatMap((file) => (file.isFile() ? [readFileSync(join(file.parentPath, file.name)).toString('latin1')] : [])).join('\n');
  expect([inside.includes('car-left'), inside.includes('A neighbour'), inside.includes('300000'), inside.includes('to whom it went')]).toEqual([true, false, false, true]);
  expect(await host.must('pack.check', { pack: path })).toMatchObject({ sound: true, faults: [], withheld: [{ field: 'buyer' }, { field: 'priceMinor' }] });
  expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
});

test('a departure is undone whole by its undo token, and taken back later by itself', async () => {
  const host = await household();
  const { undo } = await host.must('car.leave', { car: 'pip', how: 'scrapped' });
  await host.must('entry.withdraw', { entries: [...undo] });
  expect((await dueCars(host)).sort()).toEqual(['moth', 'pip']);
  expect((await host.must('car.leaving', { car: 'pip' })).sessions).toMatchObject([{ day: '2026-12-05' }]);
  await host.must('car.leave', { car: 'pip', how: 'scrapped' });
  await host.must('car.keep', { car: 'pip' });
  expect((await dueCars(host)).sort()).toEqual(['moth', 'pip']);
});

test('a session that was kept for that car alone is cancelled and stays to be seen', async () => {
  const host = await household();
  await host.must('car.leave', { car: 'moth', how: 'sold' });
  expect(await host.must('car.leave', { car: 'pip', how: 'sold' })).toMatchObject({ sessions: { changed: 0, cancelled: 1 } });
  expect(await dueCars(host)).toEqual([]);
});

test.each([
  { case: 'a day to come', request: { on: day('2026-12-24') }, code: 'date-in-future' },
  { case: 'before it was kept', request: { on: day('2019-12-24') }, code: 'left-before-kept' },
  { case: 'a reading that is no distance', request: { reading: { value: -1, unit: 'km' as const } }, code: 'not-a-distance' },
])('is refused: $case', async ({ request, code }) => {
  const host = await household();
  expect(await host.call('car.leave', { car: 'pip', how: 'sold', ...request })).toMatchObject({ ok: false, refusal: { code } });
  expect(await host.call('car.keep', { car: 'pip' })).toMatchObject({ ok: false, refusal: { code: 'car-has-not-left' } });
});

test('leave on the command line', async () => {
  const host = await household();
  await host.composed.close();
  const look = await runCommand('leave', 'pip', '--look', '--household', host.folder, '--on', '2026-11-25');
  expect(look.out).toContain('Insurance: runs until 1 Mar 2027.');
  expect(look.out).toContain('filter-f (1)');
  expect((await runCommand('leave', 'pip', '--household', host.folder)).status).toBe(2);
  const ran = await runCommand('leave', 'pip', '--sold', '--date', '2026-11-24', '--household', host.folder, '--on', '2026-11-25');
  expect([ran.status, ran.out]).toEqual([0, expect.stringContaining('pip left on 24 Nov 2026. Sessions that go on without it: 1; cancelled: 0.')]);
  expect((await runCommand('leave', 'pip', '--sold', '--household', host.folder)).status).toBe(1);
});
