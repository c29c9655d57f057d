import { describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import { serviceItemSet } from '../../../shared-core/care/service-item.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { offers, offerSet } from '../../../shared-core/parts/offer.ts';
import { standingLots } from '../../../shared-core/records/shelf-left.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { proposeOrder } from '../../../shared-core/views/order-view.ts';
import { orderRequestSchema, orderViewSchema, type OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { day } from '../calendar/day.ts';
import { enterAsBefore } from '../contract/enter-as-before.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

const solver = directSolver();

async function propose(household: MemoryHousehold, on: string, request: Partial<RequestOf<'order.propose'>> = {}): Promise<OrderView> {
  const reply = await proposeOrder(household.facts(), orderRequestSchema.parse(request), { today: day(on) }, solver);
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  return orderViewSchema.parse(reply.value);
}
const bought = (view: OrderView) => view.lines.map((line) => `${line.packs} x ${line.offer}`);
const item = (household: MemoryHousehold, car: 'pip' | 'alder', name: string, needs: readonly (readonly [string, number])[], more: Partial<RequestOf<'item.add'>> = {}) =>
  household.must('item.add', { id: `${car}-${name}`, car, name, history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs: needs.map(([specification, quantity]) => ({ specification, quantity })), ...more });
/** Oil for Pip, due on 20 December 2026. */
function withOil(litres = 4): MemoryHousehold {
  const household = partsHousehold();
  item(household, 'pip', 'oil', [['oil', litres]]);
  return household;
}
const place = (household: MemoryHousehold, view: OrderView) => view.orders.map((order) => household.must('order.place', { ...order.place, sure: true }).order);
const codes = (said: readonly { readonly code: string }[]) => said.map((one) => one.code);

describe('what is on the way is not bought twice', () => {
  test('an order placed as proposed leaves nothing to buy; received short, the rest is proposed anew', async () => {
    const household = withOil(8);
    const first = await propose(household, '2026-11-25');
    expect(bought(first)).toEqual(['2 x s-can']);
    const [order] = place(household, first);
    const second = await propose(household, '2026-11-25');
    expect([bought(second), second.totalMinor, second.needs[0]?.sources]).toEqual([[], 0, [expect.objectContaining({ from: 'coming', order: order?.id, quantity: 8, on: '2026-12-05' })]]);
    household.on('2026-12-05').must('order.receive', { order: order?.id ?? '', lines: [{ line: 'line-1', packs: 1 }, { line: 'line-1', packs: 1, found: 'not-coming' }] });
    const third = await propose(household, '2026-12-05');
    // By hand: 5 of 8 litres are there, so one can lacks; north has it for 35.00 and 5.00, south for 30.00 and within 10 days: 15 December.
    expect([bought(third), third.needs[0]?.sources.map(({ from, quantity }) => `${quantity} ${from}`)]).toEqual([['1 x s-can'], ['5 shelf', '3 offer']]);
  });

  test('what is overdue counts from today, and is named', async () => {
    const household = withOil();
    place(household, await propose(household, '2026-11-25'));
    const late = await propose(household, '2026-12-10');
    expect([bought(late), codes(late.notes), late.needs[0]?.readyOn]).toEqual([[], ['order-note-overdue'], '2026-12-10']);
  });

  test('each car alone cannot take the same goods on the way twice', async () => {
    const household = withOil();
    place(household, await propose(household, '2026-11-25'));
    item(household, 'alder', 'oil', [['oil', 4]]);
    const both = await propose(household, '2026-11-25');
    expect([bought(both), both.perCar.cars.map((one) => one.totalMinor), both.savedMinor]).toEqual([['1 x s-can'], [0, 3000], 0]);
  });
});

describe('a 5 litre pack against 4 litres needed', () => {
  /** Ordered, received and used; the yearly item is done on 19 December 2026. */
  async function afterTheFirst(keepsOpenedDays: number | null) {
    const household = partsHousehold();
    household.must('part.set', { id: 'can', name: 'Fern oil', meets: ['oil'], keepsOpenedDays });
    item(household, 'pip', 'oil', [['oil', 4]], { interval: { first: { months: 72, distance: null }, repeat: { months: 12, distance: null } } });
    const [order] = place(household, await propose(household, '2026-11-25'));
    const { lots } = household.on('2026-12-05').must('order.receive', { order: order?.id ?? '' });
    household.on('2026-12-19').must('record.add', { car: 'pip', lines: [{ item: 'pip-oil' }], lotsUsed: [{ lot: lots[0]?.id ?? '', quantity: 4 }] });
    return household;
  }

  test.each([
    { case: 'it keeps for two years once opened: only what lacks is wanted, and a small pack does', keeps: 730, shelf: 1, left: 2 },
    { case: 'it keeps for half a year once opened: next year it is not used', keeps: 180, shelf: 0, left: 2 },
    { case: 'it keeps as long as it likes', keeps: null, shelf: 1, left: 2 },
  ])('leaves 1 litre with its opened date; $case', async ({ keeps, shelf }) => {
    const household = await afterTheFirst(keeps);
    expect(standingLots(household.facts())).toMatchObject([{ left: 1, openedOn: '2026-12-19', lot: { openedOn: null } }]);
    // By hand: next due on 19 December 2027; opened on 19 December 2026 it is good until 18 December 2028, or 17 June 2027.
    household.must('offer.set', { id: 'n-small', supplier: 'north', part: 'can', quantity: 3, priceMinor: 2000, seenOn: day('2026-12-01') });
    const next = await propose(household.on('2027-11-01'), '2027-11-01');
    const need = must(next.needs[0], 'need');
    expect([need.neededBy, need.sources.filter((one) => one.from === 'shelf').map((one) => one.quantity)]).toEqual(['2027-12-19', shelf === 1 ? [1] : []]);
    // By hand: 3 litres at 20.00 and 5.00 where the rest is good; else 4 litres: the can of south at 30.00.
    expect([bought(next), next.totalMinor]).toEqual(shelf === 1 ? [['1 x n-small'], 2500] : [['1 x s-can'], 3000]);
  });
});

test('a specification that an older entry names twice is bought as one need of both amounts', async () => {
  const household = partsHousehold();
  const { item: whole } = item(household, 'pip', 'oil', [['oil', 4]]);
  enterAsBefore(household, serviceItemSet, { ...whole, needs: [{ specification: 'oil', quantity: 4.3 }, { specification: 'oil', quantity: 1 }] });
  const view = await propose(household, '2026-11-25');
  // By hand: 5.3 litres are two cans, at 30.00 from south.
  expect([bought(view), view.needs.map((one) => [one.need, one.quantity])]).toEqual([['2 x s-can'], [['pip-oil/oil', 5.3]]]);
});

test('an older offer too large to be reckoned with is named by its part and who sells it', async () => {
  const household = withOil();
  enterAsBefore(household, offerSet, { ...must(household.facts().get(offers, 'n-can'), 'offer'), breaks: [{ packs: 100_000, priceMinor: 1_000_000_000_000 }] });
  const reply = await proposeOrder(household.facts(), orderRequestSchema.parse({}), { today: day('2026-11-25') }, solver);
  expect(reply).toMatchObject({ ok: false, refusal: { code: 'offer-too-large', values: { offer: 'Fern oil, North Parts' } } });
});

describe('when it is needed', () => {
  const keep = (household: MemoryHousehold, on: string, place = 'home') => household.must('session.keep', { sessions: [{ day: day(on), place, tasks: [{ kind: 'item', id: 'pip-oil' }] }] });

  test('the day before its session at home, whenever it is due', async () => {
    const household = withOil();
    expect((await propose(household, '2026-11-25')).needs[0]).toMatchObject({ neededBy: '2026-12-20', session: null });
    keep(household, '2026-12-05');
    const view = await propose(household, '2026-11-25');
    // South needs ten days, until 5 December; north three.
    expect([view.needs[0]?.neededBy, bought(view), view.needs[0]?.readyOn, view.needs[0]?.tooLateForSession]).toEqual(['2026-12-04', ['1 x n-can'], '2026-11-28', false]);
  });

  test.each([
    { case: 'until the day before', expires: '2026-12-04', lines: ['1 x n-can'] },
    { case: 'through the day', expires: '2026-12-05', lines: [] },
  ])('stock that is good $case of the session: buys $lines', async ({ expires, lines }) => {
    const household = withOil();
    household.must('lot.set', { part: 'can', quantity: 5, receivedOn: day('2026-02-01'), expires: day(expires) });
    keep(household, '2026-12-05');
    expect(bought(await propose(household, '2026-11-25'))).toEqual(lines);
  });

  test('too soon a session is named with the day on which its parts can be here, and they are bought all the same', async () => {
    const household = withOil();
    keep(household, '2026-11-28');
    const view = await propose(household, '2026-11-25');
    expect([bought(view), view.needs[0]]).toEqual([['1 x n-can'], expect.objectContaining({ readyOn: '2026-11-28', tooLateForSession: true })]);
    expect(view.notes[0]).toMatchObject({ code: 'order-note-session-late', text: 'Pip: engine oil for oil can be here on 28 Nov 2026, too late for the session of 28 Nov 2026. Move the session, or ask for a faster delivery.' });
  });

  test('a session beyond its due day brings it in only within the horizon, and one at a garage never', async () => {
    const household = withOil();
    keep(household, '2027-01-09');
    expect((await propose(household, '2026-11-25', { horizonDays: 30 })).needs).toEqual([]);
    expect((await propose(household, '2026-11-25', { horizonDays: 60 })).needs[0]?.neededBy).toBe('2027-01-08');
    const other = withOil();
    other.must('place.set', { id: 'hill', name: 'the hill', kind: 'garage' });
    keep(other, '2026-12-09', 'hill');
    expect((await propose(other, '2026-11-25')).needs).toEqual([]);
  });
});

describe('what if', () => {
  test('from one supplier alone', async () => {
    const household = withOil();
    item(household, 'alder', 'filter', [['filter-alder', 1]]);
    const free = await propose(household, '2026-11-25');
    // By hand: south's can 30.00, north's filter 9.00 and 5.00 make 44.00; north alone 35.00 + 9.00 + 5.00 = 49.00; south has no filter.
    expect([bought(free), free.totalMinor, free.cheapestSupplier, free.perSupplier.map((one) => [one.supplier, one.met])]).toEqual([['1 x n-f2', '1 x s-can'], 4400, { supplier: 'north', supplierName: 'North Parts', totalMinor: 4900, met: 2 }, [['north', 2], ['south', 1]]]);
    const north = await propose(household, '2026-11-25', { onlySupplier: 'north' });
    expect([bought(north), north.totalMinor, north.perSupplier, north.terms.onlySupplier]).toEqual([['1 x n-can', '1 x n-f2'], 4900, [], 'north']);
    expect(await proposeOrder(household.facts(), orderRequestSchema.parse({ onlySupplier: 'none' }), { today: day('2026-11-25') }, solver)).toMatchObject({ refusal: { code: 'unknown-supplier' } });
  });

  test('here by a day', async () => {
    const household = withOil();
    expect(bought(await propose(household, '2026-11-25', { arriveBy: day('2026-12-01') }))).toEqual(['1 x n-can']);
    const tooSoon = await propose(household, '2026-11-25', { arriveBy: day('2026-11-26') });
    expect([bought(tooSoon), tooSoon.unmet.map((one) => one.code), codes(tooSoon.notes)]).toEqual([[], ['none-in-time'], ['order-note-unmet-on-terms']]);
  });

  test('nothing left over', async () => {
    const household = withOil();
    household.must('offer.set', { id: 'n-litre', supplier: 'north', part: 'can', quantity: 1, priceMinor: 900, seenOn: day('2026-11-01') });
    const view = await propose(household, '2026-11-25', { noLeftovers: true });
    expect([bought(view), view.left, view.totalMinor]).toEqual([['4 x n-litre'], [], 4100]);
  });
});

describe('what one would rather have', () => {
  function withCabinFilters(mostMoreMinor: number | null) {
    const household = partsHousehold();
    household.must('specification.set', { id: 'cabin', name: 'cabin filter', unit: 'each', step: 1, asks: [{ kind: 'size', text: '200 x 180 x 30 mm' }] });
    for (const [id, price] of [['plain', 1000], ['carbon', 1600]] as const) {
      household.must('part.set', { id, name: `Cabin filter, ${id}`, meets: ['cabin'] });
      household.must('offer.set', { id: `n-${id}`, supplier: 'north', part: id, quantity: 1, priceMinor: price, seenOn: day('2026-11-01') });
    }
    item(household, 'pip', 'cabin', [['cabin', 1]]);
    household.must('part-preference.set', { id: 'cabin', parts: ['carbon', 'plain'], mostMoreMinor });
    return household;
  }

  test.each([
    { most: null, line: '1 x n-carbon', code: 'order-preferred' },
    { most: 600, line: '1 x n-carbon', code: 'order-preferred' },
    { most: 599, line: '1 x n-plain', code: 'order-preferred-too-dear' },
  ])('up to $most more: $line', async ({ most, line, code }) => {
    const view = await propose(withCabinFilters(most), '2026-11-25');
    expect([bought(view), codes(view.proof)]).toEqual([[line], expect.arrayContaining([code])]);
  });

  test('is not taken where it cannot be had', async () => {
    const household = withCabinFilters(null);
    household.must('offer.withdraw', { id: 'n-carbon' });
    const view = await propose(household, '2026-11-25');
    expect([bought(view), codes(view.proof)]).toEqual([['1 x n-plain'], expect.arrayContaining(['order-preferred-not-had'])]);
  });
});

describe('what it says', () => {
  test('who each line is for, and what falls on each car and on the shelf, to the last minor unit', async () => {
    const household = withOil(4);
    item(household, 'alder', 'oil', [['oil', 5.5]]);
    const view = await propose(household, '2026-11-25');
    // By hand: 2 cans of south for 60.00; 4 and 5.5 litres and half a litre left: 24.00, 33.00 and 3.00.
    expect([bought(view), view.shares]).toEqual([['2 x s-can'], [{ car: 'alder', carName: 'Alder', minor: 3300 }, { car: 'pip', carName: 'Pip', minor: 2400 }, { car: null, carName: null, minor: 300 }]]);
    expect(view.orders[0]?.lines[0]?.for.map(({ carName, itemName, quantity, unit }) => `${carName} ${itemName} ${quantity} ${unit}`).sort()).toEqual(['Alder oil 5.5 litre', 'Pip oil 4 litre']);
    expect(view.shares.reduce((sum, one) => sum + one.minor, 0)).toBe(view.totalMinor);
  });

  test('that it is proven, what it saves, and what one supplier would cost', async () => {
    const household = withOil(2.5);
    item(household, 'alder', 'oil', [['oil', 2.5]]);
    const view = await propose(household, '2026-11-25');
    // By hand: one can for both, 30.00; alone each would buy one, but the first leaves 2.5 litres for the second.
    expect([view.totalMinor, view.savedMinor, codes(view.proof)]).toEqual([3000, 0, ['order-total', 'order-proven', 'order-saves-nothing', 'order-one-supplier-same']]);
    expect(view.proof.map((one) => one.text).join(' ')).toContain('Nothing cheaper meets the same needs: it is proven.');
  });

  test('old prices, replaced numbers, deposits, and on whose word one part stands in for two', async () => {
    const household = withOil(2);
    household.must('specification.set', { id: 'oil-2', name: 'oil of Alder', unit: 'litre' });
    household.must('part.set', { id: 'can', name: 'Fern oil', number: 'FO 5', meets: ['oil', 'oil-2'], stated: [{ specification: 'oil-2', by: 'part-maker', basis: 'approval', source: 'data sheet 9' }] });
    item(household, 'alder', 'oil', [['oil-2', 2]]);
    item(household, 'alder', 'battery', [['battery', 1]]);
    household.must('number.supersede', { old: 'FO-5', new: 'FO 6' });
    household.must('parts-settings.set', { staleAfterDays: 20 });
    const view = await propose(household, '2026-11-25');
    const line = must(view.orders.flatMap((order) => order.lines).find((one) => one.part === 'can'), 'line');
    expect([line.stale, line.numberNow, view.depositsMinor, view.totalMinor]).toEqual([true, 'FO 6', 1000, view.goodsMinor + view.deliveryMinor]);
    expect(view.notes.map((one) => one.text)).toEqual([
      'Prices seen more than 20 days ago: 2. Ask before you order.',
      'Fern oil: the number FO 5 was replaced by FO 6. Order by the new one.',
      'Fern oil also stands in for oil of Alder, as stated by its maker (data sheet 9).',
      'Fern oil also stands in for engine oil, as stated by you, who entered it.',
    ]);
  });

  test('which tools it takes that are not to hand by its day', async () => {
    const household = withOil();
    household.must('tool.set', { id: 'key', name: 'filter wrench', state: 'missing' });
    household.must('tool.set', { id: 'ramp', name: 'ramps', state: 'borrowed', lender: 'a neighbour', until: day('2026-12-01') });
    household.must('tool.set', { id: 'pan', name: 'drain pan', state: 'owned' });
    household.must('task-tools.set', { item: 'pip-oil', tools: ['key', 'ramp', 'pan'] });
    expect((await propose(household, '2026-11-25')).toolsLacking.map((one) => one.tool)).toEqual(['key']);
    household.must('session.keep', { sessions: [{ day: day('2026-12-05'), place: 'home', tasks: [{ kind: 'item', id: 'pip-oil' }] }] });
    const view = await propose(household, '2026-11-25');
    expect(view.toolsLacking).toMatchObject([{ tool: 'key', why: 'missing', items: [{ item: 'pip-oil', day: '2026-12-05' }] }, { tool: 'ramp', why: 'borrowed-until', until: '2026-12-01' }]);
    expect(codes(view.notes)).toEqual(['order-note-tool-missing', 'order-note-tool-borrowed']);
  });
});

describe('tools', () => {
  test.each([
    { case: 'a name twice', ask: { name: 'Ramps', state: 'owned' }, code: 'tool-named-already' },
    { case: 'borrowed from nobody', ask: { name: 'jack', state: 'borrowed' }, code: 'borrowed-from-whom' },
    { case: 'owned and lent', ask: { name: 'jack', state: 'owned', lender: 'x' }, code: 'not-borrowed' },
  ])('$case is refused: $code', ({ ask, code }) => {
    const household = withOil();
    household.must('tool.set', { id: 'ramp', name: 'ramps', state: 'owned' });
    expect(household.call('tool.set', ask as never)).toMatchObject({ refusal: { code } });
  });

  test('one that a task takes stays', () => {
    const household = withOil();
    household.must('tool.set', { id: 'ramp', name: 'ramps', state: 'owned' });
    household.must('task-tools.set', { item: 'pip-oil', tools: ['ramp', 'ramp'] });
    expect(household.call('tool.remove', { id: 'ramp' })).toMatchObject({ refusal: { code: 'tool-in-use' } });
    household.must('task-tools.set', { item: 'pip-oil', tools: [] });
    household.must('tool.remove', { id: 'ramp' });
    expect(household.call('task-tools.set', { item: 'pip-oil', tools: ['ramp'] })).toMatchObject({ refusal: { code: 'unknown-tool' } });
  });
});

describe('what is not met does not read as a success', () => {
  const texts = (said: readonly { readonly text: string }[]) => said.map((one) => one.text);

  test('none met is all that is said; some unmet is said first', async () => {
    const household = withOil();
    // North is here in three days, so nothing by 27 November.
    expect(texts((await propose(household, '2026-11-25', { arriveBy: day('2026-11-27') })).proof)).toEqual(['None of what is needed can be had by 27 Nov 2026 (needs: 1).']);
    item(household, 'pip', 'wipers', [['battery', 1]]);
    household.must('lot.set', { id: 'spare', part: 'can', quantity: 4, receivedOn: day('2026-01-01') });
    expect(texts((await propose(household, '2026-11-25', { arriveBy: day('2026-11-27') })).proof)).toEqual(['Not all that is needed can be had by 27 Nov 2026: of 2 needs, 1 cannot be met.']);
    household.must('lot.use', { lot: 'spare', quantity: 4 });
    const part = await propose(household, '2026-11-25', { onlySupplier: 'south' });
    expect(texts(part.proof)[0]).toBe('Not all that is needed can be had in time: of 2 needs, 1 cannot be met.');
    expect(texts(part.notes)).toContain('Pip: battery for wipers cannot be had by 20 Dec 2026, as asked: from South Stores alone. Ask without that, or enter another offer.');
  });

  test('a need that no term hinders is told as before', async () => {
    const household = withOil();
    household.must('specification.set', { id: 'rare', name: 'rare seal', unit: 'each', step: 1 });
    item(household, 'pip', 'seal', [['rare', 1]]);
    expect(codes((await propose(household, '2026-11-25')).notes)).toContain('order-note-none-in-time');
  });

  test('a day that has passed is refused', async () => {
    const reply = await proposeOrder(withOil().facts(), orderRequestSchema.parse({ arriveBy: '2026-11-24' }), { today: day('2026-11-25') }, solver);
    expect(reply).toMatchObject({ ok: false, refusal: { code: 'arrive-by-passed', path: ['arriveBy'] } });
  });

  test('packs bought only to reach a minimum are named', async () => {
    const household = withOil();
    household.must('supplier.set', { id: 'south', name: 'South Stores', deliveryMinor: 0, minimumMinor: 3500, leadDays: 10 });
    household.must('offer.set', { id: 's-can', supplier: 'south', part: 'can', quantity: 5, priceMinor: 1800, seenOn: day('2026-11-01') });
    // By hand: one can of 18.00 is below 35.00; two are 36.00, less than 35.00 and 5.00 at North.
    const view = await propose(household, '2026-11-25');
    expect([bought(view), texts(view.notes)]).toEqual([['2 x s-can'], ['Fern oil: packs bought only to reach the minimum of South Stores (35.00 GBP): 1. They go to the shelf.']]);
  });

  test('and so are those that make delivery free', async () => {
    const household = withOil();
    household.must('supplier.set', { id: 'south', name: 'South Stores', deliveryMinor: 2000, freeFromMinor: 3000, leadDays: 10 });
    household.must('offer.set', { id: 's-can', supplier: 'south', part: 'can', quantity: 5, priceMinor: 1800, seenOn: day('2026-11-01') });
    // By hand: one can with delivery is 38.00; two are 36.00, delivered free.
    expect(texts((await propose(household, '2026-11-25')).notes)).toEqual(['Fern oil: packs bought only because South Stores then delivers free (from 30.00 GBP): 1. They go to the shelf.']);
  });
});
