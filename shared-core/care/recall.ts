import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';

/**
 * A recall of the car's maker: its number, what it is about, how and when it was done, and when it is to be seen to next.
 *
 * Source: what an aircraft's record must hold of a directive: method, number, date, next due (14 CFR 91.417(a)(2)(v), seen).
 */
export const recallSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  number: plainText(40),
  what: plainText(300),
  /** How it was done: part replaced, program renewed, looked at and found well. */
  how: plainText(300).nullable(),
  doneOn: dateSchema.nullable(),
  doneBy: plainText(80).nullable(),
  /** The day booked for it; or, once done, the day on which it is due again. */
  nextOn: dateSchema.nullable(),
  papers: z.array(sha256Schema).max(10),
});
export type Recall = z.infer<typeof recallSchema>;

export const recalls = family('recall', 'care', recallSchema);
export const recallSet = factEntry('recall-set', recalls, {
  car: (recall) => recall.car,
  refersTo: (recall) => [...refers(cars, recall.car), ...recall.papers.map((id) => ({ family: 'paper', id }))],
});

/** The day to which a recall belongs: that on which it was done, where nothing is to be seen to any more; null while something is. */
export function settledOn({ doneOn, nextOn }: Pick<Recall, 'doneOn' | 'nextOn'>): LocalDate | null {
  return nextOn === null ? doneOn : null;
}
