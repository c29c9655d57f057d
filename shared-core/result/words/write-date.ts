import { isMadeUp, madeUpDate, type DateParts } from './made-up.ts';

/** A date put together from its day, of two digits or of as few as it has, and its year; `text` is what the month's pattern has between them. */
type Pattern = readonly ('day' | 'day-of-two-digits' | 'year' | { readonly text: string })[];

const DATE = /^(\d{4})-(0[1-9]|1[0-2])-(\d{2})/;
const WHOLE: DateParts = { day: 'numeric', month: 'short', year: 'numeric' };

/**
 * How dates are written in a locale, the month shortened. Day and year are put into the locale's pattern of that month as they are, so that
 * a day there is not, as a refusal names it, is told as it was given. Of an instant, its day is written; what is no
 * date stays as it is.
 *
 * @example dateWriter('en-GB')('2026-09-05') //=> '5 Sep 2026'
 * @example dateWriter('en-US')('2026-02-30') //=> 'Feb 30, 2026'
 */
export function dateWriter(locale: string): (date: string) => string {
  const months = new Map<string, Pattern>();
  const format = new Intl.DateTimeFormat(locale, { ...WHOLE, timeZone: 'UTC' });
  return (date) => {
    const [, year, month, day] = DATE.exec(date) ?? [];
    if (year === undefined || month === undefined) return date;
    if (isMadeUp(locale)) return madeUpDate(date.slice(0, 10), WHOLE);
    const pattern = months.get(month) ?? patternOf(format, Number(month));
    months.set(month, pattern);
    const written = { day: String(Number(day)), 'day-of-two-digits': day, year };
    return pattern.map((part) => (typeof part === 'string' ? written[part] : part.text)).join('');
  };
}

function patternOf(format: Intl.DateTimeFormat, month: number): Pattern {
  return format.formatToParts(Date.UTC(2026, month - 1, 1)).map(({ type, value }) => {
    if (type === 'day') return value.length === 2 ? 'day-of-two-digits' : 'day';
    return type === 'year' ? type : { text: shortMonth(value) };
  });
}

/**
 * Writes some parts of dates that there are, as a locale has them.
 *
 * @example partsWriter('en-GB', { month: 'long', year: 'numeric' })('2026-11-25') //=> 'November 2026'
 */
export function partsWriter(locale: string, parts: DateParts): (date: string) => string {
  if (isMadeUp(locale)) return (date) => madeUpDate(date, parts);
  const format = new Intl.DateTimeFormat(locale, { ...parts, timeZone: 'UTC' });
  return (date) => shortMonth(format.format(Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10)))));
}

/** British English shortens September to four letters, alone among months; in columns of dates it would stand out. */
function shortMonth(text: string): string {
  return text.replace(/\bSept\b/, 'Sep');
}
