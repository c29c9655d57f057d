import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { lots } from '../../../shared-core/parts/lot.ts';
import { agreedMinor, claimable, depositsOpen, goodsToReturn, neverComes } from '../../../shared-core/parts/order-owed.ts';
import { orderReturns } from '../../../shared-core/parts/order-return.ts';
import { standingOrders } from '../../../shared-core/parts/order-standing.ts';
import { orders } from '../../../shared-core/parts/order.ts';
import { leftOfLots } from '../../../shared-core/records/shelf-left.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

type Lines = RequestOf<'order.return'>['lines'];

/** Placed on 25 November, received whole on the 28th. */
function received(lines: RequestOf<'order.place'>['lines'], more: Partial<RequestOf<'order.place'>> = {}): MemoryHousehold {
  const household = partsHousehold();
  household.must('order.place', { id: 'o', supplier: 'north', lines, ...more });
  household.on('2026-11-28').must('order.receive', { order: 'o' });
  return household.on('2026-11-30');
}
const lotOf = (household: MemoryHousehold, part: string, at = 0) => must(household.facts().all(lots).filter((lot) => lot.part === part)[at], 'lot').id;
const left = (household: MemoryHousehold) => [...leftOfLots(household.facts())].map(([id, quantity]) => `${must(household.facts().get(lots, id), 'lot').part} ${quantity}`).sort();
const back = (household: MemoryHousehold, lines: Lines, more: Partial<RequestOf<'order.return'>> = {}) => household.must('order.return', { order: 'o', lines, ...more });
const refused = (household: MemoryHousehold, request: RequestOf<'order.return'>) => {
  const reply = household.call('order.return', request);
  return reply.ok ? null : { code: reply.refusal.code, text: sayRefusal(reply.refusal) };
};

