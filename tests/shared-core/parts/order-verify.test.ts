import { describe, expect, test } from 'vitest';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import type { OrderInstance } from '../../../shared-core/parts/order-instance.ts';
import { verifyOrder } from '../../../shared-core/parts/order-verify.ts';
import { ORDER_WORDS } from '../../../shared-core/result/words/en-order.ts';
import { hasWords, sayRefusal } from '../../../shared-core/result/words/say.ts';
import { instanceOf, written } from './order-written.ts';

/**
 * Everything at once, by hand. Goods: 1 kit at 20.00 and 3 filters at 3.20 (from 3 packs on) from s1 make 29.60, delivery 5.00 (free from
 * 30.00); s2 gives 2 cans at 6.00, its minimum of 12.00, delivery 1.00. n5 waits for 2.50. Total 29.60 + 5.00 + 12.00 + 1.00 + 2.50 = 50.10.
 */
const instance: OrderInstance = instanceOf(
  written({
    suppliers: [{ deliveryMinor: 500, freeFromMinor: 3000 }, { deliveryMinor: 100, minimumMinor: 1200, leadDays: 14 }],
    parts: [
      { id: 'filter', meets: ['filter-A'] },
      { id: 'oil', meets: ['oil-A'] },
      { id: 'other', meets: ['oil-A', 'oil-B'] },
      { id: 'kit', meets: ['filter-A'], contains: [{ part: 'filter', quantity: 1 }, { part: 'oil', quantity: 4 }] },
    ],
    offers: [
      { part: 'kit', priceMinor: 2000 },
      { part: 'filter', priceMinor: 350, most: 4, breaks: [{ packs: 3, priceMinor: 320 }] },
      { supplier: 's2', part: 'other', quantity: 1.5, priceMinor: 600 },
    ],
    needs: [
      { spec: 'filter-A', quantity: 4, step: 1 },
      { spec: 'oil-A', quantity: 3.5, mix: false },
      { spec: 'oil-B', quantity: 2.5 },
      { spec: 'filter-A', quantity: 1, neededBy: '2027-01-02' },
      { spec: 'filter-A', quantity: 1, laterMinor: 250 },
      { spec: 'oil-B', quantity: 0.5, neededBy: '2027-01-20', rank: 2 },
      { spec: 'oil-B', quantity: 1.5, rank: 2 },
    ],
    shelf: [{ part: 'other', quantity: 0.5, expires: '2027-01-18' }, { part: 'other', quantity: 0.5, expires: '2027-01-25' }],
  }),
);

const good: OrderAnswer = {
  ...{ status: 'optimal', totalMinor: 5010, boundMinor: 5010, goodsMinor: 4160, deliveryMinor: 600, laterMinor: 250 },
  lines: [{ offer: 'o1', packs: 1 }, { offer: 'o2', packs: 3 }, { offer: 'o3', packs: 2 }],
  allocation: [
    { need: 'n1', part: 'filter', quantity: 1, from: 'o1' },
    { need: 'n1', part: 'filter', quantity: 3, from: 'o2' },
    { need: 'n2', part: 'oil', quantity: 3.5, from: 'o1' },
    { need: 'n3', part: 'other', quantity: 2, from: 'o3' },
    { need: 'n3', part: 'other', quantity: 0.5, from: 'shelf' },
    { need: 'n6', part: 'other', quantity: 0.5, from: 'shelf' },
  ],
  left: [{ part: 'oil', quantity: 0.5 }, { part: 'other', quantity: 1 }],
  later: ['n5'],
  unmet: [{ need: 'n4', code: 'none-in-time' }, { need: 'n7', code: 'not-enough' }],
};

type Change = (answer: OrderAnswer) => Partial<OrderAnswer>;

/** The rows of a list with one replaced. */
function row<Row>(rows: readonly Row[], at: number, change: Partial<Row>): Row[] {
  return rows.map((each, i) => (i === at ? { ...each, ...change } : each));
}

