import type { Facts } from '../journal/facts.ts';
import { kitShares } from './kit-price.ts';
import { largestRemainder } from './largest-remainder.ts';
import { MOST_DECIMALS, toUnits } from './order-quantity.ts';
import type { Taker } from './order.ts';
import { parts } from './part.ts';
import { kitContentsOf } from './received-lots.ts';

/** So much of a cost falls on a car for an item, or on what goes to the shelf (null). */
export interface CostShare {
  readonly car: string | null;
  readonly item: string | null;
  readonly minor: number;
}

/** Packs of a part and who takes what of them. */
export interface SharedLine {
  readonly part: string;
  readonly packs: number;
  readonly quantity: number;
  readonly for: readonly Taker[];
}

/**
 * Shares what a line cost among those it was bought for, by quantity, the rest to the shelf; a kit's cost first among its contents, by their
 * cheapest separate prices. Largest remainder throughout, so that the shares sum to the cost exactly.
 *
 * @example shareLine(facts, { part: 'can', packs: 1, quantity: 5, for: [{ car: 'pip', item: 'oil', ..., quantity: 4 }] }, 3500)
 * //=> [{ car: 'pip', item: 'oil', minor: 2800 }, { car: null, item: null, minor: 700 }]
 */
export function shareLine(facts: Facts, line: SharedLine, landedMinor: number): readonly CostShare[] {
  const contents = facts.get(parts, line.part)?.contains ?? [];
  if (contents.length === 0) return sharePart(line.for, line.part, line.packs * line.quantity, landedMinor);
  const { shares } = kitShares(landedMinor, kitContentsOf(facts, line.part));
  return contents.flatMap(({ part, quantity }, at) => sharePart(line.for, part, line.packs * line.quantity * quantity, shares[at]?.minor ?? 0));
}

function sharePart(takers: readonly Taker[], part: string, quantity: number, minor: number): readonly CostShare[] {
  const ours = takers.filter((taker) => taker.part === part);
  const taken = ours.map((taker) => toUnits(taker.quantity, MOST_DECIMALS));
  const left = Math.max(0, toUnits(quantity, MOST_DECIMALS) - taken.reduce((sum, units) => sum + units, 0));
  const shares = largestRemainder(minor, [...taken, left]);
  const rest = { car: null, item: null, minor: shares.at(-1) ?? 0 };
  return [...ours.map(({ car, item }, at) => ({ car, item, minor: shares[at] ?? 0 })), ...(left > 0 || rest.minor !== 0 ? [rest] : [])];
}

/** Shares summed by car, the cars in order of their ids and the shelf last. */
export function sharesByCar(shares: readonly CostShare[]): readonly { readonly car: string | null; readonly minor: number }[] {
  const sums = new Map<string | null, number>();
  for (const { car, minor } of shares) sums.set(car, (sums.get(car) ?? 0) + minor);
  return [...sums].map(([car, minor]) => ({ car, minor })).sort((a, b) => (a.car === null ? 1 : b.car === null ? -1 : a.car < b.car ? -1 : 1));
}