describe('what goes back leaves the shelf', () => {
  test('from the lots it came into, the whole one before the begun one', () => {
    const household = received([{ offer: 'n-can', packs: 2 }]);
    household.must('lot.use', { lot: lotOf(household, 'can'), quantity: 1 });
    expect(back(household, [{ line: 'line-1', packs: 1 }]).takings.map((one) => [one.lot, one.quantity, one.why])).toEqual([[lotOf(household, 'can', 1), 5, 'returned']]);
    expect(left(household)).toEqual(['can 0', 'can 4']);
    back(household, [{ line: 'line-1', packs: 1 }]);
    expect(left(household)).toEqual(['can 0', 'can 0']);
  });

  test('from the newest lots first', () => {
    const household = partsHousehold();
    household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-f1', packs: 3 }] });
    household.on('2026-11-27').must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 2 }] });
    household.on('2026-11-28').must('order.receive', { order: 'o' });
    expect(back(household, [{ line: 'line-1', packs: 2 }]).takings.map((one) => one.quantity)).toEqual([1, 1]);
    expect(household.facts().all(lots).map((lot) => [lot.receivedOn, leftOfLots(household.facts()).get(lot.id)])).toEqual([['2026-11-27', 1], ['2026-11-28', 0]]);
  });

  test('a lot that is named goes, and the rest from the others; a kit goes as its contents', () => {
    const household = received([{ offer: 'n-can', packs: 3 }, { offer: 'n-kit', packs: 1 }]);
    const named = lotOf(household, 'can', 1);
    expect(back(household, [{ line: 'line-1', packs: 2 }, { line: 'line-2', packs: 1 }], { lots: [{ lot: named, quantity: 5 }] }).takings[0]?.lot).toBe(named);
    expect(left(household)).toEqual(['can 0', 'can 0', 'can 5', 'f1 0', 'w1 0']);
  });

  test('what came wrong goes first and leaves the good one there, unless the good one is named', () => {
    const partly = () => {
      const household = partsHousehold();
      household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-b1', packs: 2 }] });
      household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }, { line: 'line-1', packs: 1, found: 'wrong' }] });
      return household;
    };
    const [first, second] = [partly(), partly()];
    expect(back(first, [{ line: 'line-1', packs: 1 }]).takings).toEqual([]);
    expect(left(first)).toEqual(['b1 1']);
    back(second, [{ line: 'line-1', packs: 1 }], { lots: [{ lot: lotOf(second, 'b1'), quantity: 1 }] });
    expect(left(second)).toEqual(['b1 0']);
    expect(back(second, [{ line: 'line-1', packs: 1 }]).takings).toEqual([]);
  });

  test('what is used already goes back from the car, and nothing leaves the shelf', () => {
    const household = received([{ offer: 'n-b1', packs: 1 }]);
    household.must('lot.use', { lot: lotOf(household, 'b1'), quantity: 1, car: 'pip' });
    expect(back(household, [{ line: 'line-1', packs: 1 }])).toMatchObject({ takings: [], return: { refundExpectedMinor: 8000 } });
  });

  test('a lot of another line, one named twice, one beyond what is left or goes back is refused', () => {
    const household = received([{ offer: 'n-f1', packs: 2 }, { offer: 'n-b1', packs: 1 }, { offer: 'n-can', packs: 2 }]);
    const [filters, battery, can] = [lotOf(household, 'f1'), lotOf(household, 'b1'), lotOf(household, 'can')];
    household.must('lot.use', { lot: can, quantity: 3 });
    const of = (line: string, ...named: readonly (readonly [string, number])[]) => refused(household, { order: 'o', lines: [{ line, packs: 1 }], lots: named.map(([lot, quantity]) => ({ lot, quantity })) });
    expect(of('line-1', [battery, 1])).toEqual({ code: 'lot-of-another-line', text: 'No Battery B1 is among what you send back. Name a lot of what goes back.' });
    expect(of('line-3', [can, 1], [can, 1])).toEqual({ code: 'lot-named-twice', text: 'The same lot of Fern oil is named twice. Name it once, with all that goes back of it.' });
    expect(of('line-3', [can, 2.5])?.code).toBe('lot-used-up');
    expect(of('line-1', [filters, 2])).toEqual({ code: 'lots-beyond-return', text: 'More of Filter F1 is named from the shelf than goes back, which is 1. Lower it, or send back more packs.' });
    expect(left(household)).toEqual(['b1 1', 'can 2', 'can 5', 'f1 2']);
  });
});

