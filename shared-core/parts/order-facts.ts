import type { OrderInstance, OrderNeed, OrderOffer, OrderSupplier } from './order-instance.ts';

/** An order instance worked out: quantities as whole units (10^-decimals), dates as day numbers, kits as their contents. */
export interface OrderFacts {
  readonly instance: OrderInstance;
  readonly decimals: number;
  readonly offers: readonly OfferFacts[];
  /** Stock on the shelf that expires first comes first. */
  readonly lots: readonly LotFacts[];
  readonly needs: readonly NeedFacts[];
}

/** An offer: what one pack gives of each single part, and its price by number of packs. */
export interface OfferFacts {
  readonly offer: OrderOffer;
  readonly supplier: OrderSupplier;
  readonly gives: ReadonlyMap<string, number>;
  readonly arrives: number;
  readonly most: number;
  readonly prices: readonly PriceRange[];
}

/** From `first` to `last` packs (last may be infinite) each pack costs this. */
export interface PriceRange {
  readonly first: number;
  readonly last: number;
  readonly priceMinor: number;
}

/** Stock of one single part, usable for needs of up to the day it expires (infinite: always). */
export interface LotFacts {
  readonly part: string;
  readonly units: number;
  readonly expires: number;
}

/** A need and every source that reaches it in time. */
export interface NeedFacts {
  readonly need: OrderNeed;
  readonly units: number;
  /** Each allocation must be a multiple of it; null where none is asked, or where it needs no watching (order-steps.ts). */
  readonly step: number | null;
  /** The day on which it is used: stock on the shelf must still be good then. */
  readonly by: number;
  readonly sources: readonly NeedSource[];
}

/** A part that meets a need, from an offer (by its id) or from the shelf. */
export interface NeedSource {
  readonly part: string;
  readonly from: string;
}

/** Units of a part that a need takes from an offer or from the shelf. */
export interface TakenUnits extends NeedSource {
  readonly need: string;
  readonly units: number;
}
