import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { carsHere } from '../fleet/departure.ts';
import { findHousehold } from '../fleet/find-car.ts';
import { householdSchema } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { observations } from '../records/observation.ts';
import { compareNames } from '../result/compare-names.ts';
import { ok } from '../result/result.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { careOf, type CarCare } from './car-care.ts';
import { carDue, carDueSchema } from './due-view.ts';
import { leadTimes } from './notice-days.ts';
import { ownRecords } from '../records/earlier-things.ts';
import { ownMinutes } from './own-minutes.ts';
import { sessionViews, sessionViewSchema } from './session-view.ts';
import { aheadOf, aheadSchema } from './yard-ahead.ts';

/** What a lane of the yard shows. */
export const laneSchema = carDueSchema.extend({
  description: z.string().nullable(),
  year: z.number().nullable(),
  unit: distanceUnitSchema,
  laidUpMonths: z.array(z.number()),
  layUps: z.array(z.object({ from: dateSchema, to: dateSchema.nullable() })),
  lastReadOn: dateSchema.nullable(),
  instrumentReplacedOn: dateSchema.nullable(),
  observations: z.array(z.object({ id: z.string(), text: z.string(), severity: z.enum(['watch', 'soon', 'unsafe']), recheckOn: dateSchema.nullable() })),
  /** Minutes, place and harm of each item, by the item's id. */
  work: z.record(z.string(), z.object({ minutes: z.number().nullable(), place: z.enum(['home', 'garage', 'either']), harm: z.enum(['safety', 'damage', 'comfort']) })),
});
export type Lane = z.infer<typeof laneSchema>;

export const yardViewSchema = z.object({
  today: dateSchema,
  household: householdSchema,
  lanes: z.array(laneSchema),
  /** The sessions that stand, by day: proposed, kept and moved. */
  sessions: z.array(sessionViewSchema),
  ahead: aheadSchema,
});
export type YardView = z.infer<typeof yardViewSchema>;

/** All cars at a glance. */
export const showYard = ask({
  request: z.strictObject({}),
  reply: yardViewSchema,
  answer: (facts, _request, moment) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const leads = leadTimes(facts);
    const lanes = carsHere(facts).map((car) => laneOf(facts, car, careOf(facts, car, moment.today, leads), moment.today));
    lanes.sort((a, b) => compareNames(a.name, b.name));
    return ok({ today: moment.today, household: household.value, lanes, sessions: sessionViews(facts, moment.today), ahead: aheadOf(lanes, moment.today) });
  },
});

function laneOf(facts: Facts, car: Car, care: CarCare, today: LocalDate): Lane {
  return {
    ...carDue(facts, care, today),
    description: car.description,
    year: car.year,
    unit: car.unit,
    laidUpMonths: car.laidUpMonths,
    layUps: care.use.told.layUps.map(({ from, to }) => ({ from, to })),
    lastReadOn: care.use.points.at(-1)?.date ?? null,
    instrumentReplacedOn: care.use.instruments.map((one) => one.date).sort().at(-1) ?? null,
    observations: facts.ofCar(observations, car.id).filter((seen) => seen.closedOn === null).map(({ id, text, severity, recheckOn }) => ({ id, text, severity, recheckOn })),
    work: Object.fromEntries(care.items.map(({ item }) => [item.id, { minutes: ownMinutes(item, ownRecords(care.records, care.earlier))?.minutes ?? null, place: item.place, harm: item.harm }])),
  };
}
