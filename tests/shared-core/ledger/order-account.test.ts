import { describe, expect, test } from 'vitest';
import { householdAccount, unaccounted } from '../../../shared-core/ledger/household-account.ts';
import { sumOf } from '../../../shared-core/ledger/posting.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const TODAY = day('2026-11-25');

/** Ten filters at 10.00 with a deposit of 1.00 each, delivery 5.00: 115.00 in all, placed on 1 October. */
function ordered(): MemoryHousehold {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip' });
  made.must('specification.set', { id: 'filter', name: 'filter', unit: 'each' });
  made.must('part.set', { id: 'f1', name: 'filter F1', meets: ['filter'] });
  made.must('supplier.set', { id: 'north', name: 'North Parts', leadDays: 3, deliveryMinor: 500 });
  made.on('2026-10-01').must('order.place', { id: 'o1', supplier: 'north', returnBy: day('2026-11-30'), expectedOn: day('2026-10-05'), lines: [{ part: 'f1', packs: 10, quantity: 1, priceMinor: 1000, depositMinor: 100 }], deliveryMinor: 500 });
  return made.on('2026-11-25');
}
const receive = (made: MemoryHousehold, packs: number, more: object = {}) => made.must('order.receive', { id: `d-${packs}`, order: 'o1', on: day('2026-10-05'), lines: [{ line: 'line-1', packs, ...more }] });

describe("an order's money", () => {
  // By hand. The landed pack is 10.50.
  test.each([
    { case: 'placed: all is on the way', state: () => [], paid: 11_500, balances: { 'on-the-way': 11_500 }, gone: 0 },
    { case: 'all came: on the shelf, deposits out', state: (made: MemoryHousehold) => [receive(made, 10)], paid: 11_500, balances: { 'on-the-shelf': 10_500, deposits: 1000 }, gone: 0 },
    { case: 'four came', state: (made: MemoryHousehold) => [receive(made, 4)], paid: 11_500, balances: { 'on-the-shelf': 4200, deposits: 400, 'on-the-way': 6900 }, gone: 0 },
    { case: 'cancelled before anything came: nothing was paid', state: (made: MemoryHousehold) => [made.must('order.cancel', { order: 'o1' })], paid: 0, balances: {}, gone: 0 },
    {
      case: 'two sent back: asked for without delivery, and the delivery is gone', state: (made: MemoryHousehold) => [receive(made, 10), made.must('order.return', { id: 'r1', order: 'o1', lines: [{ line: 'line-1', packs: 2 }] })],
      paid: 11_500, balances: { 'on-the-shelf': 8400, deposits: 800, 'to-come-back': 2200 }, gone: 100,
    },
    {
      case: 'and when the money has come', state: (made: MemoryHousehold) => [receive(made, 10), made.must('order.return', { id: 'r1', order: 'o1', lines: [{ line: 'line-1', packs: 2 }] }), made.must('order.refund', { return: 'r1', minor: 2200 })],
      paid: 9300, balances: { 'on-the-shelf': 8400, deposits: 800 }, gone: 100,
    },
    { case: 'two came damaged and are not settled', state: (made: MemoryHousehold) => [receive(made, 8), receive(made, 2, { found: 'damaged' })], paid: 11_500, balances: { 'on-the-shelf': 8400, deposits: 800, 'to-come-back': 2200 }, gone: 100 },
    { case: 'two came damaged and others come for them', state: (made: MemoryHousehold) => [receive(made, 8), receive(made, 2, { found: 'damaged', again: true })], paid: 11_500, balances: { 'on-the-shelf': 8400, deposits: 800, 'on-the-way': 2300 }, gone: 0 },
    { case: 'two never come: what was not paid for them is not counted', state: (made: MemoryHousehold) => [receive(made, 8), receive(made, 2, { found: 'not-coming' })], paid: 9300, balances: { 'on-the-shelf': 8400, deposits: 800 }, gone: 100 },
    {
      case: 'two never come and their money is claimed: then it had been paid', state: (made: MemoryHousehold) => [receive(made, 8), receive(made, 2, { found: 'not-coming' }), made.must('order.return', { id: 'r1', order: 'o1', lines: [{ line: 'line-1', packs: 2, what: 'claim' }] })],
      paid: 11_500, balances: { 'on-the-shelf': 8400, deposits: 800, 'to-come-back': 2200 }, gone: 100,
    },
  ])('$case', ({ state, paid, balances, gone }) => {
    const made = ordered();
    state(made);
    const account = householdAccount(made.facts(), TODAY);
    const kinds: Record<string, number> = {};
    for (const one of account.balances) kinds[one.kind] = (kinds[one.kind] ?? 0) + one.minor;
    expect([sumOf(account.payments), kinds, sumOf(account.costs), unaccounted(account)]).toEqual([paid, balances, gone, 0]);
  });

  // What a lot of an order cost is its share, and no other lot comes with it.
  test.each([
    { case: 'its price', change: { paidMinor: 1 }, code: 'lot-paid-with-order' },
    { case: 'its order', change: { order: null }, code: 'lot-of-an-order' },
    { case: 'another lot of it', change: { id: 'more' }, code: 'lot-of-an-order' },
    { case: 'its place alone', change: { where: 'the bench' }, code: 'taken' },
  ])('a lot that came with it keeps what it cost: $case', ({ change, code }) => {
    const made = ordered();
    receive(made, 10);
    const lot = made.must('parts.show', {}).shelf[0]?.lot;
    const reply = made.call('lot.set', { ...lot, ...change } as never);
    expect(reply.ok ? 'taken' : reply.refusal.code).toBe(code);
  });
});
