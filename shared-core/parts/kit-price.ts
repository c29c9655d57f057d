import type { OrderInstance, OrderOffer } from './order-instance.ts';
import { largestRemainder } from './largest-remainder.ts';
import { MOST_DECIMALS, toUnits } from './order-quantity.ts';

/** A separate price of a part: so much for a pack of so many. */
export interface SeparatePrice {
  readonly priceMinor: number;
  readonly quantity: number;
}

/** Something in a kit, and the cheapest price known for it by itself; null where none is known. */
export interface KitContent {
  readonly part: string;
  readonly quantity: number;
  readonly separate: SeparatePrice | null;
}

/** What of a kit's price falls on each of its contents, and what it was shared by. */
export interface KitShares {
  readonly by: 'separate-prices' | 'equally';
  readonly shares: readonly { readonly part: string; readonly minor: number }[];
}

/**
 * Shares a kit's price among its contents by what they would cost separately; equally where a separate price is missing or all are 0, and
 * then says so. The shares sum to the price exactly.
 *
 * @example kitShares(4000, [{ part: 'filter', quantity: 1, separate: { priceMinor: 1000, quantity: 1 } }, { part: 'oil', quantity: 4, separate: { priceMinor: 5000, quantity: 5 } }])
 * //=> { by: 'separate-prices', shares: [{ part: 'filter', minor: 800 }, { part: 'oil', minor: 3200 }] }
 */
export function kitShares(priceMinor: number, contents: readonly KitContent[]): KitShares {
  const values = separateValues(contents);
  const by = values === null ? 'equally' : 'separate-prices';
  const minors = contents.length === 0 ? [] : largestRemainder(priceMinor, values ?? contents.map(() => 1));
  return { by, shares: contents.map(({ part }, at) => ({ part, minor: minors[at] ?? 0 })) };
}

/** Values in proportion to quantity * price / pack, in whole numbers over a common denominator; null where they say nothing. */
function separateValues(contents: readonly KitContent[]): readonly bigint[] | null {
  const packs = contents.map(({ separate }) => (separate === null ? null : units(separate.quantity)));
  const product = packs.reduce<bigint>((all, pack) => all * (pack ?? 1n), 1n);
  const values = contents.map(({ quantity, separate }, at) =>
    separate === null ? null : (units(quantity) * BigInt(separate.priceMinor) * product) / (packs[at] ?? 1n),
  );
  return values.every((value) => value !== null) && values.some((value) => value > 0n) ? values : null;
}

function units(quantity: number): bigint {
  return BigInt(toUnits(quantity, MOST_DECIMALS));
}

/**
 * The contents of a kit of an order instance with the cheapest price each is offered at by itself, per unit, for a single pack.
 *
 * @example kitContents(instance, 'kit1') //=> [{ part: 'p2', quantity: 1, separate: { priceMinor: 899, quantity: 1 } }]
 */
export function kitContents(instance: OrderInstance, kit: string): readonly KitContent[] {
  const contains = instance.parts.find(({ id }) => id === kit)?.contains ?? [];
  return contains.map(({ part, quantity }) => ({ part, quantity, separate: cheapest(instance.offers.filter((offer) => offer.part === part)) }));
}

/** The least price per unit; on equality the first. */
function cheapest(offers: readonly OrderOffer[]): SeparatePrice | null {
  const dearness = (a: SeparatePrice, b: SeparatePrice) => BigInt(a.priceMinor) * units(b.quantity) - BigInt(b.priceMinor) * units(a.quantity);
  return offers.reduce<SeparatePrice | null>((best, { priceMinor, quantity }) => (best === null || dearness({ priceMinor, quantity }, best) < 0n ? { priceMinor, quantity } : best), null);
}
