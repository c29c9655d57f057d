import { describe, expect, test } from 'vitest';
import { layUps } from '../../shared-core/fleet/lay-up.ts';
import { day, openHouseholdWithPip, openTestHost } from '../host/open-test-host.ts';

describe('the start of a household', () => {
  test('cannot be withdrawn from under what stands upon it', async () => {
    const host = await openHouseholdWithPip();
    expect(await host.call('entry.withdraw', { entries: [0] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use', values: { by: 1 } } });
    const changed = await host.must('household.change', { name: 'Renamed' });
    expect(await host.call('entry.withdraw', { entries: [0, ...changed.undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use', values: { by: 1 } } });
    await host.must('entry.withdraw', { entries: [...changed.undo] });
    expect(await host.must('household.state', {})).toMatchObject({ household: { name: 'Test household' } });
  });

  test('can be withdrawn where nothing else stands, and made again', async () => {
    const host = openTestHost();
    await host.must('household.start', { currency: 'GBP' });
    const car = await host.must('car.add', { name: 'Pip' });
    await host.must('entry.withdraw', { entries: [0, ...car.undo] });
    expect(await host.must('household.state', {})).toMatchObject({ household: null });
    await host.must('household.start', { currency: 'EUR' });
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 4, faults: [] });
  });
});

describe('several entries at once', () => {
  test('are withdrawn in any order, each once, and put back what stood before the first', async () => {
    const host = await openHouseholdWithPip();
    const names = [];
    for (const name of ['One', 'Two', 'Three']) names.push(...(await host.must('car.change', { id: 'pip', name })).undo);
    const [one = 0, two = 0, three = 0] = names;
    expect(await host.call('entry.withdraw', { entries: [two] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use', values: { by: three } } });
    expect(await host.must('entry.withdraw', { entries: [three, two, three] })).toMatchObject({ withdrawn: 2 });
    expect((await host.must('car.show', { car: 'pip' })).car.name).toBe('One');
    await host.must('entry.withdraw', { entries: [one] });
    expect((await host.must('car.show', { car: 'pip' })).car.name).toBe('Pip');
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('are all refused where one is', async () => {
    const host = await openHouseholdWithPip();
    const reading = await host.must('reading.record', { car: 'pip', value: 27_000 });
    expect(await host.call('entry.withdraw', { entries: [...reading.undo, 1] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use' } });
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 5, faults: [] });
    await host.must('entry.withdraw', { entries: [...reading.undo] });
  });

  test('of a withdrawal itself is refused: it is not undone', async () => {
    const host = await openHouseholdWithPip();
    const reading = await host.must('reading.record', { car: 'pip', value: 27_000 });
    await host.must('entry.withdraw', { entries: [...reading.undo] });
    expect(await host.call('entry.withdraw', { entries: [5] })).toMatchObject({ ok: false, refusal: { code: 'nothing-to-withdraw' } });
  });
});

test.each([
  { operation: 'supplier.set', request: { name: 'North', leadDays: 3 } },
  { operation: 'specification.set', request: { name: 'Oil A', unit: 'litre' } },
  { operation: 'car.add', request: { name: 'Pip' } },
  { operation: 'paper.keep', request: { name: 'a', base64: 'AAAA' } },
])('nothing is written before a household is started: $operation', async ({ operation, request }) => {
  const host = openTestHost();
  expect(await host.composed.call(operation, request)).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
  expect(await host.must('household.examine', {})).toMatchObject({ entries: 0, papers: 0, faults: [] });
});

describe('what was taken away and stated again', () => {
  test('begins with its second statement, also once a later one is withdrawn', async () => {
    const host = await openHouseholdWithPip();
    const rest = (note: string) => host.must('lay-up.set', { id: 'rest', car: 'pip', from: day('2026-01-01'), to: day('2026-02-01'), note });
    await rest('one');
    await host.must('lay-up.remove', { id: 'rest' });
    const [again = 0] = (await rest('two')).undo;
    const third = await rest('three');
    await host.must('entry.withdraw', { entries: [...third.undo] });
    const stamp = host.composed.context.household().facts.stamps(layUps, 'pip').get('rest');
    expect(stamp).toMatchObject({ seq: again, firstSeq: again });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });
});
