import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { isMadeUp } from '../../../shared-core/result/words/made-up.ts';
import { tell } from '../words/tell.ts';

type Part = 'day' | 'month' | 'year';

/** A date in the autumn whose day, month and year cannot be taken for one another. */
const EXAMPLE = Date.UTC(2026, 10, 25);

/** The order in which a locale writes day, month and year. @example dateOrder('en-US') //=> ['month', 'day', 'year'] */
export function dateOrder(locale: string): readonly Part[] {
  if (isMadeUp(locale)) return ['year', 'month', 'day'];
  const parts = new Intl.DateTimeFormat(locale, { day: '2-digit', month: '2-digit', year: 'numeric', timeZone: 'UTC' }).formatToParts(EXAMPLE);
  return parts.map((part) => part.type).filter((type): type is Part => type === 'day' || type === 'month' || type === 'year');
}

/** How a date may be typed, by a locale's order. @example datePattern('en-GB') //=> 'dd/mm/yyyy' */
export function datePattern(locale: string): string {
  return dateOrder(locale).map((part) => tell(`date-letters.${part}`)).join('/');
}

/**
 * The date that was typed: by the locale's order, with the month's name, or year first; null where it is none. A year has
 * four digits, for a car may be older than its keeper.
 *
 * @example readDate('1/3/2026', 'en-GB') //=> '2026-03-01'
 * @example readDate('1 mar 2026', 'en-US') //=> '2026-03-01'
 */
export function readDate(text: string, locale: string): LocalDate | null {
  const pieces = text.trim().split(/[\s/.,-]+/).filter((piece) => piece !== '');
  if (pieces.length !== 3) return null;
  const named = pieces.findIndex((piece) => monthOfName(piece, locale) !== null);
  const order = named < 0 ? orderOf(pieces, locale) : orderAround(named, pieces);
  const piece = (part: Part) => pieces[order.indexOf(part)] ?? '';
  return dateOf(piece('year'), named < 0 ? piece('month') : String(monthOfName(piece('month'), locale)), piece('day'));
}

function orderOf(pieces: readonly string[], locale: string): readonly Part[] {
  return /^\d{4}$/.test(pieces[0] ?? '') ? ['year', 'month', 'day'] : dateOrder(locale);
}

/** With the month named, the piece of four digits is the year. */
function orderAround(month: number, pieces: readonly string[]): readonly Part[] {
  return pieces.map((piece, at) => (at === month ? 'month' : /^\d{4}$/.test(piece) ? 'year' : 'day'));
}

function dateOf(year: string, month: string, day: string): LocalDate | null {
  if (!/^\d{4}$/.test(year) || !/^\d{1,2}$/.test(month) || !/^\d{1,2}$/.test(day)) return null;
  const date = localDate(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  return date.ok ? date.value : null;
}

/** The month that a word of at least three letters begins; null where it begins none. */
function monthOfName(word: string, locale: string): number | null {
  if (!/^\p{L}{3,}$/u.test(word)) return null;
  const format = new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' });
  const names = Array.from({ length: 12 }, (_, at) => format.format(Date.UTC(2026, at, 1)).toLowerCase());
  const at = names.findIndex((name) => name.startsWith(word.toLowerCase()));
  return at < 0 ? null : at + 1;
}
