import { LARGEST_MINOR, minorDigits } from '../units/money.ts';

/** An amount that a text names; `total`: beside a word for the whole sum. */
export interface AmountInText {
  readonly minor: number;
  readonly total: boolean;
}

const TOTAL = /\b(total|sum|amount due|balance due|due|to pay|payable|paid)\b/i;
const PART = /\b(sub-?\s?total|net|excl|before tax|vat|tax total)\b/i;
const MOST_LINES = 2000;
const MOST = 200;

/**
 * The amounts of a text in minor units of a currency, each once, totals first: with a decimal comma or point of the currency's own number of
 * digits, and thousands set apart by a point, a comma, an apostrophe or a blank. A sum whose word stands alone on the line before is one too.
 *
 * @example amountsInText('Oil 24,00\nTotal 1.284,50', 'EUR') //=> [{ minor: 128450, total: true }, { minor: 2400, total: false }]
 */
export function amountsInText(text: string, currency: string): readonly AmountInText[] {
  const digits = minorDigits(currency);
  if (digits === null) return [];
  const pattern = amountPattern(digits);
  const found = new Map<number, boolean>();
  let before = '';
  for (const line of text.split(/[\n\r\f]/).slice(0, MOST_LINES)) {
    const amounts = [...line.slice(0, 500).matchAll(pattern)].map((match) => minorOf(match, digits)).filter((minor) => minor <= LARGEST_MINOR);
    const total = isTotal(line) || (isTotal(before) && !/[a-z]{3}/i.test(line));
    for (const minor of amounts) if (found.size < MOST || found.has(minor)) found.set(minor, total || found.get(minor) === true);
    if (line.trim() !== '') before = amounts.length === 0 ? line : '';
  }
  const all = [...found].map(([minor, total]) => ({ minor, total }));
  return [...all.filter((one) => one.total), ...all.filter((one) => !one.total)];
}

function isTotal(line: string): boolean {
  const start = line.slice(0, 500);
  return TOTAL.test(start) && !PART.test(start);
}

/** Without minor digits a number alone may be anything: it must have its thousands set apart. */
function amountPattern(digits: number): RegExp {
  const grouped = "\\d{1,3}(?:[ .,'’\\u00a0\\u202f]\\d{3}){1,3}";
  return digits === 0 ? new RegExp(`(?<![\\d.,])(${grouped})()(?![\\d]|[.,]\\d)`, 'g') : new RegExp(`(?<![\\d.,])(${grouped}|\\d{1,10})[.,](\\d{${digits}})(?![\\d]|[.,]\\d)`, 'g');
}

function minorOf(match: RegExpExecArray, digits: number): number {
  const whole = (match[1] ?? '').replace(/\D/g, '');
  return Number(whole + (digits === 0 ? '' : (match[2] ?? '')));
}
