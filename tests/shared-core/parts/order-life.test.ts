import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import { comingSupply } from '../../../shared-core/parts/coming-supply.ts';
import { lots } from '../../../shared-core/parts/lot.ts';
import { landedLines, orderPaid } from '../../../shared-core/parts/order-landed.ts';
import { orders } from '../../../shared-core/parts/order.ts';
import { standingOrder } from '../../../shared-core/parts/order-standing.ts';
import { leftOfLots } from '../../../shared-core/records/shelf-left.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from './parts-household.ts';

const place = (household: MemoryHousehold, more: Partial<RequestOf<'order.place'>> = {}) => household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-can', packs: 2 }, { offer: 'n-f1', packs: 1 }], ...more }).order;
const standing = (household: MemoryHousehold) => standingOrder(household.facts(), must(household.facts().get(orders, 'o'), 'order'));
const coming = (household: MemoryHousehold, on: string) => comingSupply(household.facts(), day(on)).map(({ line, packs, on: then, overdue }) => `${packs} x ${line.part} ${then}${overdue ? ' overdue' : ''}`);
const shelf = (household: MemoryHousehold) => household.facts().all(lots).map(({ part, quantity, paidMinor }) => `${quantity} ${part} ${paidMinor}`).sort();

describe('placing an order', () => {
  test('takes from the offers what is not said, and the delivery from the terms', () => {
    // By hand: 2 * 35.00 + 8.00 = 78.00 is below 100.00, so delivery is 5.00; three days from 25 November.
    expect(place(partsHousehold(), { returnBy: day('2026-12-20') })).toMatchObject({ placedOn: '2026-11-25', expectedOn: '2026-11-28', deliveryMinor: 500, lines: [{ id: 'line-1', part: 'can', quantity: 5, priceMinor: 3500 }, { id: 'line-2', number: 'F1', priceMinor: 800 }] });
    expect(place(partsHousehold(), { lines: [{ offer: 'n-can', packs: 3 }] }).deliveryMinor).toBe(0);
  });

  test('keeps the prices as agreed, and a line by hand', () => {
    const order = place(partsHousehold(), { lines: [{ offer: 'n-can', packs: 1, priceMinor: 3300 }, { part: 'f2', packs: 1, quantity: 1, priceMinor: 750 }], deliveryMinor: 450, discountMinor: 100 });
    expect(orderPaid(order)).toEqual({ goodsMinor: 4050, paidMinor: 4400, depositsMinor: 0 });
  });

  test.each([
    { case: "another supplier's offer", order: { lines: [{ offer: 's-can', packs: 1 }] }, code: 'offer-of-another-supplier' },
    { case: 'an unknown offer', order: { lines: [{ offer: 'none', packs: 1 }] }, code: 'unknown-offer' },
    { case: 'an unknown part', order: { lines: [{ part: 'none', packs: 1, quantity: 1, priceMinor: 1 }] }, code: 'unknown-part' },
    { case: 'a part without a price', order: { lines: [{ part: 'f2', packs: 1 }] }, code: 'order-line-bare' },
    { case: 'less than the least', order: { supplier: 'south', lines: [{ part: 'f2', packs: 1, quantity: 1, priceMinor: 1999 }] }, code: 'order-below-minimum' },
    { case: 'expected before it is placed', order: { lines: [{ offer: 'n-f1', packs: 1 }], expectedOn: '2026-11-24' }, code: 'expected-before-placed' },
    { case: 'placed tomorrow', order: { lines: [{ offer: 'n-f1', packs: 1 }], placedOn: '2026-11-26' }, code: 'date-in-future' },
    { case: 'to be sent back before it is placed', order: { lines: [{ offer: 'n-f1', packs: 1 }], returnBy: '2026-11-24' }, code: 'return-before-placed' },
    { case: 'a discount over the goods', order: { lines: [{ offer: 'n-f1', packs: 1 }], discountMinor: 801 }, code: 'discount-over-goods' },
    { case: 'a part for what it does not meet', order: { lines: [{ offer: 'n-f1', packs: 1, for: [{ car: 'alder', item: null, specification: 'filter-alder', part: 'f1', quantity: 1 }] }] }, code: 'taker-not-met' },
    { case: 'an id that is taken', order: { id: 'taken', lines: [{ offer: 'n-f1', packs: 1 }] }, code: 'id-taken' },
  ])('$case is refused: $code', ({ order, code }) => {
    const household = partsHousehold();
    place(household, { id: 'taken' });
    const refused = household.call('order.place', { supplier: 'north', ...order } as RequestOf<'order.place'>);
    expect(refused).toMatchObject({ refusal: { code } });
    if (!refused.ok) expect(sayRefusal(refused.refusal)).toMatch(/\.$/);
  });

  test.each([
    { case: 'a line that cannot be true', lines: [{ offer: 'n-can', packs: 10_000, priceMinor: 1_000_000_000_000 }], code: 'order-sum-too-large' },
    { case: 'lines that cannot together', lines: [{ offer: 'n-can', packs: 1, priceMinor: 600_000_000_000 }, { offer: 'n-f1', packs: 1, priceMinor: 600_000_000_000 }], code: 'order-sum-too-large' },
    { case: 'deposits that cannot', lines: [{ offer: 'n-can', packs: 10, depositMinor: 900_000_000_000 }], code: 'order-sum-too-large' },
    { case: 'more than any shelf holds', lines: [{ part: 'can', packs: 10_000, quantity: 101, priceMinor: 1 }], code: 'line-brings-too-much' },
  ])('$case is refused: $code', ({ lines, code }) => {
    const household = partsHousehold();
    expect(household.call('order.place', { supplier: 'north', lines })).toMatchObject({ ok: false, refusal: { code } });
    expect(household.must('parts.show', {}).orders).toEqual([]);
  });

  test('a price is not changed to what cannot be true', () => {
    const household = partsHousehold();
    const { order } = household.must('order.place', { supplier: 'north', lines: [{ offer: 'n-can', packs: 10 }] });
    expect(household.call('order.change', { order: order.id, lines: [{ id: 'line-1', priceMinor: 200_000_000_000 }] })).toMatchObject({ ok: false, refusal: { code: 'order-sum-too-large' } });
  });

  test('below the least is taken from one who is sure', () => {
    expect(partsHousehold().call('order.place', { supplier: 'south', lines: [{ offer: 's-can', packs: 1, priceMinor: 100 }], sure: true }).ok).toBe(true);
  });

  test.each([
    { pair: ['clear', 'purple'], never: 'order-mixes', sure: 'order-mixes' },
    { pair: ['pink', 'blue'], never: 'order-may-mix', sure: null },
    { pair: ['pink', 'purple'], never: null, sure: null },
  ] as const)('$pair for one car: $never, and once sure $sure', ({ pair, never, sure }) => {
    const household = partsHousehold();
    for (const [id, use, base] of [['clear', 'brake-fluid', 'glycol'], ['purple', 'brake-fluid', 'silicone'], ['pink', 'coolant', 'organic-acid'], ['blue', 'coolant', 'inorganic-acid']] as const) {
      household.must('specification.set', { id, name: id, unit: 'litre', ...(use === 'coolant' ? { asks: [{ kind: 'material', text: base }] } : { asks: [{ kind: 'grade', text: base }] }), fluid: { use, base } });
      household.must('part.set', { id, name: id, meets: [id] });
    }
    const order = (cars: readonly [string, string], said: boolean) => household.call('order.place', { supplier: 'north', sure: said, lines: pair.map((part, at) => ({ part, packs: 1, quantity: 1, priceMinor: 900, for: [{ car: cars[at] ?? '', item: null, specification: part, part, quantity: 1 }] })) });
    const code = (reply: ReturnType<typeof order>) => (reply.ok ? null : reply.refusal.code);
    expect([code(order(['pip', 'pip'], false)), code(order(['pip', 'pip'], true)), code(order(['pip', 'alder'], false))]).toEqual([never, sure, null]);
  });
});

