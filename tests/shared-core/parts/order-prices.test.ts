import { describe, expect, test } from 'vitest';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import { solved, written, type Pieces } from './order-written.ts';

interface Row extends Pieces {
  readonly case: string;
  /** The arithmetic by hand. */
  readonly why: string;
  readonly expected: Partial<OrderAnswer>;
}

const filter = { id: 'filter', meets: ['filter-A'] };
const oil = { id: 'oil', meets: ['oil-A'] };
const oneFilter = { spec: 'filter-A', quantity: 1 };

const packs: readonly Row[] = [
  {
    case: 'packs are whole and what is over stands on the shelf',
    why: 'one can of 5 L at 34.99 for 4 L',
    parts: [oil],
    offers: [{ part: 'oil', quantity: 5, priceMinor: 3499 }],
    needs: [{ spec: 'oil-A', quantity: 4 }],
    expected: { totalMinor: 3499, lines: [{ offer: 'o1', packs: 1 }], allocation: [{ need: 'n1', part: 'oil', quantity: 4, from: 'o1' }], left: [{ part: 'oil', quantity: 1 }] },
  },
  {
    case: 'cars share a can',
    why: '1.7 + 3.2 = 4.9 of one can of 5, in decimals that binary does not hold: 0.1 left exactly',
    parts: [oil],
    offers: [{ part: 'oil', quantity: 5, priceMinor: 3499 }],
    needs: [{ spec: 'oil-A', quantity: 1.7 }, { spec: 'oil-A', quantity: 3.2, car: 'c2' }],
    expected: { totalMinor: 3499, left: [{ part: 'oil', quantity: 0.1 }] },
  },
  {
    case: '0.1 + 0.2 is 0.3: no second pack for a rounding error',
    why: 'one pack of 0.3',
    parts: [oil],
    offers: [{ part: 'oil', quantity: 0.3, priceMinor: 100 }],
    needs: [{ spec: 'oil-A', quantity: 0.1 }, { spec: 'oil-A', quantity: 0.2 }],
    expected: { totalMinor: 100, left: [] },
  },
  {
    case: 'a millionth too much takes a second pack',
    why: '2 packs of 1 for 1.000001',
    parts: [oil],
    offers: [{ part: 'oil', quantity: 1, priceMinor: 100 }],
    needs: [{ spec: 'oil-A', quantity: 1.000001 }],
    expected: { totalMinor: 200, left: [{ part: 'oil', quantity: 0.999999 }] },
  },
  {
    case: 'most bounds the packs of one offer',
    why: '2 at 3.00, then 1 at 5.00',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300, most: 2 }, { part: 'filter', priceMinor: 500 }],
    needs: [{ spec: 'filter-A', quantity: 3 }],
    expected: { totalMinor: 1100, lines: [{ offer: 'o1', packs: 2 }, { offer: 'o2', packs: 1 }] },
  },
  {
    case: 'a pack that costs nothing is not bought twice',
    why: 'one free pack is enough',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 0 }],
    needs: [oneFilter],
    expected: { totalMinor: 0, lines: [{ offer: 'o1', packs: 1 }], left: [] },
  },
  {
    case: 'an offer of which there is none is no source',
    why: 'most 0',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300, most: 0 }],
    needs: [oneFilter],
    expected: { totalMinor: 0, unmet: [{ need: 'n1', code: 'none-in-time' }] },
  },
];

