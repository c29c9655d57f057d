import { describe, expect, test } from 'vitest';
import type { OrderInstanceAsWritten } from '../../../shared-core/parts/order-instance.ts';
import { diceOf, smallOrder, type Dice } from './order-seeds.ts';
import { solved } from './order-written.ts';

type Written = OrderInstanceAsWritten;

/** Small orders with their own seeds; the seed is in the name of each test. */
const seeds = Array.from({ length: 12 }, (_, i) => 5001 + i);

/** How many needs of each rank go unmet. */
function unmetByRank(problem: Written, { unmet }: Awaited<ReturnType<typeof solved>>): readonly number[] {
  const ranks = new Map(problem.needs.map(({ id, rank }) => [id, rank ?? 1]));
  return [0, 1, 2].map((rank) => unmet.filter(({ need }) => ranks.get(need) === rank).length);
}

/** Fewer unmet of the lowest rank that differs; otherwise not dearer. */
async function expectNoWorse(better: Written, than: Written): Promise<void> {
  const [a, b] = [await solved(better), await solved(than)];
  const [mine, other] = [unmetByRank(better, a), unmetByRank(than, b)];
  const rank = mine.findIndex((count, at) => count !== other[at]);
  if (rank >= 0) expect(mine[rank]).toBeLessThan(other[rank] ?? 0);
  else expect(a.totalMinor).toBeLessThanOrEqual(b.totalMinor);
}

function shuffled<Item>(dice: Dice, items: readonly Item[]): Item[] {
  return items.map((item) => ({ item, at: dice.whole(0, 1_000_000) })).sort((a, b) => a.at - b.at).map(({ item }) => item);
}

/** Other names for everything, and another order of every list. */
function relabelled(dice: Dice, { suppliers, parts, offers, needs, shelf, orderOn }: Written): Written {
  const part = (id: string) => `a "${id}" <${id}> é`;
  return {
    suppliers: shuffled(dice, suppliers.map((each) => ({ ...each, id: `of ${each.id}` }))),
    parts: shuffled(dice, parts.map((each) => ({ id: part(each.id), meets: each.meets.map((spec) => `${spec}:1`), contains: (each.contains ?? []).map((inner) => ({ ...inner, part: part(inner.part) })) }))),
    offers: shuffled(dice, offers.map((each) => ({ ...each, id: `Bounds ${each.id}`, supplier: `of ${each.supplier}`, part: part(each.part) }))),
    needs: shuffled(dice, needs.map((each) => ({ ...each, id: `End ${each.id}`, spec: `${each.spec}:1` }))),
    shelf: shuffled(dice, shelf.map((each) => ({ ...each, part: part(each.part) }))),
    orderOn,
  };
}

/** The same problem in another unit: every quantity of a single part times a factor. */
function inUnit(factor: number, problem: Written): Written {
  const kits = new Set(problem.parts.filter(({ contains }) => (contains ?? []).length > 0).map(({ id }) => id));
  const times = (quantity: number) => Number((quantity * factor).toFixed(6));
  return {
    ...problem,
    parts: problem.parts.map((each) => ({ ...each, contains: (each.contains ?? []).map((inner) => ({ ...inner, quantity: times(inner.quantity) })) })),
    offers: problem.offers.map((each) => (kits.has(each.part) ? each : { ...each, quantity: times(each.quantity) })),
    needs: problem.needs.map((each) => ({ ...each, quantity: times(each.quantity), ...(each.step === undefined || each.step === null ? {} : { step: times(each.step) }) })),
    shelf: problem.shelf.map((each) => (kits.has(each.part) ? each : { ...each, quantity: times(each.quantity) })),
  };
}

/** All days moved. */
function moved(days: number, problem: Written): Written {
  const move = (date: string) => new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
  return {
    ...problem,
    orderOn: move(problem.orderOn),
    needs: problem.needs.map((each) => ({ ...each, neededBy: move(each.neededBy) })),
    shelf: problem.shelf.map((each) => ({ ...each, expires: each.expires === undefined || each.expires === null ? null : move(each.expires) })),
  };
}

describe.each(seeds)('the order of seed %i', (seed) => {
  const problem = smallOrder(seed);
  const dice = diceOf(seed + 1_000_000);

  test('names and the order of lists do not matter', async () => {
    const [before, after] = [await solved(problem), await solved(relabelled(dice, problem))];
    expect([after.totalMinor, after.unmet.length]).toEqual([before.totalMinor, before.unmet.length]);
  });

  test('it is the same each time', async () => {
    expect(await solved(problem)).toEqual(await solved(problem));
  });

  test.each([0.1, 1.7])('units of %d do not matter', async (factor) => {
    const [before, after] = [await solved(problem), await solved(inUnit(factor, problem))];
    expect([after.totalMinor, after.unmet]).toEqual([before.totalMinor, before.unmet]);
  });

  test('the calendar does not matter, only days between', async () => {
    const [before, after] = [await solved(problem), await solved(moved(423, problem))];
    expect(after).toEqual(before);
  });

  test('all money times 7: the total times 7', async () => {
    const money = (value: number | null | undefined) => (value === null || value === undefined ? null : value * 7);
    const dearer: Written = {
      ...problem,
      suppliers: problem.suppliers.map((each) => ({ ...each, deliveryMinor: each.deliveryMinor * 7, freeFromMinor: money(each.freeFromMinor), minimumMinor: (each.minimumMinor ?? 0) * 7 })),
      offers: problem.offers.map((each) => ({ ...each, priceMinor: each.priceMinor * 7, breaks: (each.breaks ?? []).map((step) => ({ ...step, priceMinor: step.priceMinor * 7 })) })),
      needs: problem.needs.map((each) => ({ ...each, laterMinor: money(each.laterMinor) })),
    };
    expect((await solved(dearer)).totalMinor).toBe((await solved(problem)).totalMinor * 7);
  });

  test('one more offer, more on the shelf, no minimum, quicker suppliers or freedom to mix never make it worse', async () => {
    const offer = { ...dice.one(problem.offers), id: 'one more', priceMinor: dice.whole(1, 2000), most: null };
    await expectNoWorse({ ...problem, offers: [...problem.offers, offer] }, problem);
    await expectNoWorse({ ...problem, shelf: [...problem.shelf, { part: dice.one(problem.parts).id, quantity: 1, expires: null }] }, problem);
    await expectNoWorse({ ...problem, suppliers: problem.suppliers.map((each) => ({ ...each, minimumMinor: 0 })) }, problem);
    await expectNoWorse({ ...problem, suppliers: problem.suppliers.map((each) => ({ ...each, leadDays: 0 })) }, problem);
    await expectNoWorse({ ...problem, needs: problem.needs.map((each) => ({ ...each, mix: true })) }, problem);
  });

  test('the total lies between all that is bought apart and nothing', async () => {
    const together = await solved({ ...problem, shelf: [] });
    let apart = 0;
    for (const need of problem.needs) apart += (await solved({ ...problem, shelf: [], needs: [need] })).totalMinor;
    if (together.unmet.every(({ code }) => code === 'none-in-time') && problem.offers.every(({ most, breaks }) => (most ?? null) === null && (breaks ?? []).length === 0)) {
      expect(together.totalMinor).toBeLessThanOrEqual(apart);
    }
    expect(together.totalMinor).toBeGreaterThanOrEqual(0);
  });
});