describe('receiving', () => {
  test('in parts: what came is on the shelf, what has not is still on the way', () => {
    const household = partsHousehold();
    place(household);
    expect(coming(household, '2026-11-26')).toEqual(['2 x can 2026-11-28', '1 x f1 2026-11-28']);
    household.on('2026-11-28').must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1, where: 'shelf', expires: day('2030-01-01') }] });
    expect([standing(household).state, coming(household, '2026-11-29')]).toEqual(['part-delivered', ['1 x can 2026-11-29 overdue', '1 x f1 2026-11-29 overdue']]);
    household.on('2026-12-01').must('order.receive', { order: 'o' });
    expect([standing(household).state, coming(household, '2026-12-01')]).toEqual(['delivered', []]);
    // By hand: 5.00 of delivery over 70.00 and 8.00 is 4.49 and 0.51 (448.7 and 51.3); the two cans share 74.49 as 37.25 and 37.24.
    expect(shelf(household)).toEqual(['1 f1 851', '5 can 3724', '5 can 3725']);
    expect(household.call('order.receive', { order: 'o' })).toMatchObject({ refusal: { code: 'order-nothing-open' } });
  });

  test('wrong, damaged and missing ones do not come to the shelf; those that are sent again are still on the way', () => {
    const household = partsHousehold();
    place(household, { lines: [{ offer: 'n-can', packs: 4 }] });
    household.on('2026-11-28').must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }, { line: 'line-1', packs: 1, found: 'damaged', again: true }, { line: 'line-1', packs: 1, found: 'wrong' }, { line: 'line-1', packs: 1, found: 'not-coming' }] });
    expect(standing(household).lines[0]).toMatchObject({ good: 1, aside: 2, notComing: 1, open: 1 });
    expect([shelf(household), coming(household, '2026-11-28')]).toEqual([['5 can 3500'], ['1 x can 2026-11-28']]);
  });

  test('each can stands apart, and each of many filters together', () => {
    const household = partsHousehold();
    place(household, { lines: [{ offer: 'n-can', packs: 3 }, { offer: 'n-f1', packs: 3 }], deliveryMinor: 0 });
    household.on('2026-11-28').must('order.receive', { order: 'o' });
    expect(shelf(household)).toEqual(['3 f1 2400', '5 can 3500', '5 can 3500', '5 can 3500']);
  });

  test('a kit comes as its contents, its cost shared by their cheapest separate prices', () => {
    const household = partsHousehold();
    place(household, { lines: [{ offer: 'n-kit', packs: 1 }], deliveryMinor: 0 });
    household.on('2026-11-28').must('order.receive', { order: 'o' });
    // By hand: apart 1 * 8.00 and 2 * 0.30; 8.60 shared as 8.00 and 0.60.
    expect(shelf(household)).toEqual(['1 f1 800', '2 w1 60']);
  });

  test.each([
    { case: 'more than is to come', rows: [{ line: 'line-1', packs: 3 }], code: 'more-than-ordered' },
    { case: 'more than is to come, in two rows', rows: [{ line: 'line-1', packs: 1 }, { line: 'line-1', packs: 2, found: 'wrong' }], code: 'more-than-ordered' },
    { case: 'a line that is none', rows: [{ line: 'line-9', packs: 1 }], code: 'unknown-order-line' },
    { case: 'a place for what is damaged', rows: [{ line: 'line-1', packs: 1, found: 'damaged', where: 'shelf' }], code: 'only-good-is-kept' },
  ])('$case is refused: $code', ({ rows, code }) => {
    const household = partsHousehold();
    place(household);
    expect(household.call('order.receive', { order: 'o', lines: rows as never })).toMatchObject({ refusal: { code } });
    expect(household.facts().all(lots)).toEqual([]);
  });

  test('not before it was ordered, nor tomorrow, nor of an order that is none', () => {
    const household = partsHousehold();
    place(household);
    const code = (request: RequestOf<'order.receive'>) => { const reply = household.call('order.receive', request); return reply.ok ? null : reply.refusal.code; };
    expect([code({ order: 'o', on: day('2026-11-24') }), code({ order: 'o', on: day('2026-11-26') }), code({ order: 'x' })]).toEqual(['received-before-placed', 'date-in-future', 'unknown-order']);
  });

  // Source: own property; the largest remainder itself is held against published examples elsewhere.
  test('however it comes, the lots sum to what was paid, to the last minor unit', () => {
    const anyLine = fc.record({ packs: fc.integer({ min: 1, max: 7 }), priceMinor: fc.integer({ min: 0, max: 9999 }), part: fc.constantFrom('can', 'f1', 'kit', 'b1') });
    fc.assert(fc.property(fc.array(anyLine, { minLength: 1, maxLength: 5 }), fc.nat({ max: 2000 }), fc.nat({ max: 100 }), fc.infiniteStream(fc.integer({ min: 1, max: 3 })), (lines, deliveryMinor, percent, some) => {
      const household = partsHousehold();
      const goods = lines.reduce((sum, line) => sum + line.packs * line.priceMinor, 0);
      const discountMinor = Math.floor((goods * percent) / 100);
      const order = household.must('order.place', { id: 'o', supplier: 'north', sure: true, lines: lines.map((line) => ({ ...line, quantity: 1, depositMinor: 50 })), deliveryMinor, discountMinor }).order;
      expect([...landedLines(order).values()].reduce((sum, minor) => sum + minor, 0)).toBe(goods + deliveryMinor - discountMinor);
      while (standing(household).state !== 'delivered') {
        const rows = standing(household).lines.filter((one) => one.open > 0).slice(0, 2).map((one) => ({ line: one.line.id, packs: Math.min(one.open, Number(some.next().value)) }));
        household.must('order.receive', { order: 'o', lines: rows });
      }
      expect(household.facts().all(lots).reduce((sum, lot) => sum + (lot.paidMinor ?? 0), 0)).toBe(goods + deliveryMinor - discountMinor);
    }), { numRuns: 60 });
  });
});