describe('what is expected back', () => {
  test('a deposit once, whether the old part or the goods go first', () => {
    const lines = [{ offer: 'n-b1', packs: 2 }, { offer: 'n-f1', packs: 3 }];
    const [apart, together] = [received(lines), received(lines)];
    // By hand: 70.00 a battery and 10.00 deposit; both go back and one deposit came already: 2 * 80.00 - 10.00.
    back(apart, [{ line: 'line-1', packs: 1, what: 'deposit' }]);
    expect(back(apart, [{ line: 'line-1', packs: 2 }]).return.refundExpectedMinor).toBe(15_000);
    expect(back(together, [{ line: 'line-1', packs: 2 }, { line: 'line-1', packs: 1, what: 'deposit' }]).return.refundExpectedMinor).toBe(16_000);
  });

  test('a deposit of the one that was kept stays open when a wrong one goes back', () => {
    const household = partsHousehold();
    household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-b1', packs: 2 }] });
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }, { line: 'line-1', packs: 1, found: 'wrong' }] });
    expect(back(household, [{ line: 'line-1', packs: 1 }]).return.refundExpectedMinor).toBe(8000);
    expect(back(household, [{ line: 'line-1', packs: 1, what: 'deposit' }]).return.refundExpectedMinor).toBe(1000);
  });

  test('nothing for a wrong one in whose place another comes', () => {
    const household = partsHousehold();
    household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-b1', packs: 1 }] });
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1, found: 'wrong', again: true }] });
    expect(back(household, [{ line: 'line-1', packs: 1 }]).return.refundExpectedMinor).toBe(0);
    expect(refused(household, { order: 'o', lines: [{ line: 'line-1', packs: 1, what: 'claim' }] })?.code).toBe('claims-more-than-lacks');
  });

  test('goods less their share of a discount', () => {
    // By hand: 3 * 8.00 less 10.00 is 14.00: shares of 4.67, 4.67 and 4.66.
    const household = received([{ offer: 'n-f1', packs: 3 }], { deliveryMinor: 0, discountMinor: 1000 });
    expect([1, 2].map((packs) => back(household, [{ line: 'line-1', packs }]).return.refundExpectedMinor).reduce((sum, minor) => sum + minor, 0)).toBe(1400);
  });

  test('what never came, or came wrong, is claimed without sending anything', () => {
    const household = partsHousehold();
    household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-b1', packs: 3 }] });
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1, found: 'damaged' }, { line: 'line-1', packs: 1, found: 'not-coming' }, { line: 'line-1', packs: 1 }] });
    expect(refused(household, { order: 'o', lines: [{ line: 'line-1', packs: 3, what: 'claim' }] })).toEqual({ code: 'claims-more-than-lacks', text: 'Packs of Battery B1 that never come, or came wrong with nothing in their place, and were not claimed yet: 2. Check the number.' });
    const { return: claim } = back(household, [{ line: 'line-1', packs: 2, what: 'claim' }], { id: 'c' });
    expect(claim.refundExpectedMinor).toBe(16_000);
    household.must('order.refund', { return: 'c', minor: 16_000 });
    expect(left(household)).toEqual(['b1 1']);
    // The damaged one is settled, so only the good one can still go back.
    expect(refused(household, { order: 'o', lines: [{ line: 'line-1', packs: 2 }] })?.code).toBe('returns-more-than-came');
  });

  // Source: own property. Whatever comes, goes back and is claimed in whatever order: once all is back, what is expected is what was agreed.
  test('in the end exactly what was agreed, but for a delivery made, in any order of deliveries, returns and claims', () => {
    const anyStep = fc.record({ what: fc.constantFrom('good', 'wrong', 'again', 'not-coming', 'goods', 'deposit', 'claim', 'cancel'), line: fc.constantFrom('line-1', 'line-2'), packs: fc.integer({ min: 1, max: 3 }) });
    let returns = 0;
    fc.assert(fc.property(fc.array(anyStep, { minLength: 4, maxLength: 14 }), fc.nat({ max: 900 }), (steps, discountMinor) => {
      const household = partsHousehold();
      household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-b1', packs: 4 }, { offer: 'n-can', packs: 3 }], discountMinor });
      const standing = () => must(standingOrders(household.facts())[0], 'order');
      for (const { what, line, packs } of steps) {
        if (what === 'cancel') household.call('order.cancel', { order: 'o' });
        else if (what === 'goods' || what === 'deposit' || what === 'claim') returns += Number(household.call('order.return', { order: 'o', lines: [{ line, packs, what }] }).ok);
        else household.call('order.receive', { order: 'o', lines: [{ line, packs, found: what === 'again' ? 'wrong' : what, again: what === 'again' }] });
      }
      household.call('order.cancel', { order: 'o' });
      for (const at of [0, 1]) {
        for (const [what, most] of [['deposit', depositsOpen], ['goods', goodsToReturn], ['claim', claimable]] as const) {
          const one = must(standing().lines[at], 'line');
          if (most(one) > 0) household.must('order.return', { order: 'o', lines: [{ line: one.line.id, packs: what === 'deposit' ? 1 : most(one), what }] });
        }
      }
      const expected = standing().returns.reduce((sum, one) => sum + one.refundExpectedMinor, 0);
      const nothingCame = standing().lines.every((one) => neverComes(one) === one.line.packs);
      expect(expected).toBe(agreedMinor(standing().order) - (nothingCame ? 0 : standing().order.deliveryMinor));
      expect(Math.min(...leftOfLots(household.facts()).values(), 0)).toBe(0);
    }), { numRuns: 120, seed: 5 });
    expect(returns).toBeGreaterThan(60);
  });
});

