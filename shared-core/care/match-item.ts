import { sameName } from '../fleet/find-car.ts';
import { plainWords } from './plain-words.ts';
import type { ServiceItem } from './service-item.ts';

/** How a text was found to mean an item: by its name, by its name but for a slip of spelling, or not at all. */
export type ItemMatch =
  | { readonly how: 'name' | 'spelling'; readonly item: ServiceItem }
  /** Several items are named alike: which one is meant must be asked. */
  | { readonly how: 'several'; readonly items: readonly ServiceItem[] }
  /** None; `near` share words with it and may be meant. */
  | { readonly how: 'none'; readonly near: readonly ServiceItem[] };

/** Words that say what was done or join others, and name no thing. */
const SMALL_WORDS: ReadonlySet<string> = new Set([
  'and', 'the', 'a', 'an', 'of', 'for', 'with', 'to', 'on', 'at', 'in', 'new', 'done', 'change', 'changed', 'changing', 'replace', 'replaced', 'replacement', 'replacing',
  'renew', 'renewed', 'renewal', 'fit', 'fitted', 'check', 'checked', 'checking', 'inspect', 'inspected', 'inspection', 'service', 'serviced', 'topped', 'up',
]);
const LONGEST_TEXT = 160;
const SHORTEST_FOR_ONE_SLIP = 5;
const SHORTEST_FOR_TWO_SLIPS = 10;

/**
 * The item of a car that a text of a table means: by its name, in any case and order of words, without words such as
 * "changed"; else by a name one slip of the hand away, two in longer names. Several alike are for the person to choose from.
 *
 * Source: ours, no source.
 * @example matchItem('Changed engine oil & filter', items) //=> { how: 'name', item: engine oil and filter }
 */
export function matchItem(text: string, items: readonly ServiceItem[]): ItemMatch {
  const key = itemKey(text);
  const named = items.filter((item) => sameName(item.name, text));
  const exact = named.length > 0 ? named : items.filter((item) => key !== '' && itemKey(item.name) === key);
  if (exact.length > 0) return one('name', exact);
  const alike = key === '' ? [] : items.filter((item) => numbersIn(itemKey(item.name)) === numbersIn(key));
  const distances = alike.map((item) => ({ item, slips: slipsOf(text, item.name, slipsAllowed(key)) })).filter(({ slips }) => slips <= slipsAllowed(key));
  const least = Math.min(...distances.map(({ slips }) => slips));
  if (distances.length > 0) return one('spelling', distances.filter(({ slips }) => slips === least).map(({ item }) => item));
  return { how: 'none', near: items.filter((item) => shareWords(key, itemKey(item.name))) };
}

/** Whether a text speaks of looking at something rather than of renewing it. @example speaksOfCheck('Checked brake pads') //=> true */
export function speaksOfCheck(text: string): boolean {
  return /\b(check(ed|ing)?|inspect(ed|ion|ing)?|looked at|measured?)\b/i.test(text) && !/\b(replac|renew|chang|fit|new\b)/i.test(text);
}

/** What of a name counts: its words without marks, case, order and small words. @example itemKey('Engine Oil & Filter') //=> 'engine filter oil' */
export function itemKey(text: string): string {
  return [...wordsOf(text)].sort().join(' ');
}

/** The words that count, each once, in the order written. */
function wordsOf(text: string): readonly string[] {
  return [...new Set(plainWords(text.slice(0, LONGEST_TEXT)).filter((word) => !SMALL_WORDS.has(word)))];
}

function one(how: 'name' | 'spelling', found: readonly ServiceItem[]): ItemMatch {
  const [only] = found;
  return only !== undefined && found.length === 1 ? { how, item: only } : { how: 'several', items: found };
}

/** A number is no slip of another: belt 1 is not belt 2. */
function numbersIn(key: string): string {
  return (key.match(/\p{N}+/gu) ?? []).join(' ');
}

function slipsAllowed(key: string): number {
  return key.length >= SHORTEST_FOR_TWO_SLIPS ? 2 : key.length >= SHORTEST_FOR_ONE_SLIP ? 1 : 0;
}

/** The fewest slips, in the order written or in that of the alphabet: a slip in a first letter moves a word in the latter. */
function slipsOf(text: string, name: string, most: number): number {
  return Math.min(slipsBetween(itemKey(text), itemKey(name), most), slipsBetween(wordsOf(text).join(' '), wordsOf(name).join(' '), most));
}

/** All words of the shorter stand in the longer. */
function shareWords(one: string, other: string): boolean {
  const [less = [], more = []] = [one.split(' '), other.split(' ')].sort((a, b) => a.length - b.length);
  return one !== '' && other !== '' && less.every((word) => more.includes(word));
}

/**
 * How many letters must be put in, left out, exchanged or swapped with their neighbour to make one text of the other; more than
 * `most` are not counted out. Source: optimal string alignment (from memory).
 */
export function slipsBetween(one: string, other: string, most: number): number {
  if (Math.abs(one.length - other.length) > most) return most + 1;
  let [before, last]: [number[], number[]] = [[], Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1] ? (before[j - 2] ?? 0) + 1 : Infinity;
      row.push(Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same, swapped));
    }
    [before, last] = [last, row];
  }
  return last[other.length] ?? 0;
}
