import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

const show = (household: MemoryHousehold, horizonDays = 90) => household.must('needs.show', { horizonDays });
const item = (household: MemoryHousehold, car: 'pip' | 'alder', name: string, needs: readonly (readonly [string, number])[], months = 72) =>
  household.must('item.add', { id: `${car}-${name}`, car, name, history: 'never-done', interval: { repeat: { months, distance: null } }, needs: needs.map(([specification, quantity]) => ({ specification, quantity })) });
const keep = (household: MemoryHousehold, on: string, id: string) => household.must('session.keep', { sessions: [{ day: day(on), place: 'home', tasks: [{ kind: 'item', id }] }] });

describe('what is needed', () => {
  test('takes from the shelf, then from what is on the way, soonest first; the rest is missing', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    item(household, 'alder', 'oil', [['oil', 4]]);
    household.must('lot.set', { id: 'l1', part: 'can', quantity: 5, receivedOn: day('2026-02-01'), where: 'shelf, floor' });
    keep(household, '2026-11-29', 'pip-oil');
    keep(household, '2026-12-05', 'alder-oil');
    household.must('order.place', { supplier: 'north', lines: [{ part: 'can', packs: 1, quantity: 2, priceMinor: 1500 }] });
    expect(show(household).needs.map((one) => [one.carName, one.neededBy, one.session?.day, one.state, one.taken.map(({ lot, quantity, where }) => [lot, quantity, where]), one.coming, one.comingOn, one.lacking])).toEqual([
      ['Pip', '2026-11-28', '2026-11-29', 'on-shelf', [['l1', 4, 'shelf, floor']], 0, null, 0],
      ['Alder', '2026-12-04', '2026-12-05', 'missing', [['l1', 1, 'shelf, floor']], 2, '2026-11-28', 1],
    ]);
  });

  test('what comes on the day by which it is needed is there in time; a day later it is not', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    keep(household, '2026-12-05', 'pip-oil');
    const { order } = household.must('order.place', { supplier: 'north', lines: [{ offer: 'n-can', packs: 1 }], expectedOn: day('2026-12-04') });
    expect(show(household).needs[0]).toMatchObject({ neededBy: '2026-12-04', state: 'on-the-way', coming: 4, lacking: 0 });
    household.must('order.change', { order: order.id, expectedOn: day('2026-12-05') });
    expect(show(household).needs[0]).toMatchObject({ state: 'missing', coming: 0, lacking: 4 });
  });

  test('says what is to be entered where nothing meets it, and where nobody offers what does', () => {
    const household = partsHousehold();
    household.must('specification.set', { id: 'belt', name: 'belt 6PK', unit: 'each', step: 1 });
    item(household, 'pip', 'belt', [['belt', 1]]);
    expect(show(household, 1826).needs.find((one) => one.specification === 'belt')).toMatchObject({ state: 'missing', metBy: [], gap: { code: 'no-part', said: { text: 'Nothing is recorded that meets belt 6PK. Enter a part that meets it.' } } });
    household.must('part.set', { id: 'belt-b1', name: 'Belt B1', meets: ['belt'] });
    expect(show(household, 1826).needs.find((one) => one.specification === 'belt')).toMatchObject({ metBy: [{ part: 'belt-b1', offers: 0 }], gap: { code: 'no-offer', said: { text: 'Nobody offers it yet. Enter an offer of Belt B1.' } } });
    household.must('part.set', { id: 'belt-kit', name: 'Belt kit', contains: [{ part: 'belt-b1', quantity: 1 }] });
    household.must('offer.set', { id: 'n-kit', supplier: 'north', part: 'belt-kit', quantity: 1, priceMinor: 4000, seenOn: day('2026-11-01') });
    expect(show(household, 1826).needs.find((one) => one.specification === 'belt')).toMatchObject({ metBy: [{ part: 'belt-b1', offers: 1 }], gap: null });
  });

  test('the horizon bounds it, and every task stands with what is entered for it', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    item(household, 'alder', 'look', []);
    expect(show(household, 0).needs).toEqual([]);
    expect(show(household).tasks).toContainEqual({ car: 'pip', carName: 'Pip', item: 'pip-oil', itemName: 'oil', needs: [{ specification: 'oil', quantity: 4 }] });
    expect(show(household).tasks).toContainEqual(expect.objectContaining({ item: 'alder-look', needs: [] }));
  });
});
