import type { LocalDate } from '../calendar/local-date.ts';
import type { DueSpan } from '../fleet/odometer-forecast.ts';
import type { Usage } from '../fleet/usage-rate.ts';

/** Whence a price is: entered for it, of offers (parts), from its own past, or a sum that a garage named. */
export type PriceSource = 'entered' | 'offers' | 'as-last-times' | 'quoted';

/** What something costs once. */
export interface BudgetPrice {
  readonly minor: number;
  readonly source: PriceSource;
  /** How many prices of its own stand behind it: more make its level surer. At least 1. */
  readonly known: number;
  /** The day of that price: growth, where any is reckoned, counts from it. */
  readonly pricedOn: LocalDate;
  /** What is bought for it, by what part of the price. What lies on the shelf takes its share away. */
  readonly goods: readonly BudgetGoods[];
}

/** So much of a specification, and what of a price it is. */
export interface BudgetGoods {
  readonly specification: string;
  readonly quantity: number;
  readonly minor: number;
}

/** What gives an item its next due day; null where there is no such limb. Distances in km on the car's whole distance. */
export interface FirstDue {
  readonly date: LocalDate | null;
  readonly printedDate: LocalDate | null;
  readonly km: number | null;
  /** The day on which a reading already showed the distance reached. */
  readonly reachedOn: LocalDate | null;
  readonly wear: DueSpan<LocalDate> | null;
}

/** How the next due day follows from a day on which it was done. */
export type NextDue =
  | { readonly kind: 'completion'; readonly months: number | null; readonly km: number | null }
  | { readonly kind: 'calendar'; readonly firstDate: LocalDate; readonly months: number }
  | { readonly kind: 'certificate'; readonly months: number; readonly keepsDate: boolean }
  | { readonly kind: 'never' };

/** One thing that is paid for again and again. */
export interface BudgetTask {
  /** One name for it: 'item/pip-oil', 'obligation/pip-tax'. */
  readonly key: string;
  readonly car: string;
  readonly kind: 'item' | 'obligation';
  readonly name: string;
  readonly first: FirstDue;
  readonly next: NextDue;
  /** The day of a session that is kept for it: it is done then, whenever it is due. */
  readonly sessionOn: LocalDate | null;
  /** When it was last done, where that is known: what wears then lasts about as long again. */
  readonly lastDone: LocalDate | null;
  /** Done by its day, or as late as things are done here. */
  readonly punctual: boolean;
  /** Null: nobody knows, and it is not in the sums. */
  readonly price: BudgetPrice | null;
  /** The first time is paid with a quoted visit. */
  readonly firstInQuote: boolean;
}

/** A visit to a garage at a sum that was named for it; a task's first time in it costs nothing more. */
export interface BudgetVisit {
  readonly key: string;
  readonly name: string;
  readonly on: LocalDate;
  /** What of the sum is each car's. */
  readonly shares: readonly { readonly car: string; readonly minor: number }[];
}

/** An unplanned repair that was paid. */
export interface UnplannedCost {
  readonly car: string;
  readonly on: LocalDate;
  readonly minor: number;
}

/** A car that is here. */
export interface BudgetCar {
  readonly id: string;
  readonly name: string;
  /** Null while there is no reading. */
  readonly usage: Usage | null;
}

/** How long each car has been looked at, whether it is still here or not. */
export interface WatchedCar {
  readonly car: string;
  readonly years: number;
}

/** So much of a specification on the shelf, or paid for and on the way. */
export interface BudgetStock {
  readonly id: string;
  readonly meets: readonly string[];
  readonly quantity: number;
  readonly from: LocalDate;
  readonly goodUntil: LocalDate | null;
  /** The one task that it is put aside for; left out: it is anybody's. */
  readonly onlyFor?: string;
}

/** Something that is thought of, in one of the months ahead (0 is the first): 1 in 10 below `lowMinor`, 1 in 10 above `highMinor`. */
export interface BudgetExtra {
  readonly id: string;
  readonly name: string;
  /** Null: the household's. */
  readonly car: string | null;
  readonly month: number;
  readonly lowMinor: number;
  readonly likelyMinor: number;
  readonly highMinor: number;
}

/** How prices of the household's own past went on, and how late things are done here. */
export interface BudgetHabits {
  /** Prices of one thing, the same way paid for, each list of its own in order of day. */
  readonly pastPrices: readonly (readonly { readonly on: LocalDate; readonly minor: number }[])[];
  /** Days from due to done, of things done before. */
  readonly lagDays: readonly number[];
}

/** Something whose cost is not in the sums. */
export interface BudgetMissing {
  readonly key: string;
  readonly car: string;
  readonly name: string;
  /** When it is due is not known; nobody knows what it costs. */
  readonly why: 'unknown' | 'unpriced';
}

/** All that a budget ahead is made of. Plain data; no order of its lists matters. */
export interface BudgetInput {
  readonly today: LocalDate;
  /** How many months ahead, from today. */
  readonly months: number;
  readonly cars: readonly BudgetCar[];
  /** The one car that is asked for; the others still take their parts off the shelf. Null: all, and the household itself. */
  readonly only: string | null;
  readonly tasks: readonly BudgetTask[];
  readonly visits: readonly BudgetVisit[];
  readonly stock: readonly BudgetStock[];
  readonly unplanned: readonly UnplannedCost[];
  readonly watched: readonly WatchedCar[];
  readonly habits: BudgetHabits;
  readonly extra: readonly BudgetExtra[];
  /** Items without any due day, to be named. */
  readonly unknown: readonly BudgetMissing[];
}
