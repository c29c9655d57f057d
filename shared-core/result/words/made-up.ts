/** A locale nobody speaks: accents on every letter, words 40 % longer, the year first. What is not told through it is told past it. */
export const MADE_UP = 'en-XA';

const PLAIN = 'AaBbCcDdEeFfGgHhIiJjKkLlMmNnOoPpQqRrSsTtUuVvWwXxYyZz';
const ACCENTED = 'ÁáƁƀÇçÐðÉéƑƒĜĝĤĥÎîĴĵĶķĻļṀṁÑñÔôÞþǪǫŔŕŠšŢţÛûṼṽŴŵẊẋÝýŽž';
const ACCENTS: ReadonlyMap<string, string> = new Map([...PLAIN].map((letter, at) => [letter, [...ACCENTED][at] ?? letter]));
const LONGER_BY = 0.4;

/** Which parts of a date are written, and how. */
export type DateParts = Pick<Intl.DateTimeFormatOptions, 'weekday' | 'day' | 'month' | 'year'>;

/** Whether a locale is the made-up one. */
export function isMadeUp(locale: string): boolean {
  return locale === MADE_UP;
}

/**
 * A phrase as the made-up locale has it: accented, longer word by word, in brackets; its places stay.
 *
 * @example madeUp('Work on {date}') //=> '⟦ŴŴôôŕķ ôôñ {date}⟧'
 */
export function madeUp(phrase: string): string {
  return phrase === '' ? '' : `⟦${phrase.split(/(\{\w+\})/).map((piece, at) => (at % 2 === 1 ? piece : piece.replace(/[A-Za-z]+/g, longer))).join('')}⟧`;
}

/** The first letters stand twice. */
function longer(word: string): string {
  const doubled = Math.round(word.length * LONGER_BY);
  return [...word].map((letter, at) => (ACCENTS.get(letter) ?? letter).repeat(at < doubled ? 2 : 1)).join('');
}

/**
 * Parts of a date as the made-up locale writes them: year, month, day; the name of a month only where it stands alone.
 *
 * @example madeUpDate('2026-11-25', { day: 'numeric', month: 'short', year: 'numeric' }) //=> '2026/11/25'
 */
export function madeUpDate(date: string, { weekday, year, month, day }: DateParts): string {
  const [y = '', m = '', d = ''] = date.split('-');
  const named = (options: DateParts) => madeUp(new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC' }).format(Date.UTC(Number(y), Number(m) - 1, Number(d))));
  if (month !== undefined && year === undefined && day === undefined) return named({ month });
  const numbers = [year && y, month && m, day && d].filter((part) => part !== undefined).join('/');
  return weekday === undefined ? numbers : `${numbers} ${named({ weekday })}`.trim();
}
