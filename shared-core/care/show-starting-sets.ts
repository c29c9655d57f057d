import { z } from 'zod';
import { findCar, sameName } from '../fleet/find-car.ts';
import { ask } from '../journal/operation.ts';
import { ok } from '../result/result.ts';
import { serviceItems, serviceItemSchema } from './service-item.ts';
import { STARTING_SETS, startingSetKeySchema, suggestedSet } from './starting-set.ts';

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
});

/** The sets of items that a car can be started from, and the one that fits it. */
export const showStartingSets = ask({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: z.object({
    suggested: startingSetKeySchema.nullable(),
    sets: z.array(z.object({ key: startingSetKeySchema, name: z.string(), source: z.string(), items: z.array(offeredSchema) })),
  }),
  answer: (facts, request) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const names = facts.ofCar(serviceItems, car.value.id).map((item) => item.name);
    const there = (name: string) => names.some((one) => sameName(one, name));
    const sets = STARTING_SETS.map((set) => ({ ...set, items: set.items.map(({ anchor: _anchor, access: _access, ...item }) => ({ ...item, there: there(item.name) })) }));
    return ok({ suggested: suggestedSet(car.value), sets });
  },
});
