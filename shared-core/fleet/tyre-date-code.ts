import { addDays, asDate, dayNumber, yearOf, type LocalDate } from '../calendar/local-date.ts';
import { monthsBetween } from '../calendar/add-months.ts';
import { ok, refuse, type Result } from '../result/result.ts';

/** A week in which a tyre may have been made, Sunday to Saturday; the last week of a year may reach into the next. */
export interface TyreWeek {
  readonly year: number;
  readonly week: number;
  readonly from: LocalDate;
  readonly to: LocalDate;
}

/**
 * What a tyre's date code says. `week`: one week. `decade-unknown`: a code of three digits, whose last digit leaves open
 * the decade; every week it may mean, oldest first.
 */
export type TyreDateCode =
  | { readonly state: 'week'; readonly week: TyreWeek }
  | { readonly state: 'decade-unknown'; readonly weeks: readonly TyreWeek[] };

/** Whole months since a tyre was made, least and most: a code names a week, and an old one leaves the decade open. */
export interface TyreAge {
  readonly leastMonths: number;
  readonly mostMonths: number;
}

/** Three digits were the rule until July 2000; older tyres than those of 1980 are not considered. */
const DECADES_OF_THREE_DIGITS = [1980, 1990, 2000];
const FOUR_DIGITS_FROM = asDate(2000, 7, 1);
/** Four digits were ordered in 1999 and printed by some a few years before. */
const FIRST_YEAR_OF_FOUR_DIGITS = 1990;
const CENTURY = 100;
const DAYS_A_WEEK = 7;
/** 1970-01-04 was a Sunday. */
const A_SUNDAY = 3;

/**
 * Reads the last group of a tyre's identification number, three or four digits: the week, then the year. Week 01 is the
 * first full week, Sunday to Saturday, so these are not the weeks of ISO 8601. Refused: what is no such code
 * ('not-a-tyre-code'), a week that its year does not have ('tyre-week-impossible'), one still to come ('tyre-week-ahead').
 *
 * Source: 49 CFR 574.5 (weeks from memory; both examples re-derived); four digits by 64 FR 36807 of 8 July 1999 (seen); that
 * three digits leave the decade open, by a vehicle maker's handbook (seen); in 2000 until July, our reading.
 * @example readTyreDateCode('2612', today) //=> ok { state: 'week', week: { year: 2012, week: 26, from: '2012-06-24', to: '2012-06-30' } }
 */
export function readTyreDateCode(text: string, today: LocalDate): Result<TyreDateCode> {
  const digits = /^(\d\d)(\d\d?)$/.exec(text.trim());
  if (digits === null) return refuse('not-a-tyre-code', { code: text.slice(0, 20) });
  const [week, year] = [Number(digits[1]), Number(digits[2])];
  return digits[2]?.length === 2 ? fourDigits(week, year, text.trim(), today) : threeDigits(week, year, text.trim(), today);
}

function fourDigits(week: number, yearInCentury: number, code: string, today: LocalDate): Result<TyreDateCode> {
  const year = latestYear(yearInCentury, today);
  if (!hasWeek(year, week)) return refuse('tyre-week-impossible', { code, week });
  const found = weekOf(year, week);
  return found.from > today || year < FIRST_YEAR_OF_FOUR_DIGITS ? refuse('tyre-week-ahead', { code }) : ok({ state: 'week', week: found });
}

/** The latest year, not after this one, that ends in the two digits. */
function latestYear(yearInCentury: number, today: LocalDate): number {
  const now = yearOf(today);
  const year = now - (now % CENTURY) + yearInCentury;
  const inThePast = year > now ? year - CENTURY : year;
  // A code of a later year would be read as one of a century ago; say so by the year it means.
  return inThePast < FIRST_YEAR_OF_FOUR_DIGITS ? inThePast + CENTURY : inThePast;
}

function threeDigits(week: number, yearInDecade: number, code: string, today: LocalDate): Result<TyreDateCode> {
  const years = DECADES_OF_THREE_DIGITS.map((decade) => decade + yearInDecade).filter((year) => hasWeek(year, week));
  const weeks = years.map((year) => weekOf(year, week)).filter((one) => one.from < FOUR_DIGITS_FROM && one.from <= today);
  return weeks.length === 0 ? refuse('tyre-week-impossible', { code, week }) : ok({ state: 'decade-unknown', weeks });
}

function hasWeek(year: number, week: number): boolean {
  return yearOf(weekOf(year, week).from) === year;
}

function weekOf(year: number, week: number): TyreWeek {
  const from = addDays(firstSunday(year), DAYS_A_WEEK * (week - 1));
  return { year, week, from, to: addDays(from, DAYS_A_WEEK - 1) };
}

function firstSunday(year: number): LocalDate {
  const newYear = asDate(year, 1, 1);
  const sinceSunday = (((dayNumber(newYear) - A_SUNDAY) % DAYS_A_WEEK) + DAYS_A_WEEK) % DAYS_A_WEEK;
  return addDays(newYear, (DAYS_A_WEEK - sinceSunday) % DAYS_A_WEEK);
}

/** How old a tyre is on a day, by its code. @example tyreAge(code, '2022-06-30') //=> { leastMonths: 120, mostMonths: 120 } */
export function tyreAge(code: TyreDateCode, today: LocalDate): TyreAge {
  const weeks = code.state === 'week' ? [code.week] : code.weeks;
  const months = weeks.flatMap((week) => [week.from, week.to]).map((made) => Math.max(0, monthsBetween(made, today)));
  return { leastMonths: Math.min(...months), mostMonths: Math.max(...months) };
}