describe('sending back', () => {
  const received = (more: Partial<RequestOf<'order.place'>> = {}) => {
    const household = partsHousehold();
    place(household, { lines: [{ offer: 'n-b1', packs: 2 }, { offer: 'n-f1', packs: 2 }], returnBy: day('2026-12-10'), ...more });
    household.on('2026-11-28').must('order.receive', { order: 'o' });
    return household;
  };
  const filters = (household: MemoryHousehold) => must(household.facts().all(lots).find((lot) => lot.part === 'f1'), 'lot').id;

  test('goods leave the shelf, and what is expected comes back in parts', () => {
    const household = received();
    const { return: back } = household.must('order.return', { id: 'r', order: 'o', lines: [{ line: 'line-2', packs: 1 }], lots: [{ lot: filters(household), quantity: 1 }] });
    expect([back.refundExpectedMinor, leftOfLots(household.facts()).get(filters(household))]).toEqual([800, 1]);
    household.must('order.refund', { return: 'r', minor: 500 });
    expect(household.must('order.refund', { return: 'r', minor: 300 }).return.refunds).toEqual([{ on: '2026-11-28', minor: 500 }, { on: '2026-11-28', minor: 300 }]);
  });

  test('a deposit comes back for the old part, beside the price and once', () => {
    const household = received();
    expect(orderPaid(must(household.facts().get(orders, 'o'), 'order'))).toMatchObject({ goodsMinor: 15_600, depositsMinor: 2000 });
    household.must('order.return', { order: 'o', lines: [{ line: 'line-1', packs: 1, what: 'deposit' }] });
    const { return: whole } = household.must('order.return', { order: 'o', lines: [{ line: 'line-1', packs: 1 }] });
    expect(whole.refundExpectedMinor).toBe(8000);
    expect(household.call('order.return', { order: 'o', lines: [{ line: 'line-1', packs: 1, what: 'deposit' }] })).toMatchObject({ refusal: { code: 'deposit-not-open' } });
    expect(household.call('order.return', { order: 'o', lines: [{ line: 'line-2', packs: 1, what: 'deposit' }] })).toMatchObject({ refusal: { code: 'deposit-not-open' } });
  });

  test.each([
    { case: 'after the last day', on: '2026-12-11', ask: { lines: [{ line: 'line-2', packs: 1 }] }, code: 'return-too-late' },
    { case: 'more than came', on: '2026-12-01', ask: { lines: [{ line: 'line-2', packs: 2 }, { line: 'line-2', packs: 1 }] }, code: 'returns-more-than-came' },
    { case: 'a lot that is not of it', on: '2026-12-01', ask: { lines: [{ line: 'line-2', packs: 1 }], lots: [{ lot: 'old', quantity: 1 }] }, code: 'lot-of-another-order' },
    { case: 'a line that is none', on: '2026-12-01', ask: { lines: [{ line: 'line-7', packs: 1 }] }, code: 'unknown-order-line' },
  ])('$case is refused: $code', ({ on, ask, code }) => {
    const household = received();
    household.must('lot.set', { id: 'old', part: 'f1', quantity: 1, receivedOn: day('2026-01-01') });
    expect(household.on(on).call('order.return', { order: 'o', ...ask })).toMatchObject({ refusal: { code } });
    if (code === 'return-too-late') expect(household.call('order.return', { order: 'o', ...ask, sure: true }).ok).toBe(true);
  });

  test('what came damaged can be sent back without a lot', () => {
    const household = partsHousehold();
    place(household);
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1, found: 'damaged' }] });
    household.must('order.return', { order: 'o', lines: [{ line: 'line-1', packs: 1 }] });
    expect(standing(household).lines[0]).toMatchObject({ aside: 1, goodsReturned: 1, open: 1 });
  });
});

