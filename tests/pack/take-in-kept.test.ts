import { expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { day, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { png } from '../papers/small-files.ts';
import { handedOver, keeper, nextKeeper, readPack } from './keepers.ts';

async function firstKeeper(on = '2026-03-02'): Promise<TestHost> {
  const host = await keeper(on);
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await host.must('record.add', { id: 'first', car: 'pip', date: day('2026-03-01'), place: 'home', title: 'Frist', lines: [{ name: 'oil' }] });
  return host;
}

const onlyRecord = async (host: TestHost, car: string) => must((await host.must('car.show', { car })).records[0], 'record');

test('papers tied to a record, to what was seen and to the car stay tied; one that was untied is not', async () => {
  const first = await firstKeeper();
  await first.must('observation.note', { id: 'seen', car: 'pip', text: 'A damp patch' });
  const keep = async (name: string, size: number) => (await first.must('paper.keep', { name, base64: png(size, size).toString('base64') })).paper.id;
  const [bill = '', photo = '', cover = '', wrong = ''] = [await keep('bill.png', 8), await keep('photo.png', 9), await keep('cover.png', 10), await keep('wrong.png', 11)];
  await first.must('paper.tie', { paper: bill, to: [{ kind: 'record', id: 'first' }] });
  await first.must('paper.tie', { paper: photo, to: [{ kind: 'observation', id: 'seen' }] });
  await first.must('paper.tie', { paper: cover, to: [{ kind: 'car', id: 'pip' }] });
  const { ties } = await first.must('paper.tie', { paper: wrong, to: [{ kind: 'record', id: 'first' }] });
  await first.must('paper.untie', { tie: ties[0]?.id ?? '' });
  const { host, car } = await nextKeeper(await handedOver(first), '2026-06-01');
  const view = await host.must('car.show', { car });
  expect([view.records[0]?.record.papers, view.observations[0]?.papers]).toEqual([[bill], [photo]]);
  expect(view.papers.map((one) => one.id).sort()).toEqual([bill, photo, cover].sort());
  const { history } = readPack(await handedOver(host));
  expect(history.papers.map((one) => one.sha256).sort()).toEqual([bill, photo, cover].sort());
});

test('an amended record keeps what was written first, and when and why it was amended, from keeper to keeper', async () => {
  const first = await firstKeeper();
  await first.must('record.amend', { id: 'first', title: 'First', why: 'a slip of the pen' });
  const second = await nextKeeper(await handedOver(first), '2026-06-01');
  const third = await nextKeeper(await handedOver(second.host), '2026-09-01');
  for (const { host, car } of [second, third]) {
    const { record, enteredAt, written, amended } = await onlyRecord(host, car);
    expect([record.title, enteredAt.slice(0, 10), written, amended]).toEqual(['First', '2026-03-02', 'within-a-week', true]);
    const { versions } = await host.must('record.show', { record: record.id });
    expect(versions).toMatchObject([{ on: '2026-03-02', why: null, record: { title: 'Frist' } }, { on: '2026-03-02', why: 'a slip of the pen', changed: ['title'], record: { title: 'First' } }]);
    expect(readPack(await handedOver(host)).said).toMatch(/Amended on 2 Mar 2026, 09:00 UTC: a slip of the pen/);
    expect((await host.must('household.examine', {})).faults).toEqual([]);
  }
});

test('a taking in with amendments and ties is undone as a whole, never in part', async () => {
  const first = await firstKeeper();
  await first.must('record.amend', { id: 'first', title: 'First', why: 'a slip of the pen' });
  const path = await handedOver(first);
  const second = await keeper('2026-06-01');
  const { undo } = await second.must('pack.take-in', { pack: path });
  expect(await second.call('entry.withdraw', { entries: undo.slice(1), why: 'mine' })).toMatchObject({ ok: false, refusal: { code: 'pack-goes-whole' } });
  await second.must('entry.withdraw', { entries: undo, why: 'the wrong car' });
  expect((await second.must('due.show', {})).cars).toEqual([]);
});

test('what was seen and put into other words is taken as it was amended', async () => {
  const first = await firstKeeper();
  await first.must('observation.note', { id: 'seen', car: 'pip', text: 'damp' });
  await first.must('observation.amend', { id: 'seen', text: 'Oil weeps at the sump', severity: 'soon' });
  const { host, car } = await nextKeeper(await handedOver(first), '2026-06-01');
  expect((await host.must('car.show', { car })).observations).toMatchObject([{ text: 'Oil weeps at the sump', severity: 'soon', closedOn: null }]);
});

test('measurements, wheels, renewals, rests and figures of the data card come along, each as an earlier keeper’s', async () => {
  const first = await firstKeeper();
  await first.must('wheel.add', { id: 'w', car: 'pip', name: 'A', place: 'front-left', on: day('2025-01-01') });
  await first.must('measurement.add', { car: 'pip', what: 'pad', place: 'front-right', value: 5.5, unit: 'mm', date: day('2026-03-01') });
  await first.must('measurement.add', { car: 'pip', what: 'tread', wheel: 'w', value: 6, unit: 'mm', date: day('2026-03-01') });
  await first.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-03-20'), months: 12 });
  await first.must('obligation.renew', { obligation: 'test', on: day('2026-03-01'), paidMinor: 5400 });
  await first.must('lay-up.set', { car: 'pip', from: day('2025-11-01'), to: day('2026-02-28') });
  await first.must('card.set', { car: 'pip', key: 'own', name: 'Bulb of the glove box', value: 'W5W', source: 'handbook p. 212' });
  const { host, car } = await nextKeeper(await handedOver(first), '2026-06-01');
  const view = await host.must('car.show', { car });
  const points = view.measured.flatMap((one) => one.points.map(({ measurement }) => measurement));
  expect(points.map((one) => [one.what, one.typed.value]).sort()).toEqual([['pad', 5.5], ['tread', 6]]);
  expect(view.wheels.map((one) => one.wheel.name)).toEqual(['A']);
  expect(view.layUps).toMatchObject([{ from: '2025-11-01', to: '2026-02-28' }]);
  expect(view.obligations).toMatchObject([{ kind: 'roadworthiness-test', lastValidDay: '2027-03-20' }]);
  expect(view.costs).toEqual([]);
  const earlier = new Set(view.earlier.map((one) => one.id));
  expect(points.every((one) => earlier.has(one.id))).toBe(true);
  const card = JSON.stringify(await host.must('card.show', { car }));
  expect(card).toContain('earlier keeper’s pack: handbook p. 212');
  const again = await nextKeeper(await handedOver(host), '2026-09-01');
  const cardAgain = JSON.stringify(await again.host.must('card.show', { car: again.car }));
  expect(cardAgain).toContain('"earlier keeper’s pack: handbook p. 212"');
});

test('how long an earlier keeper took is not learned as one’s own', async () => {
  const first = await keeper('2026-03-02');
  await first.must('car.add', { id: 'pip', name: 'Pip' });
  await first.must('item.add', { id: 'oil', car: 'pip', name: 'oil', interval: { repeat: { months: 12, distance: null } }, history: 'never-done' });
  await first.must('record.add', { car: 'pip', date: day('2026-03-01'), place: 'home', title: 'Oil', lines: [{ item: 'oil', minutes: 90 }] });
  expect((await first.must('car.show', { car: 'pip' })).items[0]?.learned).toMatchObject({ minutes: 90 });
  const { host, car } = await nextKeeper((await first.must('pack.write', { car: 'pip', out: temporaryFolder() })).path, '2026-06-01');
  expect((await host.must('car.show', { car })).items[0]?.learned).toBeNull();
});
