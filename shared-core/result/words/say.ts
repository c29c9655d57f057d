import type { Message, Refusal } from '../result.ts';
import { EN } from './en.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DATE = /^\d{4}-\d{2}-\d{2}$/;

/**
 * The sentence of a message. A value that is a date is written out, a number gets thin groups; a key without words is our bug.
 *
 * @example say({ key: 'reason-printed-date', values: { date: '2026-12-26' } }) //=> 'The date printed on it is 26 Dec 2026.'
 */
export function say(message: Message): string {
  const sentence = wordsOf(message.key);
  if (sentence === undefined) throw new Error(`Bug: no words for '${message.key}'`);
  return sentence.replace(/\{(\w+)\}/g, (_whole, name: string) => sayValue(message.values[name] ?? null));
}

/** The sentence of a refusal. @example sayRefusal({ code: 'unknown-car', values: { car: 'x' } }) */
export function sayRefusal(refusal: Refusal): string {
  return say({ key: refusal.code, values: refusal.values });
}

/** Whether a key has words. */
export function hasWords(key: string): boolean {
  return wordsOf(key) !== undefined;
}

/** Only what stands in the list itself: every object answers to 'constructor'. */
function wordsOf(key: string): string | undefined {
  return Object.hasOwn(EN, key) ? EN[key] : undefined;
}

/** A date as people write it. @example sayDate('2026-11-25') //=> '25 Nov 2026' */
export function sayDate(date: string): string {
  return `${Number(date.slice(8, 10))} ${MONTHS[Number(date.slice(5, 7)) - 1] ?? ''} ${date.slice(0, 4)}`;
}

/** An instant of the journal as people read it, in UTC, the only zone that the journal knows. @example sayMoment('2026-11-25T23:30:12.000Z') //=> '25 Nov 2026, 23:30 UTC' */
export function sayMoment(instant: string): string {
  return `${sayDate(instant)}, ${instant.slice(11, 16)} UTC`;
}

/** A whole number in groups of three from five digits on. @example sayNumber(38250) //=> '38 250' with a narrow space that does not break */
export function sayNumber(value: number): string {
  const text = String(value);
  return Math.abs(value) < 10_000 || !Number.isInteger(value) ? text : text.replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

function sayValue(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return sayNumber(value);
  return DATE.test(value) ? sayDate(value) : value;
}
