import { describe, expect, test } from 'vitest';
import { dominatedOffers } from '../../../shared-core/parts/order-dominated.ts';
import { easeTerms } from '../../../shared-core/parts/order-eased.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { workOutOrder } from '../../../shared-core/parts/work-out-order.ts';
import { instanceOf, written, type Pieces } from './order-written.ts';

const oil = { id: 'oil', meets: ['A'] };
const better = { id: 'better', meets: ['A', 'B'] };
const needs = [{ spec: 'A', quantity: 4 }];
const cans = (...offers: readonly Partial<NonNullable<Pieces['offers']>[number]>[]) => offers.map((offer) => ({ part: 'oil', priceMinor: 1000, ...offer }));

/** The offers left out, of the problem with its terms or without. */
function left(pieces: Pieces, more: { readonly eased?: boolean; readonly noLeftovers?: boolean } = {}): readonly string[] {
  const facts = workOutOrder(instanceOf({ ...written({ parts: [oil, better], needs, ...pieces }), ...(more.noLeftovers === true ? { noLeftovers: true } : {}) }));
  if (!facts.ok) throw new Error(facts.refusal.code);
  return [...dominatedOffers(more.eased === true ? easeTerms(facts.value, new Set()) : facts.value)].sort();
}

describe('offers that no cheapest order needs', () => {
  // By hand, each.
  test.each([
    { case: 'dearer for the same', pieces: { offers: cans({}, { priceMinor: 1001 }) }, gone: ['o2'] },
    { case: 'the second of two alike', pieces: { offers: cans({}, {}) }, gone: ['o2'] },
    { case: 'a large pack that costs no less than small ones', pieces: { offers: cans({ quantity: 5, priceMinor: 5000 }, {}) }, gone: ['o1'] },
    { case: 'not a large pack that costs less', pieces: { offers: cans({ quantity: 5, priceMinor: 4999 }, {}) }, gone: [] },
    { case: 'not where the cheaper one is limited', pieces: { offers: cans({ most: 9 }, { priceMinor: 1001 }) }, gone: [] },
    { case: 'not where the cheaper one gets dearer by the pack', pieces: { offers: cans({ breaks: [{ packs: 2, priceMinor: 1200 }] }, { priceMinor: 1201 }) }, gone: [] },
    { case: 'by its lowest price, against the highest', pieces: { offers: cans({ breaks: [{ packs: 2, priceMinor: 500 }] }, { breaks: [{ packs: 3, priceMinor: 999 }], priceMinor: 1500 }) }, gone: [] },
    { case: 'not where the cheaper one comes too late for some need', pieces: { suppliers: [{ leadDays: 13 }, { leadDays: 1 }], offers: cans({ supplier: 's1' }, { supplier: 's2', priceMinor: 1001 }), needs: [...needs, { spec: 'A', quantity: 1, neededBy: '2027-01-04' }] }, gone: [] },
    { case: 'where the cheaper one comes later, but in time for all', pieces: { suppliers: [{ leadDays: 13 }, { leadDays: 1 }], offers: cans({ supplier: 's1' }, { supplier: 's2', priceMinor: 1001 }) }, gone: ['o2'] },
    { case: 'not where the cheaper one bears a charge', pieces: { suppliers: [{ deliveryMinor: 300 }, {}], offers: cans({ supplier: 's1' }, { supplier: 's2', priceMinor: 1001 }) }, gone: [] },
    { case: 'not where its price helps to reach a sum', pieces: { suppliers: [{ minimumMinor: 4004 }], offers: cans({}, { priceMinor: 1001 }) }, gone: [] },
    { case: 'not where its price helps to earn free delivery', pieces: { suppliers: [{ deliveryMinor: 500, freeFromMinor: 4004 }], offers: cans({}, { priceMinor: 1001 }) }, gone: [] },
    { case: 'all of a part, where another meets as much for no more', pieces: { offers: cans({}, { quantity: 5, priceMinor: 4000 }, { part: 'better' }, { part: 'better', quantity: 5, priceMinor: 4000 }) }, gone: ['o1', 'o2'] },
    { case: 'no part of which one pack is cheaper', pieces: { offers: cans({}, { quantity: 5, priceMinor: 3999 }, { part: 'better' }, { part: 'better', quantity: 5, priceMinor: 4000 }) }, gone: [] },
    { case: 'no part that is on the shelf', pieces: { offers: cans({}, { part: 'better' }), shelf: [{ part: 'oil', quantity: 1 }] }, gone: [] },
    { case: 'no part that meets more', pieces: { offers: cans({}, { part: 'better' }), needs: [...needs, { spec: 'B', quantity: 1 }] }, gone: ['o1'] },
    { case: 'a kit that is dearer than what is wanted of it', pieces: { parts: [oil, { id: 'ring', meets: ['R'] }, { id: 'kit', contains: [{ part: 'oil', quantity: 1 }, { part: 'ring', quantity: 1 }] }], offers: cans({ part: 'kit', priceMinor: 1001 }, {}, { part: 'ring', priceMinor: 200 }) }, gone: ['o1', 'o3'] },
    { case: 'not a kit that is cheaper than all that is wanted of it', pieces: { parts: [oil, { id: 'ring', meets: ['R'] }, { id: 'kit', contains: [{ part: 'oil', quantity: 1 }, { part: 'ring', quantity: 1 }] }], offers: cans({ part: 'kit', priceMinor: 1199 }, {}, { part: 'ring', priceMinor: 200 }), needs: [...needs, { spec: 'R', quantity: 1 }] }, gone: [] },
  ])('$case', ({ pieces, gone }) => {
    expect(left(pieces as Pieces)).toEqual(gone);
  });

  test('with the terms left out, what terms protect goes too', () => {
    const pieces = { suppliers: [{ deliveryMinor: 500, freeFromMinor: 4004, minimumMinor: 4004 }], offers: cans({}, { priceMinor: 1001 }) };
    expect([left(pieces), left(pieces, { eased: true })]).toEqual([[], ['o2']]);
  });

  test('none, where nothing may be left over', () => {
    expect(left({ offers: cans({}, { priceMinor: 1001 }) }, { noLeftovers: true })).toEqual([]);
  });

  test('a charge that is never waived is no term to be left out', () => {
    const facts = workOutOrder(instanceOf(written({ suppliers: [{ deliveryMinor: 500 }, { deliveryMinor: 400, freeFromMinor: 1 }, { minimumMinor: 9 }] })));
    const eased = easeTerms(must(facts.ok ? facts.value : null, 'facts'), new Set(['s3']));
    expect(eased.instance.suppliers.map(({ deliveryMinor, minimumMinor }) => [deliveryMinor, minimumMinor])).toEqual([[500, 0], [0, 0], [0, 9]]);
  });
});
