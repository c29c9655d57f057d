import { z } from 'zod';
import { yearOf, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
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
    const outside = outsideItsStay(facts, car.value, request.year);
    if (outside !== null) return refuse(outside.code, { car: car.value.name, year: request.year, date: outside.date }, ['year']);
    const standing = facts.all(yearlyFuels).find((one) => one.car === car.value.id && one.year === request.year);
    const set: YearlyFuel = { id: standing?.id ?? newId(), car: car.value.id, year: request.year, paidMinor: request.paidMinor, note: request.note };
    return ok({ entries: [newEntry(yearlyFuelSet, set)], reply: { set } });
  },
});

/** Nobody here paid for what a car burned before it came, or after it left. */
function outsideItsStay(facts: Facts, { id, keptSince }: Car, year: number): { readonly code: string; readonly date: LocalDate } | null {
  if (keptSince !== null && year < yearOf(keptSince)) return { code: 'fuel-before-car', date: keptSince };
  const left = facts.get(departures, id)?.on ?? null;
  return left !== null && year > yearOf(left) ? { code: 'fuel-after-car', date: left } : null;
}

/** Takes a year's figure for fuel away. */
export const removeYearlyFuel = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ removed: z.string() }),
  decide: (facts, { id }) => (facts.get(yearlyFuels, id) === null ? refuse('unknown-yearly-fuel', {}, ['id']) : ok({ entries: [newEntry(yearlyFuelRemoved, { id, car: null })], reply: { removed: id } })),
});
