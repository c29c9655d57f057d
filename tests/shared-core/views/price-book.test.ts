import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { packTakenIn } from '../../../shared-core/records/previous-pack.ts';
import { planInput } from '../../../shared-core/views/plan-input.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const TODAY = day('2026-11-25');

/** Oil of which a job takes 4 litres; a pack of 5 costs 40.00 here and of 1 costs 9.00 there; north brings it in three days. */
function household(item: Partial<RequestOf<'item.add'>> = {}): MemoryHousehold {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-12-20') });
  made.must('specification.set', { id: 'oil', name: 'engine oil', unit: 'litre' });
  made.must('part.set', { id: 'can', name: 'oil', meets: ['oil'] });
  made.must('supplier.set', { id: 'north', name: 'North Parts', leadDays: 3 });
  made.must('item.add', { id: 'oil-change', car: 'pip', name: 'engine oil', history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs: [{ specification: 'oil', quantity: 4 }], ...item });
  return made;
}

const offer = (made: MemoryHousehold, quantity: number, priceMinor: number) => made.must('offer.set', { id: `pack-${quantity}`, supplier: 'north', part: 'can', quantity, priceMinor, seenOn: day('2026-11-01') });
const task = (made: MemoryHousehold) => planInput(made.facts(), TODAY, null).tasks.find((one) => one.ref.id === 'oil-change');
const record = (made: MemoryHousehold, more: Partial<RequestOf<'record.add'>>) => made.must('record.add', { car: 'pip', date: day('2026-11-20'), lines: [{ item: 'oil-change', outcome: 'not-done' }], ...more });
const cost = (kind: 'parts' | 'labour' | 'tools', amountMinor: number) => ({ kind, text: kind, amountMinor });

