import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { metresSchema, typedDistanceSchema } from '../units/distance-schema.ts';
import { cars } from './car.ts';
import { instruments } from './instrument.ts';

/** Where a reading comes from. */
export const readingSourceSchema = z.enum(['keeper', 'garage', 'test', 'purchase', 'import', 'record']);

/**
 * An odometer value on a date. `typed` is kept as evidence beside whole metres. A doubtful reading stands as `set-aside`
 * with the reason, moves no forecast, and waits for an answer; one found wrong is `dismissed` and stays to be seen.
 */
export const readingSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  date: dateSchema,
  typed: typedDistanceSchema,
  shown: metresSchema,
  /** The instrument it was read from; null: the first one. */
  instrument: idSchema.nullable(),
  source: readingSourceSchema,
  paper: sha256Schema.nullable(),
  note: longText(500),
  standing: z.enum(['accepted', 'set-aside', 'dismissed']),
  /** Why it was set aside: 'decrease', 'too-high' ...; kept when the keeper then says it is right. */
  doubt: z.string().max(40).nullable(),
  /** The keeper said it is right. */
  sure: z.boolean(),
});
export type Reading = z.infer<typeof readingSchema>;

export const readings = family('reading', 'fleet', readingSchema);
export const readingRecorded = factEntry('reading-recorded', readings, {
  car: (reading) => reading.car,
  refersTo: (reading) => [...refers(cars, reading.car), ...refers(instruments, reading.instrument), ...(reading.paper === null ? [] : [{ family: 'paper', id: reading.paper }])],
});
