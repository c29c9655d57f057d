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
const other = { id: 'other', meets: ['oil-A'] };
const oneFilter = { spec: 'filter-A', quantity: 1 };

const sources: readonly Row[] = [
  {
    case: 'a kit counts as its contents, and its rest is left',
    why: 'kit 20.00 for filter and 4 L; apart 9.00 + 15.00',
    parts: [filter, oil, { id: 'kit', contains: [{ part: 'filter', quantity: 1 }, { part: 'oil', quantity: 4 }] }],
    offers: [{ part: 'kit', priceMinor: 2000 }, { part: 'filter', priceMinor: 900 }, { part: 'oil', quantity: 4, priceMinor: 1500 }],
    needs: [oneFilter, { spec: 'oil-A', quantity: 3.5 }],
    expected: { totalMinor: 2000, lines: [{ offer: 'o1', packs: 1 }], left: [{ part: 'oil', quantity: 0.5 }] },
  },
  {
    case: 'a pack of two kits holds twice the contents, a part named twice counts twice',
    why: '2 x (1 + 1) filters',
    parts: [filter, { id: 'kit', contains: [{ part: 'filter', quantity: 1 }, { part: 'filter', quantity: 1 }] }],
    offers: [{ part: 'kit', quantity: 2, priceMinor: 2000 }],
    needs: [{ spec: 'filter-A', quantity: 4 }],
    expected: { totalMinor: 2000, left: [] },
  },
  {
    case: 'a part that meets two specifications serves both',
    why: 'one can of 5 for 2 + 3',
    parts: [{ id: 'both', meets: ['oil-A', 'oil-B'] }, oil],
    offers: [{ part: 'both', quantity: 5, priceMinor: 4000 }, { part: 'oil', quantity: 5, priceMinor: 3500 }],
    needs: [{ spec: 'oil-A', quantity: 2 }, { spec: 'oil-B', quantity: 3 }],
    expected: { totalMinor: 4000, left: [] },
  },
  {
    case: 'a part that meets nothing like it is never used',
    why: 'only oil-B is offered',
    parts: [{ id: 'both', meets: ['oil-B'] }],
    offers: [{ part: 'both', priceMinor: 1 }],
    needs: [{ spec: 'oil-A', quantity: 1 }],
    expected: { totalMinor: 0, lines: [], unmet: [{ need: 'n1', code: 'none-in-time' }] },
  },
  {
    case: 'parts may be mixed',
    why: '1 from the shelf and 1 L bought at 6.00, less than 2 L for 11.00',
    parts: [oil, other],
    offers: [{ part: 'oil', priceMinor: 600 }, { part: 'oil', quantity: 2, priceMinor: 1100 }],
    needs: [{ spec: 'oil-A', quantity: 2 }],
    shelf: [{ part: 'other', quantity: 1 }],
    expected: { totalMinor: 600 },
  },
  {
    case: 'not mixed: one part only, though from two sources',
    why: 'the shelf holds another part, so 2 x 6.00 or 11.00',
    parts: [oil, other],
    offers: [{ part: 'oil', priceMinor: 600 }, { part: 'oil', quantity: 2, priceMinor: 1100 }],
    needs: [{ spec: 'oil-A', quantity: 2, mix: false }],
    shelf: [{ part: 'other', quantity: 1 }],
    expected: { totalMinor: 1100, left: [{ part: 'oil', quantity: 0 }, { part: 'other', quantity: 1 }].filter(({ quantity }) => quantity > 0) },
  },
  {
    case: 'not mixed: the same part from the shelf and from a pack',
    why: '1 on the shelf and 1 L at 6.00',
    parts: [oil, other],
    offers: [{ part: 'oil', priceMinor: 600 }, { part: 'other', quantity: 2, priceMinor: 1100 }],
    needs: [{ spec: 'oil-A', quantity: 2, mix: false }],
    shelf: [{ part: 'oil', quantity: 1 }],
    expected: { totalMinor: 600, left: [] },
  },
  {
    case: 'with a step, halves do not make a whole',
    why: 'half a piece from the shelf is of no use: two packs of 1 at 3.00',
    parts: [filter, { id: 'half', meets: ['filter-A'] }],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [{ spec: 'filter-A', quantity: 2, step: 1 }],
    shelf: [{ part: 'half', quantity: 0.5 }, { part: 'filter', quantity: 0.5 }],
    expected: { totalMinor: 600 },
  },
  {
    case: 'with a step of 2, one and one do not make a pair',
    why: 'pairs at 9.00 rather than two singles at 2.00 from different offers, of which there is one each',
    parts: [filter, { id: 'pair', meets: ['filter-A'] }],
    offers: [{ part: 'filter', priceMinor: 200, most: 1 }, { part: 'filter', priceMinor: 210, most: 1 }, { part: 'pair', quantity: 2, priceMinor: 900 }],
    needs: [{ spec: 'filter-A', quantity: 2, step: 2 }],
    expected: { totalMinor: 900 },
  },
  {
    case: 'a quantity that its own step does not divide cannot be met',
    why: '3 is no multiple of 2',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 200 }],
    needs: [{ spec: 'filter-A', quantity: 3, step: 2 }],
    expected: { totalMinor: 0, unmet: [{ need: 'n1', code: 'not-enough' }] },
  },
];