describe('verifyOrder', () => {
  test('has nothing to say about a right answer', () => {
    expect(verifyOrder(instance, good)).toEqual([]);
    expect(verifyOrder(instance, { ...good, status: 'stopped', boundMinor: 5009 })).toEqual([]);
  });

  const tampered: readonly { readonly case: string; readonly code: string; readonly change: Change }[] = [
    { case: 'an offer that is not there', code: 'unknown-offer', change: ({ lines }) => ({ lines: row(lines, 0, { offer: 'o9' }) }) },
    { case: 'a need that is not there', code: 'unknown-need', change: ({ allocation }) => ({ allocation: row(allocation, 0, { need: 'n9' }) }) },
    { case: 'an unmet need that is not there', code: 'unknown-need', change: ({ unmet }) => ({ unmet: [...unmet, { need: 'n9', code: 'not-enough' }] }) },
    { case: 'a waiting need that is not there', code: 'unknown-need', change: ({ later }) => ({ later: [...later, 'n9'] }) },
    { case: 'a part that is not there', code: 'unknown-part', change: ({ allocation }) => ({ allocation: row(allocation, 0, { part: 'p9' }) }) },
    { case: 'a leftover that is not there', code: 'unknown-part', change: ({ left }) => ({ left: row(left, 0, { part: 'p9' }) }) },
    { case: 'a source that is not there', code: 'unknown-source', change: ({ allocation }) => ({ allocation: row(allocation, 0, { from: 'o9' }) }) },
    { case: 'a line twice', code: 'row-twice', change: ({ lines }) => ({ lines: [{ offer: 'o3', packs: 1 }, { offer: 'o3', packs: 1 }, ...lines.slice(0, 2)] }) },
    { case: 'an allocation twice', code: 'row-twice', change: ({ allocation }) => ({ allocation: [...row(allocation, 1, { quantity: 2 }), { need: 'n1', part: 'filter', quantity: 1, from: 'o2' }] }) },
    { case: 'a leftover twice', code: 'row-twice', change: ({ left }) => ({ left: [...row(left, 1, { quantity: 0.5 }), { part: 'other', quantity: 0.5 }] }) },
    { case: 'more packs than there are', code: 'more-packs-than-there-are', change: ({ lines }) => ({ lines: row(lines, 1, { packs: 5 }) }) },
    { case: 'a need met by less', code: 'need-not-whole', change: ({ allocation }) => ({ allocation: row(allocation, 3, { quantity: 1.5 }) }) },
    { case: 'a need met by more', code: 'need-not-whole', change: ({ allocation }) => ({ allocation: row(allocation, 2, { quantity: 4 }) }) },
    { case: 'a need met by a hair less', code: 'need-not-whole', change: ({ allocation }) => ({ allocation: row(allocation, 2, { quantity: 3.4999999 }) }) },
    { case: 'a need that is nowhere', code: 'need-not-settled-once', change: ({ unmet }) => ({ unmet: unmet.slice(1) }) },
    { case: 'a need both met and unmet', code: 'need-not-settled-once', change: ({ unmet }) => ({ unmet: [...unmet, { need: 'n1', code: 'not-enough' }] }) },
    { case: 'a need that waits twice', code: 'need-not-settled-once', change: ({ later }) => ({ later: [...later, 'n5'] }) },
    { case: 'a need that waits and may not', code: 'later-not-allowed', change: ({ later, unmet }) => ({ later: [...later, 'n7'], unmet: unmet.slice(0, 1) }) },
    { case: 'not enough, where none comes in time', code: 'unmet-code-wrong', change: ({ unmet }) => ({ unmet: row(unmet, 0, { code: 'not-enough' }) }) },
    { case: 'none in time, where there is some', code: 'unmet-code-wrong', change: ({ unmet }) => ({ unmet: row(unmet, 1, { code: 'none-in-time' }) }) },
    { case: 'two parts mixed', code: 'parts-mixed', change: ({ allocation }) => ({ allocation: [...row(allocation, 2, { quantity: 3 }), { need: 'n2', part: 'other', quantity: 0.5, from: 'o3' }] }) },
    { case: 'a part that meets something else', code: 'part-does-not-meet', change: ({ allocation }) => ({ allocation: row(allocation, 3, { part: 'oil' }) }) },
    { case: 'a kit as if it were a part', code: 'part-does-not-meet', change: ({ allocation }) => ({ allocation: row(allocation, 0, { part: 'kit' }) }) },
    { case: 'half a piece', code: 'not-a-step', change: ({ allocation }) => ({ allocation: row(row(allocation, 0, { quantity: 0.5 }), 1, { quantity: 3.5 }) }) },
    { case: 'goods that come too late', code: 'too-late', change: ({ allocation, unmet }) => ({ allocation: [...row(allocation, 0, { need: 'n4' }), { need: 'n1', part: 'filter', quantity: 1, from: 'o1' }], unmet: unmet.slice(1) }) },
    { case: 'an offer that holds no such part', code: 'offer-lacks-part', change: ({ allocation }) => ({ allocation: row(allocation, 3, { from: 'o2' }) }) },
    { case: 'more than was bought', code: 'more-than-bought', change: ({ lines }) => ({ lines: row(lines, 2, { packs: 1 }) }) },
    { case: 'from an offer that was not bought', code: 'more-than-bought', change: ({ lines }) => ({ lines: lines.slice(0, 2) }) },
    { case: 'more than a kit holds', code: 'more-than-bought', change: ({ allocation }) => ({ allocation: row(row(allocation, 0, { quantity: 2 }), 1, { quantity: 2 }) }) },
    { case: 'more than the shelf holds', code: 'more-than-on-shelf', change: ({ allocation }) => ({ allocation: row(row(allocation, 3, { quantity: 1.5 }), 4, { quantity: 1 }) }) },
    { case: 'from the shelf past its date', code: 'expired-by-then', change: ({ allocation }) => ({ allocation: row(row(allocation, 5, { quantity: 1 }), 3, { quantity: 2.5 }).toSpliced(4, 1) }) },
    { case: 'more left than there is', code: 'left-wrong', change: ({ left }) => ({ left: row(left, 0, { quantity: 0.6 }) }) },
    { case: 'a leftover kept quiet', code: 'left-wrong', change: ({ left }) => ({ left: left.slice(1) }) },
    { case: 'a leftover that is none', code: 'left-wrong', change: ({ left }) => ({ left: [...left, { part: 'filter', quantity: 1 }] }) },
    { case: 'goods a minor unit dearer', code: 'goods-wrong', change: () => ({ goodsMinor: 4161, totalMinor: 5011, boundMinor: 5011 }) },
    { case: 'goods at the price without breaks', code: 'goods-wrong', change: () => ({ goodsMinor: 4250, totalMinor: 5100, boundMinor: 5100 }) },
    { case: 'free delivery not earned', code: 'delivery-wrong', change: () => ({ deliveryMinor: 100, totalMinor: 4510, boundMinor: 4510 }) },
    { case: 'waiting for nothing', code: 'later-wrong', change: () => ({ laterMinor: 0, totalMinor: 4760, boundMinor: 4760 }) },
    { case: 'a total that is not the sum', code: 'total-wrong', change: () => ({ totalMinor: 5011, boundMinor: 5011 }) },
    { case: 'a supplier below its minimum', code: 'below-minimum', change: ({ lines }) => ({ lines: row(lines, 2, { packs: 1 }) }) },
    { case: 'a bound above the total', code: 'bound-wrong', change: () => ({ boundMinor: 5011 }) },
    { case: 'optimal without a proof', code: 'status-wrong', change: () => ({ boundMinor: 5009 }) },
    { case: 'stopped with a proof', code: 'status-wrong', change: () => ({ status: 'stopped' }) },
    { case: 'a quantity too fine to reckon', code: 'answer-quantity-too-fine', change: ({ allocation }) => ({ allocation: row(allocation, 2, { quantity: 1e-17 }) }) },
  ];

  test.each(tampered)('refuses $case: $code', ({ code, change }) => {
    const faults = verifyOrder(instance, { ...good, ...change(good) });
    expect(faults.map((fault) => fault.code)).toContain(code);
    for (const fault of faults) expect(hasWords(fault.code) && !sayRefusal(fault).includes('{')).toBe(true);
  });

  test('refuses what is left over where nothing may be, but not what stood on the shelf before', () => {
    expect(verifyOrder({ ...instance, noLeftovers: true }, good)).toEqual([{ code: 'left-over', values: { part: 'oil' }, path: ['left', 0] }]);
  });

  test('every code of the verifier has its tampered answer here', () => {
    const ofInstances = ['order-quantity-too-fine', 'id-twice', 'reserved-id', 'break-twice', 'figures-too-large', 'order-not-found'];
    const ofVerifier = Object.keys(ORDER_WORDS).filter((code) => !ofInstances.includes(code));
    expect([...new Set([...tampered.map(({ code }) => code), 'left-over'])].sort()).toEqual([...ofVerifier, 'unknown-part'].sort());
  });

  test.each([
    { case: 'a delivery that is free from its goods exactly', change: { freeFromMinor: 2960 }, said: { deliveryMinor: 100, totalMinor: 4510, boundMinor: 4510 } },
    { case: 'a delivery one short of free', change: { freeFromMinor: 2961 }, said: {} },
    { case: 'a delivery that is never free', change: { freeFromMinor: null }, said: {} },
  ])('passes $case', ({ change, said }) => {
    expect(verifyOrder({ ...instance, suppliers: row(instance.suppliers, 0, change) }, { ...good, ...said })).toEqual([]);
  });
});
