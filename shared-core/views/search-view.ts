import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { compareNames } from '../result/compare-names.ts';
import { refusedBy } from '../result/refused-by.ts';
import { say } from '../result/words/say.ts';
import type { SearchIndex } from './search-index.ts';
import { cutAround, marksIn } from './search-marks.ts';
import { findThings, isNowhere, type FoundThing, type Sought } from './search-match.ts';
import { FOUND_KINDS, type FoundKind } from './search-thing.ts';

/** The longest text that is looked for. */
export const LONGEST_QUERY = 200;

export const searchRequestSchema = z.strictObject({
  /** Words, a registration, a number, a date or an amount; several must all be found. */
  query: z.string().max(LONGEST_QUERY, refusedBy('search-too-long')),
  /** How many of each kind are told; all are counted. */
  most: z.int().min(1).max(100).default(5),
  /** One kind alone; null: all. */
  kind: z.enum(FOUND_KINDS).nullable().default(null),
});
export type SearchRequest = z.output<typeof searchRequestSchema>;

const markSchema = z.tuple([z.int(), z.int()]);
const nearSchema = z.object({ typed: z.string(), words: z.array(z.string()) });

/** Something found: what it is called and where it stands, and a line of where the words were found beside its name. */
export const searchHitSchema = z.object({
  kind: z.enum(FOUND_KINDS),
  id: z.string(),
  name: z.string(),
  /** The pieces of the name that were looked for. */
  nameMarks: z.array(markSchema),
  car: z.object({ id: z.string(), name: z.string(), left: z.boolean() }).nullable(),
  date: dateSchema.nullable(),
  /** The address in the page. */
  href: z.string(),
  /** Null where all stands in the name. A day or an amount is a value, not a text; `before` and `after`: the text goes on there. */
  where: z.object({ code: z.string(), field: z.string(), text: z.string(), marks: z.array(markSchema), before: z.boolean(), after: z.boolean(), date: dateSchema.nullable(), minor: z.int().nullable() }).nullable(),
});
export type SearchHit = z.infer<typeof searchHitSchema>;

export const searchViewSchema = z.object({
  query: z.string(),
  currency: z.string(),
  total: z.int(),
  /** What was found by a slip of one letter alone, as it was typed, and the words taken in its place. */
  near: z.array(nearSchema),
  /** What was typed and stands nowhere. */
  nowhere: z.array(z.string()),
  groups: z.array(z.object({ kind: z.enum(FOUND_KINDS), total: z.int(), hits: z.array(searchHitSchema) })),
});
export type SearchView = z.infer<typeof searchViewSchema>;

/**
 * What of the household has all that was typed, by kind: the kind of the best thing first. Within a kind: more points first (see
 * `search-match`), then cars that are here, then the later day, then by name, then by id.
 */
export function searchView(index: SearchIndex, { query, most, kind }: SearchRequest): SearchView {
  const { found, sought } = findThings(index, query);
  const shown = [...found].filter((one) => kind === null || one.one.thing.kind === kind).sort((a, b) => inOrder(index, a, b));
  const groups = new Map<FoundKind, FoundThing[]>();
  for (const one of shown) {
    const list = groups.get(one.one.thing.kind);
    if (list === undefined) groups.set(one.one.thing.kind, [one]);
    else list.push(one);
  }
  return {
    query,
    currency: index.reading.currency,
    total: shown.length,
    near: sought.filter((one) => one.near).map((one) => ({ typed: one.term.typed, words: one.words.slice(0, 5) })),
    nowhere: found.length > 0 ? [] : sought.filter((one) => isNowhere(index, one)).map((one) => one.term.typed),
    groups: [...groups].map(([of, list]) => ({ kind: of, total: list.length, hits: list.slice(0, most).map((one) => hitOf(index, one)) })),
  };
}

function inOrder(index: SearchIndex, a: FoundThing, b: FoundThing): number {
  const [one, other] = [a.one.thing, b.one.thing];
  const byKind = FOUND_KINDS.indexOf(one.kind) - FOUND_KINDS.indexOf(other.kind);
  const byStay = Number(hasLeft(index, a)) - Number(hasLeft(index, b));
  const byDay = one.date === other.date ? 0 : (one.date ?? '') > (other.date ?? '') ? -1 : 1;
  return b.points - a.points || byKind || byStay || byDay || compareNames(one.name, other.name) || (one.id < other.id ? -1 : 1);
}

function hasLeft(index: SearchIndex, { one: { thing } }: FoundThing): boolean {
  return thing.car !== null && index.cars.get(thing.car)?.left === true;
}

function hitOf(index: SearchIndex, found: FoundThing): SearchHit {
  const { kind, id, name, car, date, href } = found.one.thing;
  const sought = found.terms.map((term) => term.sought);
  return { kind, id, name, date, href, nameMarks: [...marksIn(name, sought, false)].map(([from, to]) => [from, to]), car: car === null ? null : { ...(index.cars.get(car) ?? { id: car, name: car, left: false }) }, where: whereOf(found, sought) };
}

/** Of what was not found in the name, the field that counts most. */
function whereOf({ terms }: FoundThing, sought: readonly Sought[]): SearchHit['where'] {
  const [best] = terms.filter((term) => term.field.weight !== 'name').sort((a, b) => b.points - a.points);
  if (best === undefined) return null;
  const { name: code, text, date, minor, weight } = best.field;
  const cut = cutAround(text, marksIn(text, sought, weight === 'number'));
  return { code, field: say({ key: code, values: {} }), ...cut, marks: cut.marks.map(([from, to]) => [from, to]), date, minor };
}
