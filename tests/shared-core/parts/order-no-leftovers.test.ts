import { describe, expect, test } from 'vitest';
import { smallOrder } from './order-seeds.ts';
import { solved, written } from './order-written.ts';

const cans = (offers: readonly { readonly quantity: number; readonly priceMinor: number }[], needs: readonly number[], shelf: readonly number[] = []) =>
  written({ suppliers: [{}], parts: [{ id: 'oil', meets: ['oil-A'] }], offers: offers.map((offer) => ({ part: 'oil', ...offer })), needs: needs.map((quantity) => ({ spec: 'oil-A', quantity })), shelf: shelf.map((quantity) => ({ part: 'oil', quantity })) });

describe('an order that leaves nothing over', () => {
  test.each([
    { case: 'pays more for packs that fit', problem: cans([{ quantity: 5, priceMinor: 3000 }, { quantity: 1, priceMinor: 900 }], [4]), total: 3600, lines: ['4 x o2'], unmet: 0, source: 'by hand: 4 * 9.00' },
    { case: 'may fill up from the shelf, which may be left', problem: cans([{ quantity: 5, priceMinor: 3000 }], [6], [2]), total: 3000, lines: ['1 x o1'], unmet: 0, source: 'by hand: 5 + 1' },
    { case: 'goes without rather than leave some', problem: cans([{ quantity: 5, priceMinor: 3000 }], [4]), total: 0, lines: [], unmet: 1, source: 'by hand' },
    { case: 'joins needs that fit together', problem: cans([{ quantity: 5, priceMinor: 3000 }], [4, 1, 3]), total: 3000, lines: ['1 x o1'], unmet: 1, source: 'by hand: 4 + 1' },
  ])('$case ($source)', async ({ problem, total, lines, unmet }) => {
    const answer = await solved({ ...problem, noLeftovers: true });
    expect([answer.totalMinor, answer.lines.map((line) => `${line.packs} x ${line.offer}`), answer.unmet.length]).toEqual([total, lines, unmet]);
  });

  // Source: own property; `solved` holds every answer against the verifier.
  test.each(Array.from({ length: 30 }, (_, at) => 7101 + at))('never meets more or costs less than one that may: seed %i', async (seed) => {
    const problem = smallOrder(seed);
    const [free, bound] = [await solved(problem), await solved({ ...problem, noLeftovers: true })];
    expect(bound.unmet.length).toBeGreaterThanOrEqual(free.unmet.length);
    if (bound.unmet.map((one) => one.need).join() === free.unmet.map((one) => one.need).join()) expect(bound.totalMinor).toBeGreaterThanOrEqual(free.totalMinor);
    const shelf = new Map<string, number>();
    for (const stock of problem.shelf) shelf.set(stock.part, (shelf.get(stock.part) ?? 0) + stock.quantity);
    if (free.left.every((one) => one.quantity <= (shelf.get(one.part) ?? 0))) expect(bound.totalMinor).toBe(free.totalMinor);
  });
});
