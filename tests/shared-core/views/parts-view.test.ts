import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

const show = (household: MemoryHousehold) => household.must('parts.show', {});
const item = (household: MemoryHousehold, car: 'pip' | 'alder', name: string, needs: readonly (readonly [string, number])[]) =>
  household.must('item.add', { id: `${car}-${name}`, car, name, history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs: needs.map(([specification, quantity]) => ({ specification, quantity })) });
const keep = (household: MemoryHousehold, on: string, ...items: readonly string[]) => household.must('session.keep', { sessions: [{ day: day(on), place: 'home', tasks: items.map((id) => ({ kind: 'item' as const, id })) }] });
const lot = (household: MemoryHousehold, id: string, quantity: number, more: Partial<RequestOf<'lot.set'>> = {}) => household.must('lot.set', { id, part: 'can', quantity, receivedOn: day('2026-02-01'), ...more });

describe('the parts of a household', () => {
  test('a specification: who asks for it, what meets it and who says so, what it may not meet', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    household.must('specification.set', { id: 'green', name: 'coolant A', unit: 'litre', fluid: { use: 'coolant', base: 'organic-acid' } });
    household.must('specification.set', { id: 'blue', name: 'coolant B', unit: 'litre', fluid: { use: 'coolant', base: 'inorganic-acid' } });
    household.must('part.set', { id: 'can', name: 'Fern oil', meets: ['oil'], stated: [{ specification: 'oil', by: 'car-maker', basis: 'approval', source: 'list of 2024' }] });
    lot(household, 'l1', 5);
    lot(household, 'old', 2, { expires: day('2026-11-24') });
    const [blue, green, oil] = ['blue', 'green', 'oil'].map((id) => show(household).specifications.find((one) => one.specification.id === id));
    expect(oil).toMatchObject({ askedBy: [{ car: 'pip', item: 'pip-oil', quantity: 4 }], metBy: [{ part: 'can', said: 'approved, as stated by the maker of the car (list of 2024)', offers: 2, onShelf: 5 }], onShelf: 5, neverWith: [] });
    expect([green?.neverWith.map((one) => one.specification), blue?.neverWith[0]?.why.text]).toEqual([['blue'], 'coolant B is made on inorganic acid and coolant A on organic acid: they are not to be mixed.']);
  });

  test('a part: the numbers before its own and after', () => {
    const household = partsHousehold();
    household.must('number.supersede', { old: 'F-0', new: 'F 1' });
    household.must('number.supersede', { old: 'F1', new: 'F9' });
    expect(show(household).parts.find((one) => one.part.id === 'f1')).toMatchObject({ numberNow: 'F9', formerNumbers: ['F-0'], unit: 'each' });
    expect(show(household).offers.find((one) => one.offer.id === 'n-f1')).toMatchObject({ numberNow: 'F9', stale: false, ageDays: 24 });
  });
});

describe('the shelf', () => {
  test('says what to use first, what has expired, and what is used up', () => {
    const household = partsHousehold();
    lot(household, 'whole', 5, { paidMinor: 3000 });
    lot(household, 'begun', 5, { expires: day('2027-05-01'), paidMinor: 3001 });
    lot(household, 'old', 1, { expires: day('2026-11-24') });
    lot(household, 'empty', 1);
    household.must('lot.use', { lot: 'begun', quantity: 2.5 });
    household.must('lot.use', { lot: 'empty', quantity: 1 });
    expect(show(household).shelf.map((one) => [one.lot.id, one.state, one.left, one.useAs, one.worthMinor])).toEqual([['begun', 'opened', 2.5, 1, 1501], ['whole', 'whole', 5, 2, 3000], ['old', 'expired', 1, null, null], ['empty', 'used-up', 0, null, null]]);
    expect(show(household).notes.map((one) => one.text)).toEqual(['Fern oil, 1 litre left, was good until 24 Nov 2026. Keep it for disposal.']);
  });
});

