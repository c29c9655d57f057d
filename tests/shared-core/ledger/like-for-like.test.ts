import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HeldQuote } from '../../../shared-core/ledger/held-quote.ts';
import { likeForLike } from '../../../shared-core/ledger/like-for-like.ts';
import type { CostParts, DoneWork } from '../../../shared-core/ledger/work-costs.ts';

type Quote = Pick<HeldQuote, 'lines' | 'totalMinor' | 'things'>;
const thing = (id: string) => ({ id, item: id, text: id });
const parts = (partsMinor: number, timeMinor = 0): CostParts => ({ partsMinor, consumablesMinor: 0, toolsMinor: 0, otherMinor: 0, timeMinor });
const price = (amountMinor: number | null, ...covers: string[]) => ({ text: covers.join('+'), covers, amountMinor });
const work = (costs: DoneWork['costs']): DoneWork => ({ done: [...new Set(costs.flatMap((one) => one.things))].map((id) => ({ id, text: id })), costs });

const OIL_FILTER_INSPECTION: Quote = { things: [thing('oil'), thing('filter'), thing('inspection')], lines: [], totalMinor: 18_000 };

describe('a quote held against work, like for like', () => {
  // By hand.
  test.each<{ case: string; quote: Quote; work: DoneWork; sums: (number | null)[]; why: (string | null)[]; unquoted: string[][]; saved: number | null }>([
    {
      case: 'one price over oil, filter and an inspection, against work without the inspection: no single saving', quote: OIL_FILTER_INSPECTION,
      work: work([{ things: ['oil'], cost: parts(3200) }, { things: ['filter'], cost: parts(800) }]), sums: [null], why: ['not-done'], unquoted: [], saved: null,
    },
    {
      case: 'the same with the inspection done', quote: OIL_FILTER_INSPECTION,
      work: work([{ things: ['oil'], cost: parts(3200, 1000) }, { things: ['filter'], cost: parts(800) }, { things: ['inspection'], cost: parts(0, 500) }]), sums: [12_500], why: [null], unquoted: [], saved: 12_500,
    },
    {
      case: 'a quote of two of five lines claims nothing on the other three', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b')], totalMinor: null },
      work: work(['a', 'b', 'c', 'd', 'e'].map((id) => ({ things: [id], cost: parts(1000) }))), sums: [4000, 1000], why: [null, null], unquoted: [['c'], ['d'], ['e']], saved: 5000,
    },
    {
      case: 'and none at all where the five cost what they cost only together', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b')], totalMinor: null },
      work: work([{ things: ['a', 'b', 'c', 'd', 'e'], cost: parts(5000) }]), sums: [null], why: ['not-quoted'], unquoted: [], saved: null,
    },
    {
      case: 'what costs together is compared with the two prices together', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b')], totalMinor: null },
      work: work([{ things: ['a', 'b'], cost: parts(6000) }, { things: ['a'], cost: parts(500) }]), sums: [500], why: [null], unquoted: [], saved: 500,
    },
    {
      case: 'one line not done takes no other with it', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b')], totalMinor: null },
      work: work([{ things: ['a'], cost: parts(6000) }]), sums: [-1000, null], why: [null, 'not-done'], unquoted: [], saved: -1000,
    },
    {
      case: 'a cost that nobody knows', quote: { things: [thing('a')], lines: [price(5000, 'a')], totalMinor: null },
      work: work([{ things: ['a'], cost: parts(100) }, { things: ['a'], cost: null }]), sums: [null], why: ['no-cost'], unquoted: [], saved: null,
    },
    { case: 'a price for nothing that is said', quote: { things: [thing('a')], lines: [price(500), price(5000, 'a')], totalMinor: null }, work: work([{ things: ['a'], cost: parts(100) }]), sums: [null, 4900], why: ['covers-nothing', null], unquoted: [], saved: 4900 },
    {
      case: 'a discount that names nothing is one on all that was quoted', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b'), price(-1000)], totalMinor: 6000 },
      work: work([{ things: ['a'], cost: parts(1000) }, { things: ['b'], cost: parts(1000) }]), sums: [4000], why: [null], unquoted: [], saved: 4000,
    },
    {
      case: 'and where not all of that was done there is no sum', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b'), price(-1000)], totalMinor: 6000 },
      work: work([{ things: ['a'], cost: parts(1000) }]), sums: [null], why: ['not-done'], unquoted: [], saved: null,
    },
    {
      case: 'a sum that its lines do not add up to is for all of it', quote: { things: [thing('a'), thing('b')], lines: [price(5000, 'a'), price(2000, 'b')], totalMinor: 6500 },
      work: work([{ things: ['a'], cost: parts(1000) }, { things: ['b'], cost: parts(1000) }]), sums: [4500], why: [null], unquoted: [], saved: 4500,
    },
    { case: 'a line without an amount, and no sum', quote: { things: [thing('a'), thing('b')], lines: [price(null, 'a'), price(2000, 'b')], totalMinor: null }, work: work([{ things: ['a'], cost: parts(1) }, { things: ['b'], cost: parts(500) }]), sums: [null, 1500], why: ['no-price', null], unquoted: [], saved: 1500 },
    { case: 'nothing done', quote: OIL_FILTER_INSPECTION, work: work([]), sums: [null], why: ['not-done'], unquoted: [], saved: null },
  ])('$case', ({ quote, work: done, sums, why, unquoted, saved }) => {
    const like = likeForLike(quote, done);
    expect([like.groups.map((one) => one.savedMinor), like.groups.map((one) => one.why), like.unquoted.map((one) => one.things), like.savedMinor]).toEqual([sums, why, unquoted, saved]);
  });

  const ids = ['a', 'b', 'c', 'd', 'e'];
  const anyPrice = fc.record({ covers: fc.subarray(ids), amountMinor: fc.option(fc.integer({ min: 0, max: 100_000 })) }).map(({ covers, amountMinor }) => price(amountMinor, ...covers));
  const anyCost = fc.record({ things: fc.subarray(ids, { minLength: 1 }), cost: fc.option(fc.integer({ min: 0, max: 100_000 }).map((minor) => parts(minor)), { freq: 5 }) });

  test('a sum stands only where just what was quoted was done, and sums, prices and costs are each counted once', () => {
    fc.assert(fc.property(fc.array(anyPrice, { minLength: 1, maxLength: 5 }), fc.array(anyCost, { maxLength: 6 }), (lines, costs) => {
      const done = work(costs);
      const like = likeForLike({ things: ids.map(thing), lines, totalMinor: null }, done);
      for (const one of like.groups) if (one.savedMinor !== null) expect([...one.quoted].sort()).toEqual([...one.done].sort());
      expect(like.groups.flatMap((one) => one.lines).sort()).toEqual(lines.map((_, at) => at));
      const things = [...like.groups.flatMap((one) => one.done), ...like.unquoted.flatMap((one) => one.things)];
      expect(new Set(things).size).toBe(things.length);
      expect([...things].sort()).toEqual(done.done.map((one) => one.id).sort());
      // By hand for what is claimed: prices that lie wholly within a claimed group less costs that do.
      const claimed = like.groups.filter((one) => one.savedMinor !== null);
      const within = (covers: readonly string[]) => claimed.some((one) => covers.length > 0 && covers.every((id) => one.quoted.includes(id)));
      const sum = lines.filter((line) => within(line.covers)).reduce((all, line) => all + (line.amountMinor ?? 0), 0) - costs.filter((one) => within(one.things)).reduce((all, one) => all + (one.cost?.partsMinor ?? 0), 0);
      expect(like.savedMinor ?? 0).toBe(sum);
    }));
  });
});
