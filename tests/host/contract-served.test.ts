import { describe, expect, test } from 'vitest';
import { operationNames } from '../../shared-core/contract/contract.ts';
import { day, openHouseholdWithPip, openTestHost } from './open-test-host.ts';

describe('the contract over a real file', () => {
  test.each([
    { case: 'an operation that is not there', name: 'car.sell', request: {}, code: 'unknown-operation' },
    { case: 'a name from the object\'s own parts', name: 'constructor', request: {}, code: 'unknown-operation' },
    { case: 'a field that is not there', name: 'car.add', request: { name: 'A', colour: 'red' }, code: 'unknown-field' },
    { case: 'no request at all', name: 'car.add', request: null, code: 'not-understood' },
    { case: 'an empty name', name: 'car.add', request: { name: '  ' }, code: 'text-empty' },
    { case: 'a name that is too long', name: 'car.add', request: { name: 'x'.repeat(61) }, code: 'text-too-long' },
    { case: 'a control character', name: 'car.add', request: { name: 'a\u0007b' }, code: 'control-characters' },
    { case: 'a character that turns the writing round', name: 'car.add', request: { name: 'a\u202eb' }, code: 'control-characters' },
    { case: 'a date that does not exist', name: 'car.add', request: { name: 'A', firstRegistered: '2026-02-30' }, code: 'not-a-date' },
    { case: 'a date to come', name: 'car.add', request: { name: 'A', firstRegistered: '2027-01-01' }, code: 'date-in-future' },
    { case: 'a VIN with the letter O', name: 'car.add', request: { name: 'A', vin: '1M8GDM9AXKP04278O' }, code: 'not-a-vin' },
    { case: 'two cars of one name', name: 'car.add', request: { name: 'PIP' }, code: 'car-name-taken' },
    { case: 'a negative reading', name: 'reading.record', request: { car: 'pip', value: -1 }, code: 'not-a-distance' },
    { case: 'an absurd reading', name: 'reading.record', request: { car: 'pip', value: 1e12 }, code: 'not-a-distance' },
    { case: 'a reading of an unknown unit', name: 'reading.record', request: { car: 'pip', value: 1, unit: 'furlong' }, code: 'unknown-unit' },
    { case: 'a reading of an unknown car', name: 'reading.record', request: { car: 'nobody', value: 1 }, code: 'unknown-car' },
    { case: 'a reading to come', name: 'reading.record', request: { car: 'pip', value: 20_000, date: '2026-11-26' }, code: 'date-in-future' },
    { case: 'an interval of nothing', name: 'item.add', request: { car: 'pip', name: 'Oil', interval: { repeat: { months: null, distance: null } } }, code: 'interval-empty' },
    { case: 'a record of an unknown paper', name: 'record.add', request: { car: 'pip', lines: [{ name: 'Oil' }], papers: ['0'.repeat(64)] }, code: 'unknown-paper' },
    { case: 'a record of no line', name: 'record.add', request: { car: 'pip', lines: [] }, code: 'not-understood' },
    { case: 'an amount in parts of a penny', name: 'record.add', request: { car: 'pip', lines: [{ name: 'Oil' }], costs: [{ kind: 'parts', text: 'oil', amountMinor: 1.5 }] }, code: 'not-an-amount' },
    { case: 'a household started twice', name: 'household.start', request: {}, code: 'household-started' },
  ])('refuses $case and changes nothing', async ({ name, request, code }) => {
    const host = await openHouseholdWithPip();
    const before = await host.must('household.examine', {});
    const reply = await host.composed.call(name, request);
    expect(reply).toMatchObject({ ok: false, refusal: { code } });
    expect(await host.must('household.examine', {})).toEqual(before);
  });

  test('names the field at fault', async () => {
    const host = await openHouseholdWithPip();
    const reply = await host.composed.call('item.add', { car: 'pip', name: 'Oil', interval: { repeat: { months: 0, distance: null } } });
    expect(reply).toMatchObject({ ok: false, refusal: { code: 'not-months', path: ['interval', 'repeat', 'months'] } });
  });

  test('refuses an unknown currency', async () => {
    expect(await openTestHost().composed.call('household.start', { currency: 'XAU' })).toMatchObject({ ok: false, refusal: { code: 'unknown-currency' } });
  });

  test('every screen refuses a folder that has not been started', async () => {
    const host = openTestHost();
    expect(await host.composed.call('yard.show', {})).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
    expect(await host.must('household.state', {})).toMatchObject({ household: null, sample: false });
  });

  test('has no operation without a kind', () => {
    expect(operationNames.length).toBeGreaterThan(25);
  });
});