describe('what a job costs', () => {
  test.each([
    { case: 'the cheapest offer by the unit', state: (made: MemoryHousehold) => [offer(made, 5, 4000), offer(made, 1, 900)], home: 3200, missing: false, source: 'by hand: 4 * 8.00' },
    { case: 'what the lot on the shelf was bought for, with its delivery', state: (made: MemoryHousehold) => [offer(made, 5, 4000), made.must('lot.set', { part: 'can', quantity: 5, receivedOn: day('2026-01-01'), paidMinor: 4500 })], home: 3600, missing: false, source: 'by hand: 4 * 9.00' },
    { case: 'but not of a lot that has expired', state: (made: MemoryHousehold) => [offer(made, 5, 4000), made.must('lot.set', { part: 'can', quantity: 5, receivedOn: day('2026-01-01'), expires: day('2026-11-24'), paidMinor: 4500 })], home: 3200, missing: false, source: 'by hand' },
    { case: 'with no offer, what was last paid for it alone at home, tools left out', state: (made: MemoryHousehold) => [record(made, { costs: [cost('parts', 3100), cost('tools', 9900)] })], home: 3100, missing: false, source: 'by hand' },
    { case: 'what was paid for several jobs is no price of one', state: (made: MemoryHousehold) => [record(made, { lines: [{ item: 'oil-change', outcome: 'not-done' }, { name: 'wash' }], costs: [cost('parts', 3100)] })], home: 0, missing: true, source: 'by hand' },
    { case: 'nothing is known', state: () => [], home: 0, missing: true, source: 'by hand' },
  ])('at home: $case ($source)', ({ state, home, missing }) => {
    const made = household();
    state(made);
    expect([task(made)?.prices.get('home'), task(made)?.priceMissing]).toEqual([home, missing]);
  });

  test.each([
    { case: 'as entered', item: { garagePrice: 9000 }, paid: null, garage: 9000, source: 'by hand' },
    { case: 'as last paid for it alone', item: {}, paid: 8700, garage: 8700, source: 'by hand' },
    { case: 'not known, and it may be done at home: no garage is offered', item: {}, paid: null, garage: undefined, source: 'by hand' },
    { case: 'not known, and only a garage can: it counts as nothing', item: { place: 'garage' as const }, paid: null, garage: 0, source: 'by hand' },
    { case: 'only at home', item: { place: 'home' as const, garagePrice: 9000 }, paid: null, garage: undefined, source: 'by hand' },
  ])('at a garage: $case ($source)', ({ item, paid, garage }) => {
    const made = household(item);
    if (paid !== null) record(made, { place: 'garage', costs: [cost('labour', paid)] });
    expect(task(made)?.prices.get('garage')).toBe(garage);
  });

  test.each([
    { case: 'one’s own', note: null, price: 8700, source: 'by hand' },
    { case: 'an earlier keeper’s in the same currency', note: 'GBP', price: 8700, source: 'by hand' },
    { case: 'an earlier keeper’s in another one', note: 'EUR', price: undefined, source: 'our own rule: no rate is known' },
  ])('what was paid is a price where its currency is this one: $case ($source)', ({ note, price }) => {
    const made = household();
    record(made, { id: 'paid', place: 'garage', costs: [cost('labour', 8700)] });
    const entry = newEntry(packTakenIn, { id: 'pack', car: 'pip', pack: 'ab'.repeat(32), bytes: 9, name: 'pip-history', composedOn: TODAY, takenOn: TODAY, rows: 1, keyFingerprint: 'cd'.repeat(32), sealed: false, carThere: 'pip', records: [{ id: 'paid', entered: '2026-11-20T09:00:00.000Z' }], others: [], currency: note });
    const facts = memoryFacts(entryKinds, [...made.entries, ...(note === null ? [] : [{ ...entry, seq: made.entries.length, at: '2026-11-25T12:00:00.000Z' }])]);
    expect(planInput(facts, TODAY, null).tasks.find((one) => one.ref.id === 'oil-change')?.prices.get('garage')).toBe(price);
  });

  test('its worth is that of the cheaper place', () => {
    const made = household({ garagePrice: 2000 });
    offer(made, 5, 4000);
    expect(task(made)?.valueMinor).toBe(2000);
  });

  test('parts that are not on the shelf are at home the day after the shortest delivery; several lots do together', () => {
    const made = household();
    expect(task(made)?.partsFrom).toBeNull();
    offer(made, 5, 4000);
    expect(task(made)?.partsFrom).toBe('2026-11-29');
    made.must('lot.set', { part: 'can', quantity: 3, receivedOn: day('2026-01-01') });
    expect(task(made)?.partsFrom).toBe('2026-11-29');
    made.must('lot.set', { part: 'can', quantity: 1, receivedOn: day('2026-01-01') });
    expect(task(made)?.partsFrom).toBeNull();
  });

  test.each([
    { case: 'sooner than bought anew', lead: 25, expectedOn: '2026-12-03', from: '2026-12-04', source: 'by hand: the day after it is here' },
    { case: 'later than bought anew, but by when it is due', lead: 3, expectedOn: '2026-12-15', from: '2026-12-16', source: 'by hand: it is not bought twice' },
    { case: 'much too late', lead: 3, expectedOn: '2027-12-15', from: '2026-11-29', source: 'by hand: 25 November and 3 days, and the day after' },
  ])('what is on the way $case is there from $from ($source)', ({ lead, expectedOn, from }) => {
    const made = household();
    offer(made, 5, 4000);
    made.must('supplier.set', { id: 'north', name: 'North Parts', leadDays: lead });
    made.must('order.place', { supplier: 'north', lines: [{ part: 'can', packs: 1, quantity: 5, priceMinor: 4000 }], expectedOn: day(expectedOn) });
    expect(task(made)?.partsFrom).toBe(from);
  });

  test('a can is given to one task only: to what is fixed, else to what is due first', () => {
    const made = household();
    offer(made, 5, 4000);
    made.must('item.add', { id: 'more', car: 'pip', name: 'More oil', history: 'never-done', interval: { repeat: { months: 240, distance: null } }, needs: [{ specification: 'oil', quantity: 4 }] });
    made.must('lot.set', { part: 'can', quantity: 5, receivedOn: day('2026-01-01') });
    const from = () => Object.fromEntries(planInput(made.facts(), TODAY, null).tasks.flatMap((one) => (one.ref.kind === 'item' ? [[one.ref.id, one.partsFrom]] : [])));
    expect(from()).toMatchObject({ 'oil-change': null, 'more': '2026-11-29' });
    made.must('session.keep', { sessions: [{ day: day('2026-12-05'), place: 'home', tasks: [{ kind: 'item', id: 'more' }] }] });
    expect(from()).toMatchObject({ 'oil-change': '2026-11-29', 'more': null });
  });
});

describe('a kept task', () => {
  test('is done by a renewal since, and not by one before', () => {
    const made = household();
    made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-12-17'), keepsDate: true });
    made.must('obligation.renew', { obligation: 'test', on: day('2026-11-24'), lastValidDay: day('2026-12-17') });
    made.must('session.keep', { sessions: [{ day: day('2026-12-04'), place: 'garage', tasks: [{ kind: 'obligation', id: 'test' }] }] });
    expect(planInput(made.facts(), TODAY, null).pinned).toHaveLength(1);
    made.on('2026-12-02').must('obligation.renew', { obligation: 'test' });
    expect(planInput(made.facts(), day('2026-12-02'), null).pinned).toEqual([]);
  });
});
