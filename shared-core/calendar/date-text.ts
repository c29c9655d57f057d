import { localDate, yearOf, type LocalDate } from './local-date.ts';

/** In which order a date of three numbers is written: year, month, day; day first; month first. */
export type DateOrder = 'ymd' | 'dmy' | 'mdy';

export const DATE_ORDERS: readonly DateOrder[] = ['ymd', 'dmy', 'mdy'];

/** The dates that one text may mean, by order; an order in which it is no date is left out. */
export type MeantDates = Readonly<Partial<Record<DateOrder, LocalDate>>>;

const NOTHING: MeantDates = {};
const LONGEST_TEXT = 48;
const MONTHS = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december'];

const WEEKDAY = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*[.,]*\s+/i;
const TIME = /(?:T|,?\s+)\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?\s*(?:[ap]m)?\s*(?:z|[+-]\d{2}:?\d{2})?$/i;
const NUMBERS = /^(\d{1,4})([-/. ])\s?(\d{1,2})\2\s?(\d{1,4})\.?$/;
const RUN_TOGETHER = /^(\d{4})(\d{2})(\d{2})$/;
const DAY_NAME_YEAR = /^(\d{1,2})(?:st|nd|rd|th)?[\s.-]*(?:of\s+)?([a-z]{3,9})[\s.,/'-]*(\d{4}|\d{2})$/i;
const NAME_DAY_YEAR = /^([a-z]{3,9})[\s./-]*(\d{1,2})(?:st|nd|rd|th)?[\s.,/'-]+(\d{4}|\d{2})$/i;
const YEAR_NAME_DAY = /^(\d{4})[\s.,/-]*([a-z]{3,9})[\s./-]*(\d{1,2})$/i;

/**
 * The dates that a text may mean. One with its year first, or with a month's English name, means the same in every order.
 * A year of two digits is the last such year that has begun. A time of day and a weekday are left out of account.
 *
 * Source: ISO 8601 calendar dates (from memory); the other ways of writing, and the century: common practice, no source.
 * @example meantDates('3/4/2024', today) //=> { dmy: '2024-04-03', mdy: '2024-03-04' }
 * @example meantDates('25 Mar 2024', today) //=> { ymd: '2024-03-25', dmy: '2024-03-25', mdy: '2024-03-25' }
 */
export function meantDates(text: string, today: LocalDate): MeantDates {
  const bare = text.trim().replace(WEEKDAY, '').replace(TIME, '').trim();
  if (bare.length > LONGEST_TEXT) return NOTHING;
  return namedMonth(bare, today) ?? inOneRun(bare) ?? ofNumbers(bare, today);
}

/** Whether a text means the same date, or none, in every order. */
export function isCertain(dates: MeantDates): boolean {
  return new Set(DATE_ORDERS.map((order) => dates[order])).size === 1;
}

function namedMonth(text: string, today: LocalDate): MeantDates | null {
  const [, day, month, year] = DAY_NAME_YEAR.exec(text) ?? reorder(NAME_DAY_YEAR.exec(text), [2, 1, 3]) ?? reorder(YEAR_NAME_DAY.exec(text), [3, 2, 1]) ?? [];
  const number = monthNumber(month ?? '');
  return number === null ? null : inEveryOrder(dateOf(year ?? '', String(number), day ?? '', today));
}

function reorder(found: RegExpExecArray | null, [day, month, year]: readonly [number, number, number]): readonly (string | undefined)[] | null {
  return found === null ? null : ['', found[day], found[month], found[year]];
}

function monthNumber(name: string): number | null {
  const at = name === '' ? -1 : MONTHS.findIndex((month) => month.startsWith(name.toLowerCase()));
  return at < 0 ? null : at + 1;
}

function inOneRun(text: string): MeantDates | null {
  const [, year, month, day] = RUN_TOGETHER.exec(text) ?? [];
  return year === undefined ? null : inEveryOrder(dateOf(year, month ?? '', day ?? '', null));
}

function ofNumbers(text: string, today: LocalDate): MeantDates {
  const [, first = '', , second = '', third = ''] = NUMBERS.exec(text) ?? [];
  if (first.length > 2) return inEveryOrder(dateOf(first, second, third, today));
  return {
    ...put('ymd', dateOf(first, second, third, today)),
    ...put('dmy', dateOf(third, second, first, today)),
    ...put('mdy', dateOf(third, first, second, today)),
  };
}

function inEveryOrder(date: LocalDate | null): MeantDates {
  return date === null ? NOTHING : { ymd: date, dmy: date, mdy: date };
}

function put(order: DateOrder, date: LocalDate | null): MeantDates {
  return date === null ? NOTHING : { [order]: date };
}

/** A year of two or four digits; a day or month of one or two. */
function dateOf(year: string, month: string, day: string, today: LocalDate | null): LocalDate | null {
  if ((year.length !== 4 && year.length !== 2) || month.length > 2 || day.length > 2) return null;
  const whole = year.length === 4 ? year : today === null ? '' : String(inCentury(Number(year), yearOf(today)));
  const date = localDate(`${whole}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  return date.ok ? date.value : null;
}

/** The last year with these two digits that has begun. */
function inCentury(twoDigits: number, thisYear: number): number {
  const here = Math.floor(thisYear / 100) * 100 + twoDigits;
  return here <= thisYear ? here : here - 100;
}
