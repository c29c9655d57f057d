import { foldText } from './search-fold.ts';
import type { IndexedField, IndexedThing, SearchIndex } from './search-index.ts';
import { searchTerms, type SearchTerm } from './search-terms.ts';
import type { FieldWeight } from './search-thing.ts';

/** How a word stands in a field: as a whole word, at the beginning of one, or inside. */
type Standing = 'whole' | 'begins' | 'inside';

/** Points for a word, by where it stands: a beginning counts more than what is inside, a name or a number more than a note. */
const POINTS: Readonly<Record<FieldWeight, Readonly<Record<Standing, number>>>> = {
  name: { whole: 12, begins: 10, inside: 6 },
  number: { whole: 12, begins: 10, inside: 5 },
  detail: { whole: 8, begins: 6, inside: 3 },
  note: { whole: 4, begins: 3, inside: 1 },
};
/** A day or an amount that was meant counts as what is told of a thing. */
const MEANT = 8;
/** The number of a day in any month is seldom meant. */
const DAY_OF_ANY_MONTH = 1;
/** Who types the whole name means the thing: more than all the points that words can come to. */
const WHOLE_NAME = 100_000;

/** What a term is looked for as: itself, or the words that it is a slip of. */
export interface Sought {
  readonly term: SearchTerm;
  readonly words: readonly string[];
  readonly across: readonly RegExp[];
  /** It stands nowhere as it was typed. */
  readonly near: boolean;
}

/** Where a term was found best in a thing. */
export interface FoundTerm {
  readonly sought: Sought;
  readonly field: IndexedField;
  readonly points: number;
}

/** A thing in which every term was found. */
export interface FoundThing {
  readonly one: IndexedThing;
  readonly terms: readonly FoundTerm[];
  readonly points: number;
}

/** Everything in which all that is typed is found. A word that stands nowhere is taken for a slip of one letter, where it has five at least. */
export function findThings(index: SearchIndex, query: string): { readonly found: readonly FoundThing[]; readonly sought: readonly Sought[] } {
  const sought = searchTerms(query, index.reading).map((term) => seek(index, term));
  const whole = foldText(query);
  return { sought, found: sought.length === 0 ? [] : index.things.flatMap((one) => findIn(one, sought, whole) ?? []) };
}

/** What is typed in a form that stands nowhere, nor anything near it. */
export function isNowhere(index: SearchIndex, sought: Sought): boolean {
  return !sought.near && !standsAnywhere(index, sought);
}

function standsAnywhere(index: SearchIndex, sought: Sought): boolean {
  return index.things.some((one) => one.fields.some((field) => pointsIn(field, sought) > 0));
}

function seek(index: SearchIndex, term: SearchTerm): Sought {
  const asTyped = soughtAs(term, [term.word], false);
  if (!/^\p{L}{5,}$/u.test(term.word) || standsAnywhere(index, asTyped)) return asTyped;
  const near = [...index.words()].filter((word) => isSlip(term.word, word)).sort();
  return near.length === 0 ? asTyped : soughtAs(term, near, true);
}

function soughtAs(term: SearchTerm, words: readonly string[], near: boolean): Sought {
  return { term, words, near, across: words.map((word) => new RegExp(` ${[...word].join(' ?')}`, 'u')) };
}

function findIn(one: IndexedThing, sought: readonly Sought[], whole: string): FoundThing | null {
  const terms: FoundTerm[] = [];
  for (const each of sought) {
    const best = bestIn(one.fields, each);
    if (best === null) return null;
    terms.push(best);
  }
  const name = sought.every((each) => !each.near) && one.name === whole ? WHOLE_NAME : 0;
  return { one, terms, points: name + terms.reduce((sum, term) => sum + term.points, 0) };
}

function bestIn(fields: readonly IndexedField[], sought: Sought): FoundTerm | null {
  let best: FoundTerm | null = null;
  for (const field of fields) {
    // A field that cannot count more need not be looked at.
    if (best !== null && best.points >= Math.max(POINTS[field.weight].whole, field.text === '' ? MEANT : 0)) continue;
    const points = pointsIn(field, sought);
    if (points > (best?.points ?? 0)) best = { sought, field, points };
  }
  return best;
}

/** What a term comes to in a field; 0 where it is not there. */
function pointsIn(field: IndexedField, { term, words, across }: Sought): number {
  if (field.date !== null) return term.onDay?.(field.date) === true ? (/^\d{1,2}$/.test(term.word) ? DAY_OF_ANY_MONTH : MEANT) : 0;
  if (field.minor !== null) return term.minor === field.minor ? MEANT : 0;
  const points = POINTS[field.weight];
  let best = 0;
  for (const [at, word] of words.entries()) {
    const standing = standingIn(field.folded, word, across[at]);
    if (standing !== null) best = Math.max(best, points[standing]);
  }
  return best;
}

function standingIn(folded: string, word: string, across: RegExp | undefined): Standing | null {
  if (folded.includes(word)) return folded.includes(` ${word} `) ? 'whole' : folded.includes(` ${word}`) ? 'begins' : 'inside';
  // "5W30" is written "5W 30" as well: a word may run over several, from the beginning of one.
  return across?.test(folded) === true ? 'begins' : null;
}

/**
 * Whether a word is another with one letter wrong, missing, too many, or two in the wrong order; the other may go on.
 *
 * @example isSlip('brkae', 'brakes') //=> true
 */
export function isSlip(typed: string, word: string): boolean {
  return [typed.length - 1, typed.length, typed.length + 1].some((length) => length <= word.length && length >= 4 && isOneSlip(typed, word.slice(0, length)));
}

function isOneSlip(one: string, other: string): boolean {
  if (one === other) return true;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start += 1;
  const [a, b] = [one.slice(start), other.slice(start)];
  if (a.slice(1) === b.slice(1) || a.slice(1) === b || a === b.slice(1)) return true;
  return a.length >= 2 && a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2);
}
