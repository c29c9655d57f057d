import { z } from 'zod';
import { yearOf } from '../calendar/local-date.ts';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { yearlyFuelRemoved, yearlyFuels, yearlyFuelSchema, yearlyFuelSet, type YearlyFuel } from './yearly-fuel.ts';

const shape = yearlyFuelSchema.shape;

/** Enters what fuel or charging of a car cost in a year, or enters it anew. */
export const setYearlyFuel = change({
  request: z.strictObject({ car: z.string().min(1).max(80), year: shape.year, paidMinor: shape.paidMinor, note: shape.note.default('') }),
  reply: z.object({ set: yearlyFuelSchema }),
  decide: (facts, request, { today, newId }) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    if (request.year > yearOf(today)) return refuse('year-not-begun', { year: request.year }, ['year']);
    const standing = facts.all(yearlyFuels).find((one) => one.car === car.value.id && one.year === request.year);
    const set: YearlyFuel = { id: standing?.id ?? newId(), car: car.value.id, year: request.year, paidMinor: request.paidMinor, note: request.note };
    return ok({ entries: [newEntry(yearlyFuelSet, set)], reply: { set } });
  },
});

/** Takes a year's figure for fuel away. */
export const removeYearlyFuel = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ removed: z.string() }),
  decide: (facts, { id }) => (facts.get(yearlyFuels, id) === null ? refuse('unknown-yearly-fuel', {}, ['id']) : ok({ entries: [newEntry(yearlyFuelRemoved, { id, car: null })], reply: { removed: id } })),
});
