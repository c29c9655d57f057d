import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { SCREEN_WORDS } from '../../../../renderer/ui/words/tell.ts';
import { STARTING_SETS } from '../../../../shared-core/care/starting-set.ts';
import { AMERICAN_PAIRS, AMERICAN_PHRASES } from '../../../../shared-core/result/words/american-words.ts';
import { americanText } from '../../../../shared-core/result/words/american.ts';
import { EN } from '../../../../shared-core/result/words/en.ts';
import { formsOf, type Phrases } from '../../../../shared-core/result/words/phrase.ts';
import { phrasesOf } from '../../../../shared-core/result/words/phrases-of.ts';
import { STARTING_SHEETS } from '../../../../shared-core/work/starting-sheet.ts';

/**
 * Held against the spelling dictionaries of the packages dictionary-en-gb 3.0.0 and dictionary-en 4.0.0 (American), read by nspell. They know
 * spelling; that a word both know means the same on both sides is our own knowledge of the trade, without a source.
 */
const require = createRequire(import.meta.url);
interface Speller {
  correct(word: string): boolean;
}
const nspell = require('nspell') as (rules: Buffer, words: Buffer) => Speller;
const dictionary = (name: string) => nspell(readFileSync(require.resolve(name).replace(/index\.js$/, 'index.aff')), readFileSync(require.resolve(name).replace(/index\.js$/, 'index.dic')));
const BRITISH = dictionary('dictionary-en-gb');
const AMERICAN = dictionary('dictionary-en');

/** Words of the trade, units, formats and names that stand in neither dictionary, or in one alone and mean the same in both. */
const TRADE = new Set([
  'BagIt', 'CSV', 'GBP', 'JSON', 'NUL', 'Nm', 'PNG', 'SHA', 'TRUNNION', 'Trunnion', 'UTF', 'VIN', 'WebP', 'YYYY', 'bagit', 'json', 'kB', 'kPa', 'kgf', 'lbf', 'md', 'mistyped', 'nds', 'npm', 'polyurea',
  'roadworthiness', 'sha', 'sulfonate', 'tensioners', 'txt', 'yyyy',
]);
/** Words of our own lists of steps and items to start from. */
const TRADE_OF_SHEETS = new Set(['multimeter', 'tensioner', 'undertray']);

const WORD = /\p{L}[\p{L}’']*/gu;
const wordsOf = (texts: readonly string[]) => new Set(texts.flatMap((text) => [...text.replace(/\{\w+\}/g, ' ').matchAll(WORD)].map(([word]) => word.replaceAll('’', "'").replace(/'s?$/, ''))));
const textsOf = (list: Phrases) => Object.values(list).flatMap(formsOf);
const strange = (words: ReadonlySet<string>, knows: Speller, own: ReadonlySet<string>) => [...words].filter((word) => !own.has(word) && !knows.correct(word));

const LISTS: Phrases = { ...EN, ...SCREEN_WORDS };
const inBritish = wordsOf(textsOf(LISTS));
const inAmerican = wordsOf(textsOf(phrasesOf(LISTS)('en-US')));

describe('what is said', () => {
  test('is of one list: no key stands in the core’s words and in the screens’', () => {
    expect(Object.keys(EN).filter((key) => Object.hasOwn(SCREEN_WORDS, key))).toEqual([]);
  });

  test('in British is spelt as the British dictionary has it', () => {
    expect(inBritish.size).toBeGreaterThan(2000);
    expect(strange(inBritish, BRITISH, TRADE)).toEqual([]);
  });

  test('in American is spelt as the American dictionary has it', () => {
    expect(strange(inAmerican, AMERICAN, TRADE)).toEqual([]);
  });

  test('by the trade’s own words is said somewhere, and in no way that a dictionary calls foreign', () => {
    expect([...TRADE].filter((word) => !inBritish.has(word))).toEqual([]);
    expect([...TRADE].filter((word) => BRITISH.correct(word) && AMERICAN.correct(word))).toEqual([]);
  });
});

describe('steps and items to start from', () => {
  const texts = [STARTING_SETS, STARTING_SHEETS].flatMap(proseIn);
  test('in British', () => {
    expect(texts.length).toBeGreaterThan(400);
    expect(strange(wordsOf(texts), BRITISH, new Set([...TRADE, ...TRADE_OF_SHEETS]))).toEqual([]);
  });

  test('in American', () => {
    expect(strange(wordsOf(texts.map(americanText)), AMERICAN, new Set([...TRADE, ...TRADE_OF_SHEETS]))).toEqual([]);
  });
});

describe('the pairs of words', () => {
  const alone = Object.entries(AMERICAN_PAIRS);
  test('are British on one side and American on the other', () => {
    const odd = alone.flatMap(([british, american]) => [...strange(wordsOf([british]), BRITISH, TRADE), ...strange(wordsOf([american]), AMERICAN, TRADE)]);
    expect(odd).toEqual([]);
  });

  test('leave no British word of theirs in an American phrase, whatever its case', () => {
    const left = alone.filter(([british]) => !/\s/.test(british)).filter(([british]) => [british, british.slice(0, 1).toUpperCase() + british.slice(1)].some((word) => inAmerican.has(word)));
    // As names of sets that are typed in a request, and where an American word is spelt like another British one.
    expect(left.map(([british]) => british)).toEqual(['petrol']);
  });

  test('keep case and places', () => {
    expect(americanText('Tyres and tyres of {tyre}: grey COLOURS?')).toBe('Tires and tires of {tyre}: gray Colors?');
    expect(americanText('a number plate, a plate')).toBe('a license plate, a plate');
    expect(americanText('{n} tyre-fitter’s')).toBe('{n} tire-fitter’s');
  });

  test('phrases by key stand for phrases there are, and say something else', () => {
    expect(Object.keys(AMERICAN_PHRASES).filter((key) => !Object.hasOwn(LISTS, key))).toEqual([]);
    const idle = Object.entries(AMERICAN_PHRASES).filter(([key, phrase]) => formsOf(phrase).join() === formsOf(LISTS[key] ?? '').map(americanText).join());
    expect(idle).toEqual([]);
  });

  test('fill the same places as the British', () => {
    const placesOf = (texts: readonly string[]) => texts.flatMap((text) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name)).sort();
    const american = phrasesOf(LISTS)('en-US');
    expect(Object.entries(LISTS).filter(([key, phrase]) => placesOf(formsOf(phrase)).join() !== placesOf(formsOf(american[key] ?? '')).join()).map(([key]) => key)).toEqual([]);
  });
});

/** Every text of several words or of the fields that a person reads. */
function proseIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(proseIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, one]) => {
    if (['name', 'source', 'text', 'items', 'tools', 'consumables', 'checks', 'reset', 'note'].includes(name)) return typeof one === 'string' ? [one] : Array.isArray(one) && one.every((each) => typeof each === 'string') ? (one as string[]) : proseIn(one);
    return proseIn(one);
  });
}