describe('changing and cancelling', () => {
  test('what costs is changed until something has come; when it comes at any time', () => {
    const household = partsHousehold();
    place(household);
    expect(household.must('order.change', { order: 'o', lines: [{ id: 'line-1', priceMinor: 3400 }], deliveryMinor: 0 }).order).toMatchObject({ deliveryMinor: 0, lines: [{ priceMinor: 3400 }, { priceMinor: 800 }] });
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-2', packs: 1 }] });
    expect(household.call('order.change', { order: 'o', discountMinor: 1 })).toMatchObject({ refusal: { code: 'order-came-already' } });
    household.must('order.change', { order: 'o', expectedOn: day('2026-12-09') });
    expect(coming(household, '2026-11-30')).toEqual(['2 x can 2026-12-09']);
  });

  test('cancelled is what has not come', () => {
    const household = partsHousehold();
    place(household);
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-2', packs: 1 }] });
    household.must('order.cancel', { order: 'o', note: 'sold out' });
    expect([standing(household).state, coming(household, '2026-11-25'), shelf(household).length]).toEqual(['cancelled', [], 1]);
    expect(household.call('order.cancel', { order: 'o' })).toMatchObject({ refusal: { code: 'order-nothing-open' } });
  });

  test('an undone delivery is on the way again', () => {
    const household = partsHousehold();
    place(household);
    const before = household.entries.length;
    const reply: ReplyOf<'order.receive'> = household.must('order.receive', { order: 'o' });
    expect(household.entries.slice(before).map((entry) => entry.kind)).toEqual(['delivery-recorded', ...reply.lots.map(() => 'lot-set')]);
  });
});
