import { AMERICAN_PAIRS, AMERICAN_PHRASES } from './american-words.ts';
import { eachForm, type Phrase } from './phrase.ts';

/** Pairs of several words, each with what finds it. */
const SEVERAL = Object.entries(AMERICAN_PAIRS)
  .filter(([british]) => british.includes(' '))
  .map(([british, own]) => [new RegExp(`(?<!\\p{L})${british}(?!\\p{L})`, 'giu'), own] as const);
const WORD = /[\p{L}][\p{L}’-]*/gu;

/**
 * A British phrase as Americans say it: by its key where it differs as a whole, else word by word, case kept; its places stay.
 *
 * @example american('The tyre', 'tyre') //=> 'The tire'
 */
export function american(phrase: Phrase, key: string): Phrase {
  return AMERICAN_PHRASES[key] ?? eachForm(phrase, americanText);
}

/** A British text word by word in American. @example americanText('Grey tyres, {colour}') //=> 'Gray tires, {colour}' */
export function americanText(text: string): string {
  return text.split(/(\{\w+\})/).map((piece, at) => (at % 2 === 1 ? piece : SEVERAL.reduce(replaceSeveral, piece).replace(WORD, oneWord))).join('');
}

function oneWord(word: string): string {
  const own = AMERICAN_PAIRS[word.toLowerCase()];
  if (own !== undefined) return inCaseOf(word, own);
  return /[-’]/.test(word) ? word.split(/([-’])/).map((piece) => (/[-’]/.test(piece) ? piece : oneWord(piece))).join('') : word;
}

function replaceSeveral(text: string, [british, own]: readonly [RegExp, string]): string {
  return text.replace(british, (found) => inCaseOf(found, own));
}

function inCaseOf(british: string, own: string): string {
  const first = british.slice(0, 1);
  return first === first.toLowerCase() ? own : own.slice(0, 1).toUpperCase() + own.slice(1);
}
