import { describe, expect, test } from 'vitest';
import type { OrderChoice } from '../../../shared-core/parts/order-choice.ts';
import { trimOrder } from '../../../shared-core/parts/order-trim.ts';
import { workOutOrder } from '../../../shared-core/parts/work-out-order.ts';
import { instanceOf, written, type Pieces } from './order-written.ts';

const base: Pieces = {
  parts: [{ id: 'filter', meets: ['filter-A'] }, { id: 'rag' }],
  needs: [{ spec: 'filter-A', quantity: 3 }],
};

/** What is left of so many packs of each offer when all needs are met. */
function trimmed(pieces: Pieces, packs: readonly number[]): readonly (readonly [string, number])[] {
  const facts = workOutOrder(instanceOf(written({ ...base, ...pieces })));
  if (!facts.ok) throw new Error(facts.refusal.code);
  const lines = packs.map((each, i) => ({ offer: `o${i + 1}`, packs: each }));
  const choice: OrderChoice = { lines, met: new Set(['n1']), later: new Set(), parts: new Map(), stepped: [] };
  return trimOrder(facts.value, choice).lines.map((line) => [line.offer, line.packs] as const);
}

describe('trimOrder', () => {
  test.each<{ case: string; pieces: Pieces; packs: readonly number[]; left: readonly (readonly [string, number])[] }>([
    { case: 'free packs that nobody needs go', pieces: { offers: [{ part: 'filter', priceMinor: 0 }, { part: 'rag', priceMinor: 0 }] }, packs: [7, 2], left: [['o1', 3]] },
    { case: 'hundreds of them too', pieces: { offers: [{ part: 'filter', priceMinor: 0 }] }, packs: [900], left: [['o1', 3]] },
    { case: 'what earns free delivery stays', pieces: { suppliers: [{ deliveryMinor: 500, freeFromMinor: 1000 }], offers: [{ part: 'filter', priceMinor: 300 }, { part: 'rag', priceMinor: 100 }] }, packs: [3, 1], left: [['o1', 3], ['o2', 1]] },
    { case: 'what goes beyond it does not', pieces: { suppliers: [{ deliveryMinor: 500, freeFromMinor: 1000 }], offers: [{ part: 'filter', priceMinor: 300 }, { part: 'rag', priceMinor: 100 }] }, packs: [3, 4], left: [['o1', 3], ['o2', 1]] },
    { case: 'what earns a break stays', pieces: { offers: [{ part: 'filter', priceMinor: 300, breaks: [{ packs: 5, priceMinor: 100 }] }] }, packs: [5], left: [['o1', 5]] },
    { case: 'what reaches a minimum stays', pieces: { suppliers: [{ minimumMinor: 900 }], offers: [{ part: 'filter', priceMinor: 0 }, { part: 'rag', priceMinor: 450 }] }, packs: [3, 2], left: [['o1', 3], ['o2', 2]] },
    { case: 'what is needed stays', pieces: { offers: [{ part: 'filter', priceMinor: 300, quantity: 2 }] }, packs: [2], left: [['o1', 2]] },
  ])('$case', ({ pieces, packs, left }) => {
    expect(trimmed(pieces, packs)).toEqual(left);
  });
});
