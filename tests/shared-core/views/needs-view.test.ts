import { describe, expect, test } from 'vitest';
import { serviceItemSet } from '../../../shared-core/care/service-item.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { enterAsBefore } from '../contract/enter-as-before.ts';
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

  test('a specification that an older entry names twice is one need of both amounts; a new one is refused', () => {
    const household = partsHousehold();
    const { item: whole } = item(household, 'pip', 'oil', [['oil', 4]]);
    const twice = [{ specification: 'oil', quantity: 4.3 }, { specification: 'oil', quantity: 1 }];
    expect(household.call('item.change', { id: 'pip-oil', needs: twice })).toMatchObject({ ok: false, refusal: { code: 'need-twice', path: ['needs', 1, 'specification'] } });
    expect(household.call('item.add', { car: 'pip', name: 'more oil', interval: { repeat: { months: 72, distance: null } }, needs: twice })).toMatchObject({ ok: false, refusal: { code: 'need-twice' } });
    enterAsBefore(household, serviceItemSet, { ...whole, needs: twice });
    household.must('item.change', { id: 'pip-oil', minutes: 30 });
    keep(household, '2026-12-05', 'pip-oil');
    expect(show(household).needs.map((one) => [one.need, one.quantity, one.lacking])).toEqual([['pip-oil/oil', 5.3, 5.3]]);
    expect(household.must('parts.show', {}).sessions[0]?.needs.map((one) => one.quantity)).toEqual([5.3]);
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

describe('a session fixes the day', () => {
  /** Pip's oil is due on 20 December and not planned, Alder's in the session of the 27th; what both views say of each need. */
  function bothViews(household: MemoryHousehold) {
    const needs = new Map(show(household).needs.map((one) => [one.need, one]));
    return household.must('parts.show', {}).sessions.flatMap((session) => session.needs.map((one) => {
      const shown = needs.get(`${one.item}/${one.specification}`);
      const said = (each: typeof one | typeof shown) => [each?.taken, each?.coming, each?.comingOn, each?.lacking];
      return { day: session.day, neededBy: shown?.neededBy, said: said(one), shown: said(shown) };
    }));
  }

  test('needed the day before it, however long a delivery takes; what comes later lacks, in both views', () => {
    const household = partsHousehold();
    item(household, 'pip', 'battery', [['battery', 1]]);
    for (const supplier of ['north', 'south']) household.must('supplier.set', { id: supplier, name: supplier, leadDays: 25 });
    keep(household, '2026-12-05', 'pip-battery');
    household.must('order.place', { supplier: 'north', lines: [{ offer: 'n-b1', packs: 1 }], expectedOn: day('2026-12-10') });
    expect(show(household).needs[0]).toMatchObject({ neededBy: '2026-12-04', state: 'missing', coming: 0, lacking: 1 });
    expect(bothViews(household)).toEqual([{ day: '2026-12-05', neededBy: '2026-12-04', said: [[], 0, null, 1], shown: [[], 0, null, 1] }]);
  });

  test('what stands in sessions takes first, by their days, then what is due; in both views', () => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    item(household, 'alder', 'oil', [['oil', 4]]);
    household.must('lot.set', { id: 'l1', part: 'can', quantity: 5, receivedOn: day('2026-02-01') });
    keep(household, '2026-12-27', 'alder-oil');
    expect(bothViews(household).map((one) => [one.said, one.shown])).toEqual([[[[expect.objectContaining({ lot: 'l1', quantity: 4 })], 0, null, 0], [[expect.objectContaining({ lot: 'l1', quantity: 4 })], 0, null, 0]]]);
    expect(show(household).needs.map((one) => [one.need, one.neededBy, one.lacking])).toEqual([['pip-oil/oil', '2026-12-20', 3], ['alder-oil/oil', '2026-12-26', 0]]);
  });

  test.each([
    { case: 'good through the day before', expires: '2026-12-04', lacking: 4 },
    { case: 'good through the day', expires: '2026-12-05', lacking: 0 },
  ])('what is $case of the session lacks $lacking, in both views', ({ expires, lacking }) => {
    const household = partsHousehold();
    item(household, 'pip', 'oil', [['oil', 4]]);
    household.must('lot.set', { id: 'l1', part: 'can', quantity: 5, receivedOn: day('2026-02-01'), expires: day(expires) });
    keep(household, '2026-12-05', 'pip-oil');
    expect(bothViews(household).map((one) => [one.said[3], one.shown[3]])).toEqual([[lacking, lacking]]);
  });
});
