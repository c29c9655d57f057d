import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { places } from './place.ts';

/** A stretch of days on which a place is closed against its habit (a holiday), or open against it (a day off to work at home). */
export const placeDaysSchema = z.strictObject({
  id: idSchema,
  place: idSchema,
  from: dateSchema,
  /** The last day, included. */
  to: dateSchema,
  open: z.boolean(),
  reason: plainText(120),
});
export type PlaceDays = z.infer<typeof placeDaysSchema>;

export const placeDays = family('place-days', 'sessions', placeDaysSchema);
export const placeDaysSet = factEntry('place-days-set', placeDays, { car: () => null, refersTo: (days) => refers(places, days.place) });
export const placeDaysRemoved = factRemoval('place-days-removed', placeDays);

/** Whether a stretch of days holds a day. */
export function holdsDay(stretch: { readonly from: LocalDate; readonly to: LocalDate }, day: LocalDate): boolean {
  return stretch.from <= day && day <= stretch.to;
}
