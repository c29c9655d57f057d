import { addMonths, monthsBetween } from '../calendar/add-months.ts';
import { LAST_DATE, type LocalDate } from '../calendar/local-date.ts';

/** What is put by for wishes, in minor units: what was there, and so much for each whole month since a day. */
export interface PuttingBy {
  readonly savedBefore: number;
  readonly monthlyMinor: number;
  readonly savingSince: LocalDate | null;
}

/** A wish that is still to come true, and what it still costs; null where that is not wholly known. */
export interface SavedFor {
  readonly id: string;
  readonly costMinor: number | null;
}

/** How far the savings reach for one wish. */
export interface WishSaving {
  readonly id: string;
  /** How much of its cost is saved when those before it are paid for. */
  readonly savedMinor: number;
  readonly lacksMinor: number | null;
  /** The first day on which it and all before it are paid for; today where they are already. Null: never at this pace, or its cost is not known. */
  readonly paidForOn: LocalDate | null;
}

/** What is put by, what of it is spent, and how far the rest reaches. */
export interface SavingsPlan {
  readonly putByMinor: number;
  readonly spentMinor: number;
  /** What is left of it; below 0 where more was spent than put by. */
  readonly leftMinor: number;
  readonly wishes: readonly WishSaving[];
}

/**
 * What has been put by up to a day: a month counts from the day that is its months after the first, as limits are counted.
 *
 * @example putBy({ savedBefore: 1000, monthlyMinor: 500, savingSince: '2026-01-31' }, '2026-02-28') //=> 1500
 */
export function putBy({ savedBefore, monthlyMinor, savingSince }: PuttingBy, on: LocalDate): number {
  return savedBefore + (savingSince === null ? 0 : wholeMonths(savingSince, on) * monthlyMinor);
}

/**
 * How far the savings reach, wish by wish in the order of preference. One of which the cost is not known takes nothing and waits for no day.
 *
 * @param spentMinor what wishes have cost so far, and what lies aside for them
 * @example savingsPlan({ savedBefore: 0, monthlyMinor: 1000, savingSince: '2026-01-01' }, 0, [{ id: 'radio', costMinor: 2500 }], '2026-02-01').wishes[0] //=> { id: 'radio', savedMinor: 1000, lacksMinor: 1500, paidForOn: '2026-04-01' }
 */
export function savingsPlan(saving: PuttingBy, spentMinor: number, wishes: readonly SavedFor[], today: LocalDate): SavingsPlan {
  const putByMinor = putBy(saving, today);
  const leftMinor = putByMinor - spentMinor;
  let before = 0;
  const reached = wishes.map(({ id, costMinor }): WishSaving => {
    const savedMinor = Math.min(costMinor ?? 0, Math.max(0, leftMinor - before));
    if (costMinor === null) return { id, savedMinor, lacksMinor: null, paidForOn: null };
    before += costMinor;
    return { id, savedMinor, lacksMinor: costMinor - savedMinor, paidForOn: leftMinor >= before ? today : dayOf(saving, before + spentMinor) };
  });
  return { putByMinor, spentMinor, leftMinor, wishes: reached };
}

/** More months than the calendar has. */
const BEYOND_THE_CALENDAR = 4000;

/** The first day by which so much has been put by; null where it never is. */
function dayOf({ savedBefore, monthlyMinor, savingSince }: PuttingBy, minor: number): LocalDate | null {
  if (savingSince === null || monthlyMinor <= 0) return null;
  const day = addMonths(savingSince, Math.min(BEYOND_THE_CALENDAR, Math.max(0, Math.ceil((minor - savedBefore) / monthlyMinor))));
  return day >= LAST_DATE ? null : day;
}

function wholeMonths(since: LocalDate, on: LocalDate): number {
  const months = Math.max(0, monthsBetween(since, on));
  return addMonths(since, months + 1) <= on ? months + 1 : months;
}
