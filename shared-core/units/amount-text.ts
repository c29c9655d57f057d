import { ok, refuse, type Result } from '../result/result.ts';
import signs from './currency-signs.json' with { type: 'json' };
import { minorDigits, minorFromText } from './money.ts';
import { markShown, numberFromText, type DecimalMark, type MarkShown } from './number-text.ts';

/** A map, not the object itself: on an object 'constructor' would be a sign. */
const SIGNS: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(signs.signs));
const SIGN = String.raw`[\p{Sc}\p{L}][\p{Sc}\p{L}.]{0,4}`;
const AMOUNT = new RegExp(String.raw`^(?<open>\()?(?<before>[+\-\u2212])?\s*(?:(?<head>${SIGN})\s*)?(?<after>[+\-\u2212])?\s*(?<number>\d(?:[\d\s.,'\u2019]*\d)?)(?:[.,][\-\u2013\u2014]+|[.,])?\s*(?<tail>${SIGN})?\s*(?<behind>[\-\u2212])?(?<close>\))?$`, 'u');
const LONGEST_TEXT = 60;

/** An amount of money as it is written: the number without sign of currency, and whether it is below nothing. */
export interface WrittenAmount {
  readonly number: string;
  readonly negative: boolean;
}

/**
 * The number in an amount as written, with a currency's sign or code before or behind it, a minus on either side, or in
 * brackets. Another currency than the one given is refused, and so is what is no amount.
 *
 * @example writtenAmount('(£1,041.50)', 'GBP') //=> { ok: true, value: { number: '1,041.50', negative: true } }
 * @example writtenAmount('12 EUR', 'GBP') //=> refused 'import-currency'
 */
export function writtenAmount(text: string, currency: string): Result<WrittenAmount> {
  const groups = text.length > LONGEST_TEXT ? undefined : AMOUNT.exec(text.trim())?.groups;
  const refused = refuse('import-amount', { value: text.slice(0, 40), currency });
  if (groups === undefined || (groups['open'] === undefined) !== (groups['close'] === undefined)) return refused;
  const named = [groups['head'], groups['tail']].filter((sign) => sign !== undefined);
  if (named.some((sign) => currenciesOf(sign).length === 0)) return refused;
  if (named.some((sign) => !currenciesOf(sign).includes(currency))) return refuse('import-currency', { value: text.slice(0, 40), currency });
  const minus = [groups['before'], groups['after'], groups['behind']].filter((sign) => sign === '-' || sign === '\u2212');
  if (minus.length > 1 || (minus.length === 1 && groups['open'] !== undefined)) return refused;
  return ok({ number: groups['number'] ?? '', negative: minus.length === 1 || groups['open'] !== undefined });
}

/** The currencies a sign or code may mean; none where it is not known. @example currenciesOf('€') //=> ['EUR'] */
export function currenciesOf(sign: string): readonly string[] {
  return SIGNS.get(sign.toLowerCase()) ?? (minorDigits(sign.toUpperCase()) === null ? [] : [sign.toUpperCase()]);
}

/**
 * Which mark of an amount is the decimal one. A currency without parts has no decimal mark; in any other, one mark and three
 * digits stay open, even where the currency has two: a table may hold 12.345 that was worked out.
 *
 * @example amountMark('1,041', 'JPY') //=> '.'
 * @example amountMark('1,041', 'GBP') //=> 'either'
 */
export function amountMark(number: string, currency: string): MarkShown | undefined {
  const shown = markShown(number);
  if (shown !== 'either' || minorDigits(currency) !== 0) return shown;
  return number.includes(',') ? '.' : ',';
}

/** Minor units of an amount as written; null where its number is open and no mark is given. @example minorOf({ number: '1.041,50', negative: false }, 'EUR', null) //=> 104150 */
export function minorOf(amount: WrittenAmount, currency: string, decimal: DecimalMark | null): Result<number | null> {
  const shown = amountMark(amount.number, currency);
  const number = numberFromText(amount.number, shown === '.' || shown === ',' ? shown : decimal);
  if (number === null) return shown === 'either' ? ok(null) : refuse('import-amount', { value: amount.number.slice(0, 40), currency });
  const minor = minorFromText(withoutEmptyParts(number, currency), currency);
  return minor === null ? refuse('import-amount', { value: amount.number.slice(0, 40), currency }) : ok(amount.negative && minor !== 0 ? -minor : minor);
}

/** Zeros beyond a currency's minor unit say nothing: 12.500 is 12.50, and 900.00 of a currency without parts is 900. */
function withoutEmptyParts(number: string, currency: string): string {
  const [whole = '', parts = ''] = number.split('.');
  const digits = minorDigits(currency) ?? 0;
  const rest = parts.slice(digits);
  return /^0*$/.test(rest) ? `${whole}${digits === 0 || parts === '' ? '' : `.${parts.slice(0, digits)}`}` : number;
}
