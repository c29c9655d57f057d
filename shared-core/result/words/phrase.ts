/** Something to say, its places in braces; of what is counted, one form for each way of counting that English has. */
export type Phrase = string | { readonly one: string; readonly other: string };
export type Phrases = Readonly<Record<string, Phrase>>;

/** All forms of a phrase. @example formsOf({ one: '{n} day', other: '{n} days' }) //=> ['{n} day', '{n} days'] */
export function formsOf(phrase: Phrase): readonly string[] {
  return typeof phrase === 'string' ? [phrase] : [phrase.one, phrase.other];
}

/** A phrase with each of its forms changed. */
export function eachForm(phrase: Phrase, change: (text: string) => string): Phrase {
  return typeof phrase === 'string' ? change(phrase) : { one: change(phrase.one), other: change(phrase.other) };
}

const PLURAL = new Intl.PluralRules('en');

/** The form of a phrase for a number. @example formFor({ one: '{n} day', other: '{n} days' }, 2) //=> '{n} days' */
export function formFor(phrase: Phrase, n: unknown): string {
  if (typeof phrase === 'string') return phrase;
  return PLURAL.select(Number(n)) === 'one' ? phrase.one : phrase.other;
}

/** A text with its places filled. @example fillPlaces('by {date}', (name) => name) //=> 'by date' */
export function fillPlaces(text: string, valueOf: (name: string) => string): string {
  return text.replace(/\{(\w+)\}/g, (_whole, name: string) => valueOf(name));
}
