import { dayOf, localDate, monthOf, yearOf, type LocalDate } from '../calendar/local-date.ts';
import { minorFromText } from '../units/money.ts';
import { foldText } from './search-fold.ts';

/** One thing that is looked for. Whatever else it may be, it may stand in a text as it was typed. */
export interface SearchTerm {
  /** As it was typed. */
  readonly typed: string;
  /** Folded, in one word. */
  readonly word: string;
  /** The days that it may mean; null where it means none. */
  readonly onDay: ((date: LocalDate) => boolean) | null;
  /** The amount that it may mean, in minor units; null where it means none. */
  readonly minor: number | null;
}

/** How amounts and dates are read in this household. */
export interface SearchReading {
  readonly currency: string;
  readonly order: 'day-first' | 'month-first';
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const NAMES = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december'];
const MONEY_SIGNS = /^[\p{Sc}]+|[\p{Sc}]+$/gu;
const GROUPED = /^-?\d{1,3}(?:([.,'’])\d{3})(?:\1\d{3})*(?:[.,]\d{1,4})?$/;

/**
 * What a person looks for, word by word; a date of several words is one term. A term of more words never means more than its words do one by one.
 *
 * @example searchTerms('brake fluid 12 Nov 2026', { currency: 'GBP', order: 'day-first' }).map((term) => term.word) //=> ['brake', 'fluid', '12nov2026']
 */
export function searchTerms(query: string, reading: SearchReading): readonly SearchTerm[] {
  const words = query.split(/\s+/).filter((word) => oneWord(word) !== '');
  const terms: SearchTerm[] = [];
  for (let at = 0; at < words.length; ) {
    const taken = namedDate(words.slice(at, at + 3));
    const typed = words.slice(at, at + taken.words).join(' ');
    terms.push(taken.onDay === null ? lone(typed, reading) : { typed, word: oneWord(typed), onDay: taken.onDay, minor: null });
    at += taken.words;
  }
  return terms;
}

function oneWord(text: string): string {
  return foldText(text).replaceAll(' ', '');
}

interface Taken {
  readonly words: number;
  readonly onDay: SearchTerm['onDay'];
}

/** "12 Nov 2026", "Nov 12, 2026", "12 Nov", "Nov 2026": a month by its name with a day, a year or both beside it. */
function namedDate(words: readonly string[]): Taken {
  for (const count of [3, 2]) {
    const parts = words.slice(0, count).map(partOf);
    if (parts.length < count) continue;
    const [month, day, year] = [only(parts, 'month'), only(parts, 'day'), only(parts, 'year')];
    const told = [month, day, year].filter((one) => one !== null).length;
    // The year does not stand before the day, and a month alone is a word like any other.
    if (month === null || told !== count || (year !== null && parts[count - 1]?.kind !== 'year')) continue;
    return { words: count, onDay: (date) => monthOf(date) === month && (day === null || dayOf(date) === day) && (year === null || yearOf(date) === year) };
  }
  return { words: 1, onDay: null };
}

interface DatePart {
  readonly kind: 'month' | 'day' | 'year' | 'none';
  readonly value: number;
}

function only(parts: readonly DatePart[], kind: DatePart['kind']): number | null {
  const found = parts.filter((one) => one.kind === kind);
  return found.length === 1 ? (found[0]?.value ?? null) : null;
}

function partOf(word: string): DatePart {
  const plain = oneWord(word);
  const month = monthNamed(plain);
  if (month !== null) return { kind: 'month', value: month };
  if (/^(19|20|21)\d\d$/.test(plain)) return { kind: 'year', value: Number(plain) };
  const day = /^(\d{1,2})(?:st|nd|rd|th)?$/.exec(plain);
  return day !== null && Number(day[1]) >= 1 && Number(day[1]) <= 31 ? { kind: 'day', value: Number(day[1]) } : { kind: 'none', value: 0 };
}

/** A month's short or whole name. @example monthNamed('sept') //=> 9 */
function monthNamed(word: string): number | null {
  const at = NAMES.findIndex((name) => word.length >= 3 && name.startsWith(word) && (word.length <= 4 || name === word));
  return at >= 0 && MONTHS[at] === word.slice(0, 3) ? at + 1 : null;
}

function lone(typed: string, reading: SearchReading): SearchTerm {
  return { typed, word: oneWord(typed), onDay: loneDays(typed, reading), minor: loneMinor(typed, reading.currency) };
}

/** A date in numbers, a month, a year, or the day of any month. */
function loneDays(typed: string, { order }: SearchReading): SearchTerm['onDay'] {
  const plain = typed.replace(/[,;.]+$/, '');
  const iso = /^(\d{4})([-./])(\d{1,2})(?:\2(\d{1,2}))?$/.exec(plain);
  if (iso !== null) return iso[4] === undefined ? inMonth(Number(iso[1]), Number(iso[3])) : onAny([dateOf(iso[1] ?? '', iso[3] ?? '', iso[4])]);
  const monthYear = /^(\d{1,2})[-./](\d{4})$/.exec(plain);
  if (monthYear !== null) return inMonth(Number(monthYear[2]), Number(monthYear[1]));
  const numbers = /^(\d{1,2})([-./])(\d{1,2})\2(\d{4}|\d{2})$/.exec(plain);
  if (numbers !== null) return inNumbers(numbers, order);
  const part = partOf(plain);
  if (part.kind === 'year') return (date) => yearOf(date) === part.value;
  if (part.kind === 'month') return (date) => monthOf(date) === part.value;
  return part.kind === 'day' ? (date) => dayOf(date) === part.value : null;
}

/** The household's own way of writing it; where no such day is, the other. */
function inNumbers([, one = '', , two = '', short = '']: RegExpExecArray, order: SearchReading['order']): SearchTerm['onDay'] {
  const year = short.length === 2 ? `20${short}` : short;
  const [dayFirst, monthFirst] = [dateOf(year, two, one), dateOf(year, one, two)];
  return onAny([order === 'day-first' ? (dayFirst ?? monthFirst) : (monthFirst ?? dayFirst)]);
}

function onAny(dates: readonly (LocalDate | null)[]): SearchTerm['onDay'] {
  const days = new Set(dates.filter((date) => date !== null));
  return days.size === 0 ? null : (date) => days.has(date);
}

function dateOf(year: string, month: string, day: string): LocalDate | null {
  const date = localDate(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  return date.ok ? date.value : null;
}

function inMonth(year: number, month: number): SearchTerm['onDay'] {
  return month < 1 || month > 12 ? null : (date) => yearOf(date) === year && monthOf(date) === month;
}

/** An amount with its decimals, with thousands set apart, or with the sign of a currency. @example loneMinor('£1,284.50', 'GBP') //=> 128450 */
function loneMinor(typed: string, currency: string): number | null {
  const bare = typed.replace(MONEY_SIGNS, '');
  const plain = GROUPED.test(bare) ? withoutGroups(bare) : bare;
  return plain === bare && bare === typed && !/[.,]\d/.test(bare) ? null : minorFromText(plain, currency);
}

function withoutGroups(text: string): string {
  const mark = GROUPED.exec(text)?.[1] ?? '';
  return text.replaceAll(mark, '');
}