describe('days and sums', () => {
  test('nothing goes back before it came, and nothing comes back before that', () => {
    const household = received([{ offer: 'n-f1', packs: 1 }]);
    expect(refused(household, { order: 'o', on: day('2026-11-27'), lines: [{ line: 'line-1', packs: 1 }] })).toEqual({ code: 'return-before-came', text: 'Filter F1 came on 28 Nov 2026, so it did not go back on 27 Nov 2026. Check the day.' });
    back(household, [{ line: 'line-1', packs: 1 }], { id: 'r', on: day('2026-11-29') });
    expect(household.call('order.refund', { return: 'r', on: day('2026-11-28'), minor: 1 })).toMatchObject({ refusal: { code: 'refund-before-return' } });
  });

  test('no more is expected or comes back than was agreed for it, with delivery', () => {
    // By hand: a filter at 8.00 and 5.00 of delivery.
    const household = received([{ offer: 'n-f1', packs: 2 }]);
    expect(refused(household, { order: 'o', lines: [{ line: 'line-1', packs: 1 }], refundExpectedMinor: 1301 })).toEqual({ code: 'refund-over-paid', text: 'No more than 13.00 GBP can come back for that, of what was agreed. Check the sum.' });
    back(household, [{ line: 'line-1', packs: 1 }], { id: 'r', refundExpectedMinor: 1300 });
    expect(household.call('order.refund', { return: 'r', minor: 1301 })).toMatchObject({ refusal: { code: 'refund-over-paid' } });
    household.must('order.refund', { return: 'r', minor: 1300 });
    expect(household.call('order.refund', { return: 'r', minor: 1 })).toMatchObject({ refusal: { code: 'refund-over-paid' } });
    // Of 21.00 in all, 13.00 came back: 8.00 is left.
    expect(refused(household, { order: 'o', lines: [{ line: 'line-1', packs: 1 }], refundExpectedMinor: 801 })?.code).toBe('refund-over-paid');
  });

  test('an order is not cancelled before it was placed or came, and not changed once it is', () => {
    const household = partsHousehold();
    household.must('order.place', { id: 'o', supplier: 'north', lines: [{ offer: 'n-f1', packs: 2 }] });
    household.on('2026-11-28').must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }] });
    const cancel = (on: string) => household.call('order.cancel', { order: 'o', on: day(on) });
    expect([cancel('2026-11-24'), cancel('2026-11-27')]).toMatchObject([{ refusal: { code: 'cancelled-before-placed' } }, { refusal: { code: 'cancelled-before-came' } }]);
    household.must('order.cancel', { order: 'o' });
    const late = household.call('order.change', { order: 'o', expectedOn: day('2026-12-25') });
    expect(late.ok ? null : sayRefusal(late.refusal)).toBe('That order was cancelled on 28 Nov 2026, so it stays as it is. Place another for what you still want.');
    expect(household.facts().get(orders, 'o')?.expectedOn).toBe('2026-11-28');
  });
});

test('a return that was written before there were claims stands as it was', () => {
  const values = { id: 'r', order: 'o', on: '2026-11-30', lines: [{ line: 'line-1', packs: 1, what: 'goods' }], refundExpectedMinor: 800, refunds: [], papers: [], note: '' };
  const entry = { seq: 0, at: '2026-11-30T09:00:08.000Z', kind: 'order-returned', version: 1, subject: 'household', values } as unknown as Entry;
  expect(memoryFacts(entryKinds, [entry]).get(orderReturns, 'r')).toEqual(values);
  expect(entryKinds.get('order-returned')?.version).toBe(2);
});
