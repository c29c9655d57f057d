import { localDate, type LocalDate } from '../calendar/local-date.ts';

/** Which comes first where a date is written in numbers alone. */
export type DateOrder = 'day-first' | 'month-first';

/** A date that a text may mean. `sure`: it can be read one way only; else `first` says whether it is the household's own way. */
export interface DateInText {
  readonly date: LocalDate;
  readonly sure: boolean;
  readonly first: boolean;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH = '(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]{0,6}';
const YEAR_FIRST = /(?<!\d)(\d{4})([-./])(\d{1,2})\2(\d{1,2})(?!\d)/g;
const NUMBERS = /(?<![\d.,/-])(\d{1,2})([-./])(\d{1,2})\2(\d{4}|\d{2})(?!\d)/g;
const DAY_NAMED = new RegExp(`(?<!\\d)(\\d{1,2})(?:st|nd|rd|th)?[ .-]{1,2}${MONTH}[ .,-]{1,3}(\\d{4})(?!\\d)`, 'gi');
const NAMED_DAY = new RegExp(`(?<![a-z])${MONTH}[ .]{1,2}(\\d{1,2})(?:st|nd|rd|th)?[ ,]{1,2}(\\d{4})(?!\\d)`, 'gi');
const MOST = 60;

/**
 * The dates a text names that are not to come, each once, in the order of the text: year first, in numbers, or with the month's English name.
 * Numbers that can be read two ways give both, the household's own way first.
 *
 * @example datesInText('03/04/2026', 'day-first', '2026-11-25').map((one) => one.date) //=> ['2026-04-03', '2026-03-04']
 */
export function datesInText(text: string, order: DateOrder, today: LocalDate): readonly DateInText[] {
  const found: (DateInText & { readonly at: number })[] = [];
  const add = (at: number, year: string, month: number, day: number, sure: boolean, first: boolean) => {
    const whole = year.length === 2 ? `20${year}` : year;
    const date = localDate(`${whole}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);
    if (date.ok && date.value <= today) found.push({ at, date: date.value, sure, first });
  };
  for (const { index, 1: year = '', 3: month, 4: day } of text.matchAll(YEAR_FIRST)) add(index, year, Number(month), Number(day), true, true);
  for (const { index, 1: one, 3: two, 4: year = '' } of text.matchAll(NUMBERS)) addNumbers(Number(one), Number(two), order, (month, day, sure, first) => add(index, year, month, day, sure, first));
  for (const { index, 1: day, 2: month = '', 3: year = '' } of text.matchAll(DAY_NAMED)) add(index, year, monthNamed(month), Number(day), true, true);
  for (const { index, 1: month = '', 2: day, 3: year = '' } of text.matchAll(NAMED_DAY)) add(index, year, monthNamed(month), Number(day), true, true);
  const once = new Map<LocalDate, DateInText>();
  for (const { date, sure, first } of found.sort((a, b) => a.at - b.at)) {
    const there = once.get(date);
    once.set(date, { date, sure: sure || there?.sure === true, first: first || there?.first === true });
  }
  return [...once.values()].slice(0, MOST);
}

function addNumbers(one: number, two: number, order: DateOrder, add: (month: number, day: number, sure: boolean, first: boolean) => void): void {
  const both = one <= 12 && two <= 12 && one !== two;
  const [dayFirst, monthFirst] = [() => add(two, one, !both, order === 'day-first'), () => add(one, two, !both, order === 'month-first')];
  if (!both) return one > 12 ? dayFirst() : monthFirst();
  for (const way of order === 'day-first' ? [dayFirst, monthFirst] : [monthFirst, dayFirst]) way();
}

function monthNamed(name: string): number {
  return MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
}
