import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import published from '../../reference/published-programs.json' with { type: 'json' };
import { solved, written, type Pieces } from './order-written.ts';

describe('published problems written as orders', () => {
  const CAP71 = new URL('../../../../shared/cases/cap71.order.json', import.meta.url);

  // Source: OR-Library cap71 (Beasley 1990), optimum 932615.750 (seen in five public copies, solved again), costs times 100 000.
  test.skipIf(!existsSync(CAP71))('cap71: 16 warehouses, 50 customers (skipped where ../shared/cases is absent)', async () => {
    const answer = await solved(JSON.parse(readFileSync(CAP71, 'utf8')));
    expect(answer).toMatchObject({ status: 'optimal', totalMinor: 93_261_575_000, boundMinor: 93_261_575_000 });
    const open = new Set(answer.lines.map(({ offer }) => offer.split('-')[0]));
    // Source: the open warehouses, counted from 0 in the reference: 0,1,2,3,5,6,7,8,10,11,12.
    expect([...open].sort()).toEqual([0, 1, 2, 3, 5, 6, 7, 8, 10, 11, 12].map((at) => `s${at + 1}`).sort());
  });

  // Source: Wagner and Whitin 1958, 864 and the least costs of the first months (see published-programs.json): a month's order is a supplier.
  test.each(published.lotSizes.prefix.map((optimum, at) => ({ months: at + 1, optimum })))('lot sizes over $months months cost $optimum', async ({ months, optimum }) => {
    expect((await solved(lotSizes(months))).totalMinor).toBe(optimum);
  });

  // Source: CSPLib problem 034, 383 (see published-programs.json). A limit over all offers of a supplier is said by places that must be filled,
  // by a store that is supplied or by nothing, and by packs of which nothing may be left over.
  test('warehouses with places for so many stores each cost 383', async () => {
    const answer = await solved(warehouses());
    expect(answer).toMatchObject({ status: 'optimal', totalMinor: published.warehouses.optimum, unmet: [], left: [] });
    // Of every warehouse no more stores are supplied than it has places.
    const { capacity } = published.warehouses;
    expect(capacity.every((most, at) => answer.lines.filter(({ offer }) => offer.startsWith(`w${at}-`)).length <= most)).toBe(true);
    expect(answer.lines.filter(({ offer }) => offer.startsWith('w')).length).toBe(published.warehouses.cost.length);
  });

  // Source: Cormen, Leiserson, Rivest, Stein, fig. 35.3 (see published-programs.json): kits that cover twelve needs. Greedy choice takes 4.
  test('three kits cover what greedy choice needs four for', async () => {
    const answer = await solved(setCover());
    expect(answer).toMatchObject({ totalMinor: published.setCover.optimum });
    expect(answer.lines.map(({ offer }) => offer)).toEqual(['o3', 'o4', 'o5']);
    expect(greedyCover(published.setCover.sets)).toBe(4);
  });

  // Source: arithmetic (the smallest counter-example to choosing item by item): two items, A 10 + 10 and free from 20, else 5; B 9 each and 4.
  test('each item is cheaper at B, both together at A', async () => {
    const items: Pieces = {
      suppliers: [{ id: 'A', deliveryMinor: 5, freeFromMinor: 20 }, { id: 'B', deliveryMinor: 4 }],
      parts: [{ id: 'p', meets: ['x'] }, { id: 'q', meets: ['y'] }],
      offers: ['p', 'q'].flatMap((part) => [{ supplier: 'A', part, priceMinor: 10 }, { supplier: 'B', part, priceMinor: 9 }]),
      needs: [{ spec: 'x', quantity: 1 }, { spec: 'y', quantity: 1 }],
    };
    const one = (at: number) => ({ ...items, needs: (items.needs ?? []).slice(at, at + 1) });
    expect((await solved(written(one(0)))).lines).toEqual([{ offer: 'o2', packs: 1 }]);
    expect((await solved(written(one(1)))).lines).toEqual([{ offer: 'o4', packs: 1 }]);
    expect(await solved(written(items))).toMatchObject({ totalMinor: 20, lines: [{ offer: 'o1', packs: 1 }, { offer: 'o3', packs: 1 }] });
    // All at B 9 + 9 + 4 = 22; split 10 + 5 + 9 + 4 = 28.
    expect((await solved(written({ ...items, offers: (items.offers ?? []).filter(({ supplier }) => supplier === 'B') }))).totalMinor).toBe(22);
    expect((await solved(written({ ...items, offers: [items.offers?.[0], items.offers?.[3]].filter((each) => each !== undefined) }))).totalMinor).toBe(28);
  });
});

