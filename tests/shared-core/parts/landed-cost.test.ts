import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kitContents, kitShares } from '../../../shared-core/parts/kit-price.ts';
import { landedCost } from '../../../shared-core/parts/landed-cost.ts';
import { largestRemainder } from '../../../shared-core/parts/largest-remainder.ts';
import { readOrderInstance } from '../../../shared-core/parts/read-order-instance.ts';

describe('largestRemainder', () => {
  test.each([
    { case: 'seven seats on 50/30/20: quotas 3.5, 2.1, 1.4', amount: 7, weights: [50, 30, 20], shares: [4, 2, 1], source: 'quotas seen (infinitelexicon.com), result by the method' },
    { case: 'ten seats', amount: 10, weights: [47_000, 16_000, 15_900, 12_000, 6_000, 3_100], shares: [5, 2, 1, 1, 1, 0], source: 'Wikipedia, Largest remainder method: table from memory, result computed' },
    { case: 'four seats, quota 232.5', amount: 4, weights: [500, 300, 110, 20], shares: [2, 1, 1, 0], source: 'archipel-des-libertes.fr note, seen' },
    { case: '1.00 over three alike', amount: 100, weights: [1, 1, 1], shares: [34, 33, 33], source: 'computed, ties to the earliest' },
    { case: '10 over three alike', amount: 10, weights: [7, 7, 7], shares: [4, 3, 3], source: 'computed, ties to the earliest' },
    { case: 'delivery 9.95 over three lines', amount: 995, weights: [2999, 1250, 4500], shares: [341, 142, 512], source: 'computed' },
    { case: 'delivery 12.99 over four lines, one tiny', amount: 1299, weights: [1099, 250, 4999, 15], shares: [224, 51, 1021, 3], source: 'computed' },
    { case: 'one minor unit over three', amount: 1, weights: [1, 1, 1], shares: [1, 0, 0], source: 'computed, ties to the earliest' },
    { case: 'a discount', amount: -10, weights: [7, 7, 7], shares: [-4, -3, -3], source: 'the row above, turned round' },
    { case: 'nothing weighs anything: equally', amount: 5, weights: [0, 0], shares: [3, 2], source: 'our own rule' },
    { case: 'nothing to share', amount: 0, weights: [3, 4], shares: [0, 0], source: 'by hand' },
    { case: 'the amount times a weight is beyond a double', amount: 9_000_000_000_000_000, weights: [9_000_000_000_000_000, 1], shares: [8_999_999_999_999_999, 1], source: 'by hand: quota of the second is 0.99..' },
  ])('$case', ({ amount, weights, shares }) => {
    expect(largestRemainder(amount, weights)).toEqual(shares);
  });

  test('shares sum to the amount, each within one of its quota, in the order of the weights', () => {
    const weights = fc.array(fc.nat(1_000_000), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), weights, (amount, given) => {
        const shares = largestRemainder(amount, given);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(amount);
        const total = given.reduce((sum, weight) => sum + weight, 0);
        shares.forEach((share, i) => {
          expect(Object.is(share, -0)).toBe(false);
          if (total > 0) expect(Math.abs(share - (amount * (given[i] ?? 0)) / total)).toBeLessThan(1);
          shares.forEach((other, k) => {
            if ((given[i] ?? 0) > (given[k] ?? 0)) expect(Math.abs(share)).toBeGreaterThanOrEqual(Math.abs(other));
          });
        });
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  test.each([
    { case: 'part of a minor unit', amount: 1.5, weights: [1] },
    { case: 'nobody', amount: 1, weights: [] },
    { case: 'a weight below 0', amount: 1, weights: [2, -1] },
  ])('$case is our own bug', ({ amount, weights }) => {
    expect(() => largestRemainder(amount, weights)).toThrow('Bug');
  });
});

describe('landedCost', () => {
  test('delivery and discount fall on lines by goods value, and all sums to what was paid', () => {
    // By hand: goods 87.49, delivery 9.95 as above, 5.00 off: quotas 171.39, 71.44, 257.17, so the odd one goes to the second.
    const landed = landedCost([{ goodsMinor: 2999 }, { goodsMinor: 1250 }, { goodsMinor: 4500 }], { deliveryMinor: 995, discountMinor: 500 });
    expect(landed.map((line) => [line.deliveryMinor, line.discountMinor, line.landedMinor])).toEqual([
      [341, 171, 3169],
      [142, 72, 1320],
      [512, 257, 4755],
    ]);
    expect(landed.reduce((sum, line) => sum + line.landedMinor, 0)).toBe(8749 + 995 - 500);
  });

  test('no lines, no shares; free goods share equally', () => {
    expect(landedCost([], { deliveryMinor: 0, discountMinor: 0 })).toEqual([]);
    expect(landedCost([{ goodsMinor: 0 }, { goodsMinor: 0 }], { deliveryMinor: 5, discountMinor: 0 }).map((line) => line.landedMinor)).toEqual([3, 2]);
  });
});

describe('kitShares', () => {
  const filter = { part: 'filter', quantity: 1, separate: { priceMinor: 1000, quantity: 1 } };
  const oil = { part: 'oil', quantity: 4, separate: { priceMinor: 5000, quantity: 5 } };

  test.each([
    { case: 'by separate prices: 10.00 and 4 of 5 litres at 50.00', price: 4000, contents: [filter, oil], by: 'separate-prices', minor: [800, 3200] },
    { case: 'a price missing: equally', price: 4001, contents: [filter, { ...oil, separate: null }], by: 'equally', minor: [2001, 2000] },
    { case: 'all separate prices 0: equally', price: 3, contents: [{ ...filter, separate: { priceMinor: 0, quantity: 1 } }, { ...oil, separate: { priceMinor: 0, quantity: 1 } }], by: 'equally', minor: [2, 1] },
    { case: 'one separate price 0: it gets nothing', price: 3, contents: [{ ...filter, separate: { priceMinor: 0, quantity: 1 } }, oil], by: 'separate-prices', minor: [0, 3] },
    { case: 'decimals: 0.1 of 0.3 and 0.2 of 0.3 at one price', price: 10, contents: [{ part: 'a', quantity: 0.1, separate: { priceMinor: 7, quantity: 0.3 } }, { part: 'b', quantity: 0.2, separate: { priceMinor: 7, quantity: 0.3 } }], by: 'separate-prices', minor: [3, 7] },
    { case: 'an empty kit', price: 3, contents: [], by: 'equally', minor: [] },
  ])('$case', ({ price, contents, by, minor }) => {
    const shares = kitShares(price, contents);
    expect(shares.by).toBe(by);
    expect(shares.shares.map((share) => share.minor)).toEqual(minor);
  });

  test('the cheapest separate price is the least per unit, for a single pack', () => {
    const offer = (id: string, part: string, quantity: number, priceMinor: number) => ({ id, supplier: 's', part, quantity, priceMinor });
    const read = readOrderInstance({
      suppliers: [{ id: 's', deliveryMinor: 0, leadDays: 0 }],
      parts: [{ id: 'oil', meets: [] }, { id: 'plug', meets: [] }, { id: 'kit', meets: [], contains: [{ part: 'oil', quantity: 4 }, { part: 'plug', quantity: 1 }] }],
      offers: [offer('o1', 'oil', 1, 900), offer('o2', 'oil', 5, 3500), offer('o3', 'oil', 4, 2900), offer('o4', 'kit', 1, 4000)],
      needs: [],
      shelf: [],
      orderOn: '2027-01-02',
    });
    if (!read.ok) throw new Error(read.refusal.code);
    expect(kitContents(read.value, 'kit')).toEqual([
      { part: 'oil', quantity: 4, separate: { priceMinor: 3500, quantity: 5 } },
      { part: 'plug', quantity: 1, separate: null },
    ]);
  });
});
