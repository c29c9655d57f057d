import type { LocalDate } from '../calendar/local-date.ts';

/** The kinds of things that can be found, in the order in which they are told where nothing else decides. */
export const FOUND_KINDS = ['car', 'item', 'obligation', 'recall', 'session', 'record', 'observation', 'follow-up', 'paper', 'figure', 'part', 'specification', 'supplier', 'offer', 'lot', 'order', 'tool', 'wish', 'quote'] as const;
export type FoundKind = (typeof FOUND_KINDS)[number];

/** How much it counts that a word stands in a field: in the name or a number most, in what is told of it less, in what was noted beside it least. */
export type FieldWeight = 'name' | 'number' | 'detail' | 'note';

/** One field of a thing that can be searched: a text, a day or an amount. */
export interface SearchField {
  /** What the field is, as a key of the words: `search-field-note`. */
  readonly name: string;
  readonly weight: FieldWeight;
  readonly text: string;
  readonly date: LocalDate | null;
  /** In minor units of the household's currency. */
  readonly minor: number | null;
}

/** Something of the household that can be found, with where it stands in the page. */
export interface SearchThing {
  readonly kind: FoundKind;
  readonly id: string;
  readonly name: string;
  readonly car: string | null;
  /** The day it belongs to; the newest are told first where nothing else decides. */
  readonly date: LocalDate | null;
  readonly href: string;
  readonly fields: readonly SearchField[];
}

/** A text of a thing; none where nothing is said. */
export function textField(name: string, weight: FieldWeight, ...texts: readonly (string | null | undefined)[]): readonly SearchField[] {
  return texts.flatMap((text) => (text == null || text === '' ? [] : [{ name: `search-field-${name}`, weight, text, date: null, minor: null }]));
}

/** A day of a thing; none where there is none. */
export function dayField(name: string, ...dates: readonly (LocalDate | null | undefined)[]): readonly SearchField[] {
  return dates.flatMap((date) => (date == null ? [] : [{ name: `search-field-${name}`, weight: 'note' as const, text: '', date, minor: null }]));
}

/** An amount of a thing; none where nobody named one. */
export function amountField(name: string, ...amounts: readonly (number | null | undefined)[]): readonly SearchField[] {
  return amounts.flatMap((minor) => (minor == null ? [] : [{ name: `search-field-${name}`, weight: 'note' as const, text: '', date: null, minor }]));
}