const days: readonly Row[] = [
  {
    case: 'goods that come on the very day are in time',
    why: '2 January + 14 days = 16 January',
    suppliers: [{ leadDays: 14 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [oneFilter],
    expected: { totalMinor: 300 },
  },
  {
    case: 'a day later is too late, and does not stop the others',
    why: '2 January + 15 days = 17 January; n2 has until then',
    suppliers: [{ leadDays: 15 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [oneFilter, { ...oneFilter, neededBy: '2027-01-17' }],
    expected: { totalMinor: 300, unmet: [{ need: 'n1', code: 'none-in-time' }] },
  },
  {
    case: 'stock that expires on the day is good, the day before is not',
    why: 'n1 takes the lot of the 16th, n2 must buy',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [oneFilter, { ...oneFilter, neededBy: '2027-01-17' }],
    shelf: [{ part: 'filter', quantity: 1, expires: '2027-01-16' }],
    expected: { totalMinor: 300, left: [], allocation: [{ need: 'n1', part: 'filter', quantity: 1, from: 'shelf' }, { need: 'n2', part: 'filter', quantity: 1, from: 'o1' }] },
  },
  {
    case: 'stock must be good on the day of use, goods be here on the day they are needed',
    why: 'n1 is used on the 16th and takes the lot of that day; n2, used on the 17th, buys, and for both the goods must be here on the 15th: 2 January + 13 days',
    suppliers: [{ leadDays: 13 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [{ ...oneFilter, neededBy: '2027-01-15', usedOn: '2027-01-16' }, { ...oneFilter, neededBy: '2027-01-15', usedOn: '2027-01-17' }],
    shelf: [{ part: 'filter', quantity: 2, expires: '2027-01-16' }],
    expected: { totalMinor: 300, left: [{ part: 'filter', quantity: 1 }], allocation: [{ need: 'n1', part: 'filter', quantity: 1, from: 'shelf' }, { need: 'n2', part: 'filter', quantity: 1, from: 'o1' }] },
  },
  {
    case: 'the lot that keeps is saved for the later need',
    why: 'n1 (10th) takes the lot that ends on the 12th, n2 (20th) the one that keeps',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [{ ...oneFilter, neededBy: '2027-01-10' }, { ...oneFilter, neededBy: '2027-01-20' }],
    shelf: [{ part: 'filter', quantity: 1 }, { part: 'filter', quantity: 1, expires: '2027-01-12' }],
    expected: { totalMinor: 0, left: [] },
  },
  {
    case: 'two later needs share only what keeps until then',
    why: 'the lot of the 12th serves neither of the 20th, so one of them buys at 3.00',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [{ ...oneFilter, neededBy: '2027-01-10', mix: false }, { spec: 'filter-A', quantity: 2, neededBy: '2027-01-20' }],
    shelf: [{ part: 'filter', quantity: 1 }, { part: 'filter', quantity: 2, expires: '2027-01-12' }],
    expected: { totalMinor: 300, left: [{ part: 'filter', quantity: 1 }] },
  },
  {
    case: 'alike needs of different days are told apart where stock expires between them',
    why: 'n1 takes 2 of the 3 that end on the 12th; n2 takes the 1 that keeps and buys 1 at 3.00',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [{ spec: 'filter-A', quantity: 2, neededBy: '2027-01-10' }, { spec: 'filter-A', quantity: 2, neededBy: '2027-01-20' }],
    shelf: [{ part: 'filter', quantity: 3, expires: '2027-01-12' }, { part: 'filter', quantity: 1 }],
    expected: { totalMinor: 300, left: [{ part: 'filter', quantity: 1 }] },
  },
  {
    case: 'expired stock stays on the shelf, and is no source',
    why: 'expired on the 1st',
    parts: [filter],
    needs: [oneFilter],
    shelf: [{ part: 'filter', quantity: 2, expires: '2027-01-01' }],
    expected: { totalMinor: 0, left: [{ part: 'filter', quantity: 2 }], unmet: [{ need: 'n1', code: 'none-in-time' }] },
  },
  {
    case: 'what was needed in the past can still come from the shelf, never from a shop',
    why: 'no shop delivers yesterday',
    suppliers: [{ leadDays: 0 }],
    parts: [filter, oil],
    offers: [{ part: 'oil', priceMinor: 300 }],
    needs: [{ ...oneFilter, neededBy: '2026-12-01' }, { spec: 'oil-A', quantity: 1, neededBy: '2026-12-01' }],
    shelf: [{ part: 'filter', quantity: 1 }],
    expected: { totalMinor: 0, unmet: [{ need: 'n2', code: 'none-in-time' }] },
  },
];

const ranks: readonly Row[] = [
  {
    case: 'a late need goes before two that are due',
    why: '4 on the shelf, nothing to buy: rank 0 wants 4, the others 2 each',
    parts: [oil],
    needs: [{ spec: 'oil-A', quantity: 2 }, { spec: 'oil-A', quantity: 2 }, { spec: 'oil-A', quantity: 4, rank: 0 }],
    shelf: [{ part: 'oil', quantity: 4 }],
    expected: { unmet: [{ need: 'n1', code: 'not-enough' }, { need: 'n2', code: 'not-enough' }], left: [] },
  },
  {
    case: 'of two needs that differ in nothing but rank, the late one',
    why: 'one on the shelf',
    parts: [filter],
    needs: [oneFilter, { ...oneFilter, rank: 0 }, { ...oneFilter, rank: 2 }],
    shelf: [{ part: 'filter', quantity: 1 }],
    expected: { unmet: [{ need: 'n1', code: 'not-enough' }, { need: 'n3', code: 'not-enough' }] },
  },
  {
    case: 'of one rank, as many as possible',
    why: '4 on the shelf serve 2 + 2 rather than 4',
    parts: [oil],
    needs: [{ spec: 'oil-A', quantity: 4 }, { spec: 'oil-A', quantity: 2 }, { spec: 'oil-A', quantity: 2 }],
    shelf: [{ part: 'oil', quantity: 4 }],
    expected: { unmet: [{ need: 'n1', code: 'not-enough' }] },
  },
  {
    case: 'a wish is bought at any price where it can be met',
    why: 'met before cheap: 100 000.00',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 10_000_000 }],
    needs: [{ ...oneFilter, rank: 2 }],
    expected: { totalMinor: 10_000_000, unmet: [] },
  },
  {
    case: 'among the ways that meet as many, the cheapest',
    why: 'one piece on the shelf for two needs of which one can also be met by a purchase of 3.00, the other for 5.00',
    parts: [{ id: 'any', meets: ['x', 'y'] }, { id: 'px', meets: ['x'] }, { id: 'py', meets: ['y'] }],
    offers: [{ part: 'px', priceMinor: 500 }, { part: 'py', priceMinor: 300 }],
    needs: [{ spec: 'x', quantity: 1 }, { spec: 'y', quantity: 1 }],
    shelf: [{ part: 'any', quantity: 1 }],
    expected: { totalMinor: 300 },
  },
  {
    case: 'left for later where that is cheaper',
    why: 'later 2.00 < now 3.00',
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [{ ...oneFilter, laterMinor: 200 }],
    expected: { totalMinor: 200, laterMinor: 200, goodsMinor: 0, later: ['n1'], unmet: [], allocation: [] },
  },
  {
    case: 'of two needs that differ in nothing but the cost of waiting, the one that waits for less',
    why: 'one on the shelf: later 2.00 < 5.00',
    parts: [filter],
    needs: [{ ...oneFilter, laterMinor: 200 }, { ...oneFilter, laterMinor: 500 }],
    shelf: [{ part: 'filter', quantity: 1 }],
    expected: { totalMinor: 200, later: ['n1'] },
  },
  {
    case: 'not left for later where now is cheaper, together with another',
    why: 'with n1 the delivery of 5.00 is paid anyway: 3.00 + 3.00 + 5.00 = 11.00 < 3.00 + 5.00 + later 4.00',
    suppliers: [{ deliveryMinor: 500 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    needs: [oneFilter, { ...oneFilter, laterMinor: 400 }],
    expected: { totalMinor: 1100, later: [] },
  },
  {
    case: 'what may wait and cannot be had now waits',
    why: 'no offer at all: later 4.00',
    parts: [filter],
    needs: [{ ...oneFilter, laterMinor: 400 }],
    expected: { totalMinor: 400, later: ['n1'], unmet: [] },
  },
  {
    case: 'waiting makes room for what cannot wait, even at a higher rank',
    why: 'one on the shelf; the late one may wait for 9.00, the wish may not',
    parts: [filter],
    needs: [{ ...oneFilter, rank: 0, laterMinor: 900 }, { ...oneFilter, rank: 2 }],
    shelf: [{ part: 'filter', quantity: 1 }],
    expected: { totalMinor: 900, later: ['n1'], unmet: [] },
  },
  { case: 'nothing at all', why: 'nothing', expected: { totalMinor: 0, boundMinor: 0, lines: [], allocation: [], left: [], later: [], unmet: [] } },
  {
    case: 'nothing needed: nothing bought, the shelf stays',
    why: 'nothing',
    suppliers: [{ deliveryMinor: 100, freeFromMinor: 200, minimumMinor: 100 }],
    parts: [filter],
    offers: [{ part: 'filter', priceMinor: 300 }],
    shelf: [{ part: 'filter', quantity: 1.5 }],
    expected: { totalMinor: 0, lines: [], left: [{ part: 'filter', quantity: 1.5 }] },
  },
];

describe.each([
  { of: 'sources', rows: sources },
  { of: 'days', rows: days },
  { of: 'ranks and later', rows: ranks },
])('the order: $of', ({ rows }) => {
  test.each(rows)('$case', async ({ case: _case, why: _why, expected, ...pieces }) => {
    expect(await solved(written(pieces))).toMatchObject({ status: 'optimal', ...expected });
  });
});
