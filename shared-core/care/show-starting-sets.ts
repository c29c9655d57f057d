import { z } from 'zod';
import { carSchema } from '../fleet/car.ts';
import { findCar, sameName } from '../fleet/find-car.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { ok } from '../result/result.ts';
import { proseFor } from '../result/words/american-prose.ts';
import { nearNames } from './near-names.ts';
import { historySchema, serviceItems, serviceItemSchema } from './service-item.ts';
import { STARTING_SETS, startingSetKeySchema, suggestedSet, type SetItem } from './starting-set.ts';
import { suggestedHistory } from './suggested-history.ts';

const shape = serviceItemSchema.shape;
const distance = z.object({ mi: z.number(), km: z.number() }).nullable();
const limit = z.object({ months: z.number().nullable(), distance });

const offeredSchema = z.object({
  key: z.string(),
  name: z.string(),
  work: shape.work,
  harm: shape.harm,
  first: limit,
  repeat: limit,
  minutes: z.number().nullable(),
  place: shape.place,
  printedDate: z.boolean(),
  /** The car already has an item of that name, which stays as it is. */
  there: z.boolean(),
  /** An item of the car that may be the same thing under another name; null where there is none. */
  near: z.string().nullable(),
});

const of = carSchema.shape;
/** A car that is there, or what is known so far of one that is not added yet. */
const newCarSchema = z.strictObject({ power: of.power, year: of.year, firstRegistered: of.firstRegistered, keptSince: of.keptSince });
type NewCar = z.infer<typeof newCarSchema>;
const setsRequest = z.union([z.strictObject({ car: z.string().min(1).max(80) }), newCarSchema]);

/** The sets of items that a car can be started from, the one that fits it, and what to take of the time before its records. */
export const showStartingSets = ask({
  request: setsRequest,
  reply: z.object({
    suggested: startingSetKeySchema.nullable(),
    history: historySchema,
    sets: z.array(z.object({ key: startingSetKeySchema, name: z.string(), source: z.string(), items: z.array(offeredSchema) })),
  }),
  answer: (facts, request, moment) => {
    const car = 'car' in request ? findCar(facts, request.car) : null;
    if (car?.ok === false) return car;
    const names = car === null ? [] : namesOn(facts, car.value.id);
    const known = car?.value ?? (request as NewCar);
    const locale = facts.get(households, HOUSEHOLD_ID)?.locale ?? '';
    const sets = proseFor(locale, STARTING_SETS).map((set) => ({ ...set, items: offeredOf(set.items, names) }));
    return ok({ suggested: suggestedSet(known), history: suggestedHistory(known, moment.today), sets });
  },
});

/** What a set offers a car that has items of these names. A name of the car that the set has too is that item, and near to no other. */
function offeredOf(items: readonly SetItem[], names: readonly string[]): z.output<typeof offeredSchema>[] {
  const others = names.filter((name) => !items.some((item) => sameName(item.name, name)));
  const near = nearNames(items.map((item) => item.name), others);
  return items.map(({ anchor: _anchor, access: _access, measure: _measure, ...item }) => {
    const there = names.some((name) => sameName(name, item.name));
    return { ...item, there, near: there ? null : near.get(item.name) ?? null };
  });
}

function namesOn(facts: Facts, car: string): readonly string[] {
  return facts.ofCar(serviceItems, car).map((item) => item.name);
}
