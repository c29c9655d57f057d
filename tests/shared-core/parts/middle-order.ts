import type { OrderInstanceAsWritten } from '../../../shared-core/parts/order-instance.ts';
import { diceOf, smallOrder } from './order-seeds.ts';

type Written = OrderInstanceAsWritten;

/**
 * An order problem from a seed with every feature and too many ways to try them all: two to four small ones with parts and offers of their
 * own, bought from the same suppliers for the same specifications, so that parts of one may serve the needs of another.
 */
export function middleOrder(seed: number): Written {
  const dice = diceOf(seed);
  const pieces = Array.from({ length: dice.whole(2, 4) }, (_, at) => renamed(smallOrder(seed * 10 + 100_000 + at), `${at + 1}`));
  const suppliers = pieces.flatMap((piece) => piece.suppliers).slice(0, dice.whole(2, 4)).map((supplier, at) => ({ ...supplier, id: `s${at + 1}` }));
  return {
    suppliers,
    parts: pieces.flatMap(({ parts }) => parts),
    offers: pieces.flatMap(({ offers }) => offers.map((offer) => ({ ...offer, supplier: dice.one(suppliers).id }))),
    needs: pieces.flatMap(({ needs }) => needs),
    shelf: pieces.flatMap(({ shelf }) => shelf),
    orderOn: '2027-01-02',
  };
}

/** The same problem under other names for all but specifications. */
function renamed(problem: Written, tail: string): Written {
  const name = (id: string) => `${id}-${tail}`;
  return {
    ...problem,
    parts: problem.parts.map((part) => ({ ...part, id: name(part.id), contains: (part.contains ?? []).map((inside) => ({ ...inside, part: name(inside.part) })) })),
    offers: problem.offers.map((offer) => ({ ...offer, id: name(offer.id), part: name(offer.part) })),
    needs: problem.needs.map((need) => ({ ...need, id: name(need.id) })),
    shelf: problem.shelf.map((stock) => ({ ...stock, part: name(stock.part) })),
  };
}
