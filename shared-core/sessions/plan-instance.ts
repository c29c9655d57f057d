import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';

/** The most candidate days of one plan. */
export const MOST_PLAN_DAYS = 400;
/** More minutes than any day has are taken, for a place that is never full. */
const MOST_MINUTES = 1_000_000;

const notMinutes = refusedBy('not-minutes');
const id = z.string().min(1, refusedBy('text-empty')).max(200, refusedBy('text-too-long'));
const minutes = z.int(notMinutes).min(0, notMinutes).max(MOST_MINUTES, notMinutes);
const days = z.array(dateSchema).max(5000);

/**
 * Where work can be done: what opening a session there costs (trouble or fee), how many minutes one day holds, what each minute costs, and
 * the days on which nothing is done there. `minutesOn` gives single days another number of minutes than `minutesADay`.
 */
export const planPlaceSchema = z.strictObject({
  id,
  openingMinor: priceSchema,
  minutesADay: minutes,
  minutesOn: z.record(dateSchema, minutes).default({}),
  minuteMinor: priceSchema.default(0),
  closed: days.default([]),
});
export type PlanPlace = z.infer<typeof planPlaceSchema>;

/**
 * One item to be done once on a car, or left out at `leftUndoneMinor` (never where `mustDo`). `access` names what must be opened up on the
 * car to reach it. `costMinor[place][i]` is what doing it costs there on `days[i]`; null, or a place that is not named: not allowed.
 */
export const planTaskSchema = z.strictObject({
  id,
  car: id,
  minutes,
  access: z.array(id).max(50).default([]),
  mustDo: z.boolean().default(false),
  leftUndoneMinor: priceSchema,
  costMinor: z.record(id, z.array(priceSchema.nullable()).max(MOST_PLAN_DAYS)),
});
export type PlanTask = z.infer<typeof planTaskSchema>;

/** Something on a car that several tasks share: its minutes count once for all tasks of a session that need it. Known by car and id. */
export const planAccessSchema = z.strictObject({ car: id, id, minutes });
export type PlanAccess = z.infer<typeof planAccessSchema>;

/** A car that cannot be worked on on some days, at any place; `away`: the days on which it is not there to drive, worked on or not. */
export const planCarSchema = z.strictObject({ id, closed: days.default([]), away: days.default([]) });
export type PlanCar = z.infer<typeof planCarSchema>;

/**
 * The bare plan problem: at most one day and place for each task, money in minor units. A day and place that holds a task is a session.
 * `cars` may leave out cars that are never closed and never away. `neverAll`: on a day on which a car of a list has a task, one at least of the list
 * has none and is not away.
 */
export const planInstanceSchema = z.strictObject({
  days: z.array(dateSchema).max(MOST_PLAN_DAYS),
  places: z.array(planPlaceSchema).max(50),
  tasks: z.array(planTaskSchema).max(2000),
  access: z.array(planAccessSchema).max(5000).default([]),
  cars: z.array(planCarSchema).max(1000).default([]),
  neverAll: z.array(z.array(id).min(1).max(1000)).max(100).default([]),
});
export type PlanInstance = z.infer<typeof planInstanceSchema>;
/** The instance as it may be written: what has a default may be absent. */
export type PlanInstanceAsWritten = z.input<typeof planInstanceSchema>;