describe('a session at home', () => {
  test('takes from the shelf and from what is on the way, and what one takes the next lacks', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    item(household, 'alder', 'oil', [['oil', 4]]);
    lot(household, 'l1', 5, { where: 'shelf, floor' });
    keep(household, '2026-11-29', 'pip-oil');
    keep(household, '2026-12-05', 'alder-oil');
    household.must('order.place', { supplier: 'north', lines: [{ part: 'can', packs: 1, quantity: 2, priceMinor: 1500 }] });
    expect(show(household).sessions.map(({ day: on, daysAhead, needs }) => [on, daysAhead, needs.map((need) => [need.taken.map((one) => `${one.quantity} ${one.lot} ${one.where}`), need.coming, need.comingOn, need.lacking])])).toEqual([
      ['2026-11-29', 4, [[['4 l1 shelf, floor'], 0, null, 0]]],
      ['2026-12-05', 10, [[['1 l1 shelf, floor'], 2, '2026-11-28', 1]]],
    ]);
    expect(show(household).notes[0]?.text).toBe('The session of 5 Dec 2026 lacks 1 litre of engine oil for oil of Alder. Days left: 10.');
  });

  test('is not served by what comes on its own day', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    keep(household, '2026-11-28', 'pip-oil');
    household.must('order.place', { supplier: 'north', lines: [{ offer: 'n-can', packs: 1 }] });
    expect(show(household).sessions[0]?.needs[0]).toMatchObject({ coming: 0, lacking: 4 });
    household.must('session.move', { session: show(household).sessions[0]?.session ?? '', day: day('2026-11-29') });
    expect(show(household).sessions[0]?.needs[0]).toMatchObject({ coming: 4, lacking: 0 });
  });

  test('takes a filter and its washers out of a kit on the way', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['filter-pip', 1], ['washer', 2]]);
    keep(household, '2026-12-05', 'pip-oil');
    household.must('order.place', { supplier: 'north', lines: [{ offer: 'n-kit', packs: 1 }] });
    expect(show(household).sessions[0]?.needs.map((need) => [need.specification, need.coming, need.lacking])).toEqual([['filter-pip', 1, 0], ['washer', 2, 0]]);
  });
});

describe('orders, tools and waste', () => {
  test('an order: what is open, on whom it falls to the last minor unit, what comes back', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    household.must('order.place', {
      id: 'o', supplier: 'north', returnBy: day('2026-12-10'),
      lines: [{ offer: 'n-can', packs: 1, for: [{ car: 'pip', item: 'pip-oil', specification: 'oil', part: 'can', quantity: 4 }] }, { offer: 'n-b1', packs: 1 }, { offer: 'n-f1', packs: 2 }],
    });
    household.on('2026-12-01').must('order.receive', { order: 'o', lines: [{ line: 'line-2', packs: 1 }, { line: 'line-3', packs: 1, found: 'damaged' }] });
    household.must('order.return', { order: 'o', lines: [{ line: 'line-3', packs: 1 }] });
    const [order] = show(household).orders;
    // By hand: 35.00 + 70.00 + 16.00 is over 100.00, so delivered free; Pip takes 4 of 5 litres: 28.00.
    expect(order).toMatchObject({ state: 'part-delivered', overdueDays: 3, paidMinor: 12_100, depositsMinor: 1000, depositsOpenMinor: 1000, refundOpenMinor: 800, returnDaysLeft: 9, shares: [{ car: 'pip', minor: 2800 }, { car: null, minor: 9300 }] });
    expect(order?.lines.map((line) => [line.open, line.good, line.aside])).toEqual([[1, 0, 0], [0, 1, 0], [1, 0, 1]]);
    expect(show(household).notes.map((one) => one.code)).toEqual(['parts-note-overdue', 'parts-note-refund', 'parts-note-deposit']);
    expect(order?.sheet.counter).toContain('[ ] 1 x Fern oil (5 litres): Pip');
  });

  test('a tool: who takes it, and whether it was to go back', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', []);
    household.must('tool.set', { id: 'ramp', name: 'ramps', state: 'borrowed', lender: 'a neighbour', until: day('2026-11-24') });
    household.must('task-tools.set', { item: 'pip-oil', tools: ['ramp'] });
    expect(show(household).tools).toMatchObject([{ id: 'ramp', overdue: true, takenBy: [{ item: 'pip-oil' }] }]);
    expect(show(household).notes.map((one) => one.text)).toEqual(['A tool was to go back to a neighbour by 24 Nov 2026: ramps.']);
  });
});
