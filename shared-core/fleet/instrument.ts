import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { distanceUnitSchema, metresSchema } from '../units/distance-schema.ts';
import { cars } from './car.ts';

/** A replaced instrument: from `date` on, readings are of the new one, which started at `firstShown` when the car had gone `distance`. */
export const instrumentSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  date: dateSchema,
  /** What the new one showed when it was put in. */
  firstShown: metresSchema,
  /** The car's whole distance at that moment. */
  distance: metresSchema,
  /** The distance was worked out from the forecast, not read from the old instrument. */
  estimated: z.boolean(),
  unit: distanceUnitSchema,
  note: longText(500),
});
export type Instrument = z.infer<typeof instrumentSchema>;

export const instruments = family('instrument', 'fleet', instrumentSchema);
export const instrumentReplaced = factEntry('instrument-replaced', instruments, {
  car: (instrument) => instrument.car,
  refersTo: (instrument) => refers(cars, instrument.car),
});