/** Ordering in a month costs its set-up once; keeping a month's demand from then costs 1 for each piece and month. */
function lotSizes(months: number): unknown {
  const { demand, setup } = published.lotSizes;
  const all = demand.slice(0, months);
  return written({
    suppliers: all.map((_, from) => ({ id: `m${from}`, deliveryMinor: setup[from] ?? 0 })),
    parts: all.map((_, at) => ({ id: `p${at}`, meets: [`d${at}`] })),
    offers: all.flatMap((wanted, at) => all.slice(0, at + 1).map((_, from) => ({ supplier: `m${from}`, part: `p${at}`, quantity: wanted, priceMinor: wanted * (at - from) }))),
    needs: all.map((quantity, at) => ({ spec: `d${at}`, quantity })),
  });
}

/** A store supplied by a warehouse is a kit of the store and of one place there; a place may also be filled with nothing, for nothing. */
function warehouses(): unknown {
  const { fixed, capacity, cost } = published.warehouses;
  const problem = written({
    suppliers: [...capacity.map((_, at) => ({ id: `w${at}`, deliveryMinor: fixed })), { id: 'nobody' }],
    parts: [
      ...cost.map((_, store) => ({ id: `store${store}`, meets: [`store${store}`] })),
      ...capacity.map((_, at) => ({ id: `place${at}`, meets: [`place${at}`] })),
      { id: 'nothing', meets: capacity.map((_, at) => `place${at}`) },
      ...cost.flatMap((row, store) => row.map((_, at) => ({ id: `kit${store}-${at}`, contains: [`store${store}`, `place${at}`].map((part) => ({ part, quantity: 1 })) }))),
    ],
    offers: [
      ...cost.flatMap((row, store) => row.map((priceMinor, at) => ({ id: `w${at}-${store}`, supplier: `w${at}`, part: `kit${store}-${at}`, priceMinor }))),
      { id: 'nothing', supplier: 'nobody', part: 'nothing', priceMinor: 0 },
    ],
    needs: [...cost.map((_, store) => ({ spec: `store${store}`, quantity: 1 })), ...capacity.map((quantity, at) => ({ spec: `place${at}`, quantity }))],
  });
  return { ...problem, noLeftovers: true };
}

function setCover(): unknown {
  const { elements, sets } = published.setCover;
  const singles = Array.from({ length: elements }, (_, i) => i + 1);
  return written({
    parts: [...singles.map((i) => ({ id: `p${i}`, meets: [`e${i}`] })), ...sets.map((set, k) => ({ id: `set${k}`, contains: set.map((i) => ({ part: `p${i}`, quantity: 1 })) }))],
    offers: sets.map((_, k) => ({ part: `set${k}`, priceMinor: 1 })),
    needs: singles.map((i) => ({ spec: `e${i}`, quantity: 1 })),
  });
}

/** How many sets are taken if each time the one with most that is new is. */
function greedyCover(sets: readonly (readonly number[])[]): number {
  const open = new Set(sets.flat());
  let taken = 0;
  for (; open.size > 0; taken += 1) {
    const news = sets.map((set) => set.filter((each) => open.has(each)));
    for (const each of news.reduce((best, set) => (set.length > best.length ? set : best))) open.delete(each);
  }
  return taken;
}