const prices: readonly Row[] = [
  {
    case: 'the price of the highest break holds for all packs',
    why: '3 x 3.20 = 9.60, not 2 x 3.50 + 3.20',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 350, breaks: [{ packs: 3, priceMinor: 320 }, { packs: 9, priceMinor: 310 }] }],
    needs: [{ spec: 'filter-A', quantity: 3 }],
    expected: { totalMinor: 960 },
  },
  {
    case: 'three may be cheaper than two',
    why: '3 x 2.00 = 6.00 < 2 x 3.50 = 7.00',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 350, breaks: [{ packs: 3, priceMinor: 200 }] }],
    needs: [{ spec: 'filter-A', quantity: 2 }],
    expected: { totalMinor: 600, lines: [{ offer: 'o1', packs: 3 }], left: [{ part: 'filter', quantity: 1 }] },
  },
  {
    case: 'a break that makes it dearer is kept clear of, where that can be',
    why: '1 x 3.00 from the first and 1 x 3.10 from the second, for two of the first cost 2 x 3.20',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300, breaks: [{ packs: 2, priceMinor: 320 }] }, { part: 'filter', priceMinor: 310 }],
    needs: [{ spec: 'filter-A', quantity: 2 }],
    expected: { totalMinor: 610 },
  },
  {
    case: 'delivery once for each supplier used',
    why: '9.00 + 1.00 from s1 with 5.00 delivery = 15.00 < 9.00 + 5.00 + 0.50 + 4.95',
    suppliers: [{ deliveryMinor: 500 }, { deliveryMinor: 495 }],
    parts: [filter, oil],
    offers: [{ part: 'filter', priceMinor: 900 }, { part: 'oil', priceMinor: 100 }, { supplier: 's2', part: 'oil', priceMinor: 50 }],
    needs: [oneFilter, { spec: 'oil-A', quantity: 1 }],
    expected: { totalMinor: 1500, goodsMinor: 1000, deliveryMinor: 500 },
  },
  {
    case: 'free from a sum, reached exactly',
    why: 'goods 20.00 reach 20.00: no delivery',
    suppliers: [{ deliveryMinor: 500, freeFromMinor: 2000 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 1000 }],
    needs: [{ spec: 'filter-A', quantity: 2 }],
    expected: { totalMinor: 2000, deliveryMinor: 0 },
  },
  {
    case: 'something nobody needs is bought where that makes delivery free for less',
    why: '19.00 + 5.00 delivery = 24.00 > 19.00 + 1.00 rag = 20.00',
    suppliers: [{ deliveryMinor: 500, freeFromMinor: 2000 }],
    parts: [filter, { id: 'rag' }],
    offers: [{ part: 'filter', priceMinor: 1900 }, { part: 'rag', priceMinor: 100 }],
    needs: [oneFilter],
    expected: { totalMinor: 2000, deliveryMinor: 0, left: [{ part: 'rag', quantity: 1 }] },
  },
  {
    case: 'the sum that counts is the one after breaks',
    why: '3 x 6.50 = 19.50 does not reach 20.00, though 3 x 7.00 would: 19.50 + 5.00; a fourth costs more',
    suppliers: [{ deliveryMinor: 500, freeFromMinor: 2000 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 700, breaks: [{ packs: 3, priceMinor: 650 }] }],
    needs: [{ spec: 'filter-A', quantity: 3 }],
    expected: { totalMinor: 2450, deliveryMinor: 500 },
  },
  {
    case: 'free from null is never free',
    why: '100.00 + 5.00',
    suppliers: [{ deliveryMinor: 500, freeFromMinor: null }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 10_000 }],
    needs: [oneFilter],
    expected: { totalMinor: 10_500 },
  },
  {
    case: 'free from 0 is always free',
    why: '1.00',
    suppliers: [{ deliveryMinor: 500, freeFromMinor: 0 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 100 }],
    needs: [oneFilter],
    expected: { totalMinor: 100 },
  },
  {
    case: 'a used supplier wants its minimum',
    why: '2 x 3.00 from s1 (minimum 5.00) = 6.00 < 6.50 from s2',
    suppliers: [{ minimumMinor: 500 }, {}],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }, { supplier: 's2', part: 'filter', priceMinor: 650 }],
    needs: [oneFilter],
    expected: { totalMinor: 600, lines: [{ offer: 'o1', packs: 2 }] },
  },
  {
    case: 'a minimum out of reach shuts the supplier',
    why: 'one pack at 3.00 is all there is of s1: so 6.50 from s2',
    suppliers: [{ minimumMinor: 500 }, {}],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300, most: 1 }, { supplier: 's2', part: 'filter', priceMinor: 650 }],
    needs: [oneFilter],
    expected: { totalMinor: 650 },
  },
  {
    case: 'a minimum above free-from: delivery is never paid',
    why: '2 x 3.00 = 6.00 reaches 5.00, free from 4.00',
    suppliers: [{ deliveryMinor: 100, freeFromMinor: 400, minimumMinor: 500 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [oneFilter],
    expected: { totalMinor: 600, deliveryMinor: 0 },
  },
];

describe.each([
  { of: 'packs', rows: packs },
  { of: 'prices', rows: prices },
])('the order: $of', ({ rows }) => {
  test.each(rows)('$case', async ({ case: _case, why: _why, expected, ...pieces }) => {
    expect(await solved(written(pieces))).toMatchObject({ status: 'optimal', ...expected });
  });
});
