import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { holdsDay } from './place-days.ts';

/**
 * A stretch of days on which a car cannot be worked on: it is needed on the road, or it is away (on a journey, lent, at a garage). One that is
 * needed is there to drive; one that is away is not.
 */
export const carDaysSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  from: dateSchema,
  /** The last day, included. */
  to: dateSchema,
  why: z.enum(['needed', 'away']),
  note: longText(120),
});
export type CarDays = z.infer<typeof carDaysSchema>;

/** Whether a car is away on a day. */
export function isAway(stretches: readonly CarDays[], car: string, day: LocalDate): boolean {
  return stretches.some((one) => one.car === car && one.why === 'away' && holdsDay(one, day));
}

export const carDays = family('car-days', 'sessions', carDaysSchema);
export const carDaysSet = factEntry('car-days-set', carDays, { car: (days) => days.car, refersTo: (days) => refers(cars, days.car) });
export const carDaysRemoved = factRemoval('car-days-removed', carDays);
