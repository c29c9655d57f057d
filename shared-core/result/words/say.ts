import type { Message, MessageValues, Refusal } from '../result.ts';
import { EN } from './en.ts';
import { fillPlaces, formFor, type Phrase } from './phrase.ts';
import { phrasesOf } from './phrases-of.ts';
import { spokenLocale } from './speaking.ts';
import { dateWriter, partsWriter } from './write-date.ts';

const DATE = /^\d{4}-\d{2}-\d{2}$/;
const WORDS = phrasesOf(EN);

/**
 * The sentence of a message, in the locale that is spoken. A value that is a date is written out, a number gets thin groups, the value `n`
 * chooses the form of what is counted; a key without words is our bug.
 *
 * @example say({ key: 'reason-printed-date', values: { date: '2026-12-26' } }) //=> 'The date printed on it is 26 Dec 2026.'
 */
export function say(message: Message): string {
  const phrase = wordsOf(message.key);
  if (phrase === undefined) throw new Error(`Bug: no words for '${message.key}'`);
  return fillPlaces(formFor(phrase, message.values['n']), (name) => sayValue(message.values[name] ?? null));
}

/** The sentence of a key with its values. @example sayOf('status-good-until', { date: '2027-02-28' }) //=> 'good until 28 Feb 2027' */
export function sayOf(key: string, values: MessageValues = {}): string {
  return say({ key, values });
}

/** What one of a kind is called: by its key where it has words, else by its own name. @example sayKind('at', 'front-left') //=> 'front left' */
export function sayKind(beginning: string, kind: string): string {
  const key = `${beginning}-${kind}`;
  return hasWords(key) ? sayOf(key) : kind.replaceAll('-', ' ');
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
function wordsOf(key: string): Phrase | undefined {
  return Object.hasOwn(EN, key) ? WORDS(spokenLocale())[key] : undefined;
}

/** Makes something once for each locale that is spoken, and no more. */
function byLocale<Made>(make: (locale: string) => Made): () => Made {
  const made = new Map<string, Made>();
  return () => {
    const locale = spokenLocale();
    const one = made.get(locale) ?? make(locale);
    made.set(locale, one);
    return one;
  };
}

const writer = byLocale(dateWriter);
const monthWriter = byLocale((locale) => partsWriter(locale, { month: 'long', year: 'numeric' }));

/** A date as people write it. @example sayDate('2026-11-25') //=> '25 Nov 2026' */
export function sayDate(date: string): string {
  return writer()(date);
}

/** The month of a date in full. @example sayMonth('2027-08-02') //=> 'August 2027' */
export function sayMonth(date: string): string {
  return monthWriter()(date);
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