describe('due windows through the contract', () => {
  test('brake fluid first at 36 months and then every 24, at 48 months with none recorded: 12 months late; done today, next in 24 months', async () => {
    // Source: common practice, no source. Registered 2022-11-25, today 2026-11-25.
    const host = await openHouseholdWithPip();
    await host.must('item.add', { id: 'fluid', car: 'pip', name: 'Brake fluid', interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } }, history: 'never-done' });
    const before = (await host.must('due.show', {})).cars[0]?.windows[0];
    expect(before).toMatchObject({ state: 'late', limb: 'time', lateBy: { days: 365, months: 12, distance: null }, likely: '2025-11-25' });
    await host.must('record.add', { car: 'pip', lines: [{ item: 'fluid' }] });
    const after = (await host.must('due.show', {})).cars[0]?.windows[0];
    expect(after).toMatchObject({ state: 'ahead', earliest: '2028-11-25', likely: '2028-11-25', latest: '2028-11-25', arrangeFrom: '2028-11-11', lateBy: null });
  });

  test('an item of unknown history has no date', async () => {
    const host = await openHouseholdWithPip();
    await host.must('item.add', { car: 'pip', name: 'Coolant', interval: { repeat: { months: 60, distance: null } } });
    expect((await host.must('due.show', {})).cars[0]?.windows[0]).toMatchObject({ state: 'unknown', likely: null, limb: null, reason: { code: 'reason-unknown' } });
  });

  test('a reading past the target makes it late by distance, whatever the date', async () => {
    const host = await openHouseholdWithPip({ on: '2025-01-11' });
    await host.must('item.add', { car: 'pip', name: 'Oil', interval: { repeat: { months: 60, distance: { value: 17_000, unit: 'mi' } } }, history: 'never-done' });
    expect((await host.must('due.show', {})).cars[0]?.windows[0]).toMatchObject({ state: 'late', limb: 'distance', lateBy: { days: 0, months: 0, distance: { value: 1000, unit: 'mi' } } });
  });
});

describe('readings through the contract', () => {
  test('a doubtful reading is kept, set aside, moves no forecast, and is settled', async () => {
    const host = await openHouseholdWithPip();
    const odometer = (await host.must('due.show', {})).cars[0]?.odometer;
    const reply = await host.must('reading.record', { id: 'r3', car: 'pip', value: 2790, date: day('2026-01-10') });
    expect(reply).toMatchObject({ state: 'set-aside', code: 'decrease' });
    expect((await host.must('due.show', {})).cars[0]).toMatchObject({ odometer, doubtful: [{ reading: 'r3', value: 2790, code: 'decrease' }] });
    await host.must('reading.settle', { reading: 'r3', verdict: 'corrected', value: 27_900 });
    const settled = (await host.must('due.show', {})).cars[0];
    expect(settled?.doubtful).toEqual([]);
    expect(settled?.odometer?.low).toBeGreaterThan(27_900);
  });

  test('a replaced instrument goes on from where the old one stood', async () => {
    const host = await openHouseholdWithPip();
    await host.must('reading.record', { car: 'pip', value: 10, date: day('2025-06-01'), replaced: { lastShown: { value: 21_000, unit: 'mi' } } });
    await host.must('reading.record', { car: 'pip', value: 4000, date: day('2025-11-01') });
    const lane = (await host.must('yard.show', {})).lanes[0];
    expect(lane).toMatchObject({ doubtful: [], instrumentReplacedOn: '2025-06-01' });
    expect(lane?.odometer?.low).toBeGreaterThan(4000);
    expect(lane?.odometer?.high).toBeLessThan(30_000);
  });
});

describe('undoing', () => {
  test('puts back what stood before, and stays in the journal', async () => {
    const host = await openHouseholdWithPip();
    const before = await host.must('car.show', { car: 'pip' });
    const changed = await host.must('car.change', { id: 'pip', name: 'Pipkin' });
    await host.must('entry.withdraw', { entries: [...changed.undo], why: 'slip' });
    expect(await host.must('car.show', { car: 'pip' })).toEqual(before);
    const examined = await host.must('household.examine', {});
    expect(examined).toMatchObject({ entries: 6, faults: [] });
  });

  test('takes a whole record with its reading, in one step', async () => {
    const host = await openHouseholdWithPip();
    const before = await host.must('car.show', { car: 'pip' });
    const added = await host.must('record.add', { car: 'pip', reading: { value: 27_000, unit: 'mi' }, lines: [{ name: 'Tyres looked at', work: 'check' }] });
    expect(added.undo).toHaveLength(2);
    await host.must('entry.withdraw', { entries: [...added.undo] });
    expect(await host.must('car.show', { car: 'pip' })).toEqual(before);
  });

  test('is refused from under what stands upon it', async () => {
    const host = await openHouseholdWithPip();
    expect(await host.call('entry.withdraw', { entries: [1] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use', values: { by: 2 } } });
    const reading = await host.must('reading.record', { car: 'pip', value: 27_000 });
    await host.must('entry.withdraw', { entries: [...reading.undo] });
    expect(await host.call('entry.withdraw', { entries: [...reading.undo] })).toMatchObject({ ok: false, refusal: { code: 'withdrawn-already' } });
    expect(await host.call('entry.withdraw', { entries: [99] })).toMatchObject({ ok: false, refusal: { code: 'nothing-to-withdraw' } });
  });
});
