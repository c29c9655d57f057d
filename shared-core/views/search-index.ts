import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import type { Household } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import type { PaperContents } from '../records/paper-contents.ts';
import { foldCode, foldText } from './search-fold.ts';
import { thingsOfCars } from './search-of-car.ts';
import { thingsOfHousehold } from './search-of-household.ts';
import { thingsOfPapers } from './search-of-papers.ts';
import type { SearchReading } from './search-terms.ts';
import type { SearchField, SearchThing } from './search-thing.ts';

/** A thing with its texts folded once for all searches. */
export interface IndexedThing {
  readonly thing: SearchThing;
  readonly fields: readonly IndexedField[];
  /** Its name folded: who types it whole means it. */
  readonly name: string;
}

export interface IndexedField extends SearchField {
  readonly folded: string;
}

/** All that can be found in a household, made ready. It holds as long as nothing changes. */
export interface SearchIndex {
  readonly things: readonly IndexedThing[];
  readonly reading: SearchReading;
  /** What the cars are called; and which of them left. */
  readonly cars: ReadonlyMap<string, { readonly id: string; readonly name: string; readonly left: boolean }>;
  /** Every word that stands anywhere, for a slip of a letter. */
  readonly words: () => ReadonlySet<string>;
}

/** Makes everything of the household ready to be searched. */
export function searchIndex(standing: Facts, household: Household, look: (paper: string) => PaperContents | null, today: LocalDate): SearchIndex {
  const facts = rememberedFacts(standing);
  const reading: SearchReading = { currency: household.currency, order: household.locale === 'en-US' ? 'month-first' : 'day-first' };
  const things = [...thingsOfCars(facts), ...thingsOfHousehold(facts, today), ...thingsOfPapers(facts, look, reading, today)];
  const gone = new Set(facts.all(departures).map((one) => one.car));
  return indexThings(things, reading, facts.all(cars).map(({ id, name }) => ({ id, name, left: gone.has(id) })));
}

/** Makes things ready to be searched. */
export function indexThings(listed: readonly SearchThing[], reading: SearchReading, household: readonly { readonly id: string; readonly name: string; readonly left: boolean }[]): SearchIndex {
  const things = listed.map(indexed);
  let words: ReadonlySet<string> | null = null;
  return {
    things, reading,
    cars: new Map(household.map((car) => [car.id, car])),
    words: () => (words ??= new Set(things.flatMap((one) => one.fields.flatMap((field) => field.folded.split(' ').filter((word) => word !== ''))))),
  };
}

function indexed(thing: SearchThing): IndexedThing {
  return { thing, name: foldText(thing.name), fields: thing.fields.map((field) => ({ ...field, folded: field.weight === 'number' ? foldCode(field.text) : foldText(field.text) })) };
}
