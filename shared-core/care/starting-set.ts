import { z } from 'zod';
import { yearOf } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { limitSchema } from './limit.ts';
import { measureKindSchema } from './measure-kind.ts';
import { serviceItemSchema } from './service-item.ts';
import before1980 from './starting-sets/before-1980.json' with { type: 'json' };
import camper from './starting-sets/camper.json' with { type: 'json' };
import diesel from './starting-sets/diesel.json' with { type: 'json' };
import electric from './starting-sets/electric.json' with { type: 'json' };
import hybrid from './starting-sets/hybrid.json' with { type: 'json' };
import ofSeveralSets from './starting-sets/items-of-several-sets.json' with { type: 'json' };
import petrol from './starting-sets/petrol.json' with { type: 'json' };

/** The kinds of car for which there is a set of items to start from. */
export const startingSetKeySchema = z.enum(['petrol', 'diesel', 'hybrid', 'electric', 'before-1980', 'camper'], refusedBy('unknown-set'));
export type StartingSetKey = z.infer<typeof startingSetKeySchema>;

const shape = serviceItemSchema.shape;

/** A limit as a set names it: a round distance in either unit, the one in km never longer than the one in miles. */
const setLimitSchema = z.strictObject({
  months: limitSchema.shape.months,
  distance: z.strictObject({ mi: z.int().positive(), km: z.int().positive() }).nullable(),
});
export type SetLimit = z.infer<typeof setLimitSchema>;

/** An item as a set proposes it. */
const setItemSchema = z.strictObject({
  key: idSchema,
  name: shape.name,
  work: shape.work,
  harm: shape.harm,
  first: setLimitSchema,
  repeat: setLimitSchema,
  /** From what it is counted: the last completion, or a day of the year (of the northern half; half a year on in the southern). */
  anchor: z.union([z.literal('completion'), z.strictObject({ month: z.int().min(1).max(12), day: z.int().min(1).max(28) })]),
  minutes: shape.minutes,
  place: shape.place,
  access: shape.access,
  /** By what it is measured, where that is done; its limit is for the keeper to set. */
  measure: measureKindSchema.exclude(['other']).nullable().default(null),
  /** A date is printed on the thing itself, which is asked for and then stands before the interval. */
  printedDate: z.boolean().default(false),
});
export type SetItem = z.infer<typeof setItemSchema>;

/** A set of items to start a car of one kind from. */
export interface StartingSet {
  readonly key: StartingSetKey;
  readonly name: string;
  /** What every interval of the set is marked with until it is confirmed. */
  readonly source: string;
  readonly items: readonly SetItem[];
}

const source = plainText(120);
const itemsSchema = z.array(setItemSchema);
const SHARED: ReadonlyMap<string, SetItem> = new Map(z.strictObject({ source, items: itemsSchema }).parse(ofSeveralSets).items.map((item) => [item.key, item]));

const fileSchema = z.strictObject({ key: startingSetKeySchema, name: plainText(60), source, takes: z.array(idSchema), items: itemsSchema });

function setOf(file: unknown): StartingSet {
  const { takes, items, ...set } = fileSchema.parse(file);
  return { ...set, items: [...takes.map((key) => must(SHARED.get(key), `item '${key}' of several sets`)), ...items] };
}

/** Every set, in the order in which they are offered. */
export const STARTING_SETS: readonly StartingSet[] = [petrol, diesel, hybrid, electric, before1980, camper].map(setOf);

/** The set of a key. @example startingSet('petrol').items.length */
export function startingSet(key: StartingSetKey): StartingSet {
  return must(STARTING_SETS.find((set) => set.key === key), `set '${key}'`);
}

const FIRST_YEAR_OF_LATER_CARS = 1980;

/**
 * The set that fits a car by its age and by what drives it; null where neither says.
 *
 * @example suggestedSet({ ...car, power: 'diesel', year: 2019 }) //=> 'diesel'
 */
export function suggestedSet(car: Pick<Car, 'power' | 'year' | 'firstRegistered'>): StartingSetKey | null {
  const year = car.year ?? (car.firstRegistered === null ? null : yearOf(car.firstRegistered));
  if (year !== null && year < FIRST_YEAR_OF_LATER_CARS) return 'before-1980';
  return car.power === 'other' ? null : car.power;
}
