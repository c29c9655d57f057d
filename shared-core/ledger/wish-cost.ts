import type { Facts } from '../journal/facts.ts';
import { specifications } from '../parts/specification.ts';
import { boughtAlone } from './bought-alone.ts';
import { timeValue } from './own-time.ts';
import type { Wish } from './wish.ts';
import { wishNeeds } from './wish-aside.ts';

/** What a wish still costs, in minor units. What nobody has a price for is named, counts as nothing, and is never guessed. */
export interface WishCost {
  /** Its parts: at the least, by the cheapest unit and with nothing for delivery; and bought by themselves, whole packs with delivery. */
  readonly partsLowMinor: number;
  readonly partsMinor: number;
  /** What a garage asks for the work; at home nothing is paid. */
  readonly workMinor: number;
  readonly lowMinor: number;
  readonly likelyMinor: number;
  /** One's own minutes, and what they count at one's own rate: paid to nobody, and in no sum. */
  readonly ownMinutes: number | null;
  readonly ownTimeMinor: number | null;
  /** What has no price: needs and things by name, and the work. */
  readonly unpriced: readonly WishUnpriced[];
}

/** Something of a wish without a price. */
export type WishUnpriced = { readonly kind: 'part'; readonly name: string } | { readonly kind: 'work' };

/** What prices are taken from: what things cost by the unit, and what one's own hour counts. */
export interface WishPrices {
  readonly unitMinor: ReadonlyMap<string, number>;
  readonly ownHourMinor: number;
}

/** What a wish still costs beyond what is put aside for it. */
export function wishCost(facts: Facts, wish: Wish, { unitMinor, ownHourMinor }: WishPrices): WishCost {
  const lacking = wishNeeds(facts, wish).filter((need) => need.lacking > 0);
  const offered = lacking.filter((need) => boughtAlone(facts, [{ ...need, quantity: need.lacking }]) !== null);
  // Nobody sells it now, but a lot says what it cost when it was bought.
  const known = lacking.filter((need) => !offered.includes(need) && unitMinor.has(need.specification));
  const unit = (needs: typeof lacking) => needs.reduce((sum, need) => sum + Math.round((unitMinor.get(need.specification) ?? 0) * need.lacking), 0);
  const alone = boughtAlone(facts, offered.map((need) => ({ specification: need.specification, quantity: need.lacking }))) ?? sumAlone(facts, offered);
  const others = wish.others.reduce((sum, one) => sum + (one.priceMinor ?? 0), 0);
  const partsMinor = alone + unit(known) + others;
  const partsLowMinor = Math.min(partsMinor, unit(offered) + unit(known) + others);
  const workMinor = wish.place === 'garage' ? (wish.garagePrice ?? 0) : 0;
  const ownMinutes = wish.place === 'home' ? wish.minutes : null;
  return {
    partsLowMinor, partsMinor, workMinor,
    lowMinor: partsLowMinor + workMinor, likelyMinor: partsMinor + workMinor,
    ownMinutes, ownTimeMinor: ownMinutes === null ? null : timeValue(ownMinutes, ownHourMinor),
    unpriced: [
      ...lacking.filter((need) => !offered.includes(need) && !known.includes(need)).map((need) => ({ kind: 'part' as const, name: facts.get(specifications, need.specification)?.name ?? need.specification })),
      ...wish.others.filter((one) => one.priceMinor === null).map((one) => ({ kind: 'part' as const, name: one.text })),
      ...(wish.place === 'garage' && wish.garagePrice === null ? [{ kind: 'work' as const }] : []),
    ],
  };
}

/** Each by itself: where no combination of suppliers sends them all together, as where one asks for a least sum. */
function sumAlone(facts: Facts, needs: readonly { readonly specification: string; readonly lacking: number }[]): number {
  return needs.reduce((sum, need) => sum + (boughtAlone(facts, [{ specification: need.specification, quantity: need.lacking }]) ?? 0), 0);
}
