import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lotAccount, type LotSides } from '../../../shared-core/ledger/lot-account.ts';
import { lotSteps, type Counted, type LotStory, type Taken } from '../../../shared-core/ledger/lot-movements.ts';
import { sumOf } from '../../../shared-core/ledger/posting.ts';
import type { Lot } from '../../../shared-core/parts/lot.ts';
import { goneOf, type LotCount } from '../../../shared-core/records/lot-movements.ts';
import { day } from '../calendar/day.ts';
import { recordOn } from '../records/record-examples.ts';

const lot = (more: Partial<Lot> = {}): Lot => ({ id: 'can', part: 'oil', quantity: 5, receivedOn: day('2026-01-01'), openedOn: null, expires: null, keepsOpenedDays: null, where: null, paidMinor: 5000, order: null, ...more });
const sides: LotSides = { ofRecord: (record) => ({ kind: 'car', car: record.car }), wish: null };
const byRecord = (on: string, amount: number): Taken => ({ on: day(on), amount, to: { kind: 'record', record: recordOn(on) } });
const byHand = (on: string, amount: number, why: 'used' | 'lost' | 'waste' | 'returned', car: string | null = null): Taken => ({ on: day(on), amount, to: { kind: 'taking', why, car } });
const counted = (on: string, left: number, usedThatDay = 0): Counted => ({ on: day(on), left, usedThatDay, countsThatDay: 0 });

describe("a lot's money", () => {
  // By hand: five litres for 50.00.
  test.each([
    { case: 'nothing went', story: { taken: [], counted: [] }, costs: [], left: 5000 },
    { case: 'a record used two litres', story: { taken: [byRecord('2026-02-01', 2000)], counted: [] }, costs: [['car', 2000]], left: 3000 },
    { case: 'used by hand for a car, for none, lost, wasted', story: { taken: [byHand('2026-02-01', 1000, 'used', 'wren'), byHand('2026-02-02', 500, 'used'), byHand('2026-02-03', 500, 'lost'), byHand('2026-02-04', 1000, 'waste')], counted: [] }, costs: [['car', 1000], ['used', 500], ['lost', 500], ['waste', 1000]], left: 2000 },
    { case: 'counted less than the books had', story: { taken: [byRecord('2026-02-01', 2000)], counted: [counted('2026-03-01', 2500)] }, costs: [['car', 2000], ['counted', 500]], left: 2500 },
    { case: 'counted more than the books had: it comes back', story: { taken: [byRecord('2026-02-01', 2000)], counted: [counted('2026-03-01', 4000)] }, costs: [['car', 2000], ['counted', -1000]], left: 4000 },
    { case: 'what was used that day is in the count; what was used later that day is not', story: { taken: [byRecord('2026-03-01', 1000), byRecord('2026-03-01', 500)], counted: [counted('2026-03-01', 4000, 1000)] }, costs: [['car', 1000], ['car', 500]], left: 3500 },
    { case: 'more used than came costs no more than it cost', story: { taken: [byRecord('2026-02-01', 9000)], counted: [] }, costs: [['car', 5000]], left: 0 },
    { case: 'sent back without an order: nobody says what for', story: { taken: [byHand('2026-02-01', 5000, 'returned')], counted: [] }, costs: [['not-given-back', 5000]], left: 0 },
  ])('$case', ({ story, costs, left }) => {
    const account = lotAccount(lot(), story, sides);
    expect(account.costs.map(({ side, minor }) => [side.kind === 'gone' ? side.why : side.kind, minor])).toEqual(costs);
    expect([sumOf(account.balances), sumOf(account.payments), account.sentBackMinor]).toEqual([left, 5000, 0]);
  });

  test("of an order's lot what was sent back is the order's again, and the order pays for it", () => {
    const account = lotAccount(lot({ order: 'o1' }), { taken: [byRecord('2026-02-01', 1000), byHand('2026-02-02', 2000, 'returned')], counted: [] }, sides);
    expect([account.sentBackMinor, sumOf(account.costs), sumOf(account.balances), account.payments]).toEqual([2000, 1000, 2000, []]);
  });

  test('put aside for a wish it is on the side of wishes', () => {
    expect(lotAccount(lot(), { taken: [], counted: [] }, { ...sides, wish: 'radio' }).balances.map((one) => one.kind)).toEqual(['for-a-wish']);
  });

  test('of unknown cost it has none', () => {
    expect(lotAccount(lot({ paidMinor: null }), { taken: [byRecord('2026-02-01', 1000)], counted: [] }, sides)).toEqual({ payments: [], costs: [], balances: [], sentBackMinor: 0 });
  });

  const days = ['2026-02-01', '2026-02-02', '2026-02-03', '2026-02-04'];
  const anyTaken = fc.record({ on: fc.constantFrom(...days), amount: fc.integer({ min: 1, max: 900 }) });
  const anyCount = fc.record({ on: fc.constantFrom(...days), left: fc.integer({ min: 0, max: 5000 }) });

  test('what has gone at the end is what the shelf says has gone, whatever was used and counted', () => {
    fc.assert(fc.property(fc.array(anyTaken, { maxLength: 8 }), fc.uniqueArray(anyCount, { maxLength: 3, selector: (one) => one.on }), (taken, counts) => {
      const usedOn = (on: string) => taken.filter((one) => one.on === on).reduce((sum, one) => sum + one.amount, 0);
      const story: LotStory = { taken: taken.map((one) => byRecord(one.on, one.amount)), counted: counts.map((one) => counted(one.on, one.left, usedOn(one.on))) };
      const lines = counts.map((one): LotCount => ({ on: day(one.on), lot: 'can', counted: one.left / 1000, difference: 0, note: '', sameDay: { used: usedOn(one.on) / 1000, counts: 0 } }));
      const books = { uses: taken.map((one) => ({ on: day(one.on), amount: one.amount })), counts: [...lines].sort((a, b) => (a.on < b.on ? -1 : 1)) };
      expect(lotSteps(5000, story).at(-1)?.gone ?? 0).toBe(goneOf(5000, books, null));
      const account = lotAccount(lot(), story, sides);
      expect(sumOf(account.costs) + sumOf(account.balances)).toBe(5000);
    }));
  });
});
