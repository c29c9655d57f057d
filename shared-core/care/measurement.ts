import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { readings } from '../fleet/reading.ts';
import { wheels } from '../fleet/wheel.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { metresSchema } from '../units/distance-schema.ts';
import { typedValueSchema } from '../units/measured-value.ts';
import { measureKindSchema, measureNameSchema, measurePlaceSchema } from './measure-kind.ts';
import { serviceItems } from './service-item.ts';

/** Who measured. */
export const measurementSourceSchema = z.enum(['keeper', 'garage', 'test']);

/** Something measured once: a depth, a thickness, a voltage. Where it varies across the thing, the worst of it. */
export const measurementSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  /** The service item in whose course it was measured; null where it belongs to none. */
  item: idSchema.nullable(),
  what: measureKindSchema,
  /** What it is, of something else; null of the kinds that have a name. */
  name: measureNameSchema.nullable(),
  place: measurePlaceSchema.nullable(),
  /** Of tread: the wheel, whose history goes with it wherever it runs. */
  wheel: idSchema.nullable(),
  date: dateSchema,
  /** As it was read, kept as evidence. */
  typed: typedValueSchema,
  /** The same in the canonical unit: mm, V, per cent, degrees Celsius, grade. */
  value: z.number(),
  reading: idSchema.nullable(),
  /** The car's whole distance, where that was known and no odometer reading stands for it. */
  metres: metresSchema.nullable(),
  /** The first of a new part: what was measured before is of the one it replaced. */
  fresh: z.boolean(),
  /** With what it was measured: "depth gauge 2". */
  gauge: plainText(60).nullable(),
  source: measurementSourceSchema,
  paper: sha256Schema.nullable(),
  note: longText(500),
  /** The keeper found it wrong: it stays to be seen and counts for nothing. */
  dismissed: z.boolean(),
});
export type Measurement = z.infer<typeof measurementSchema>;

export const measurements = family('measurement', 'care', measurementSchema);
export const measurementTaken = factEntry('measurement-taken', measurements, {
  car: (one) => one.car,
  refersTo: (one) => [
    ...refers(cars, one.car),
    ...refers(serviceItems, one.item),
    ...refers(wheels, one.wheel),
    ...refers(readings, one.reading),
    // Papers belong to a later stage, so they are named by their family.
    ...(one.paper === null ? [] : [{ family: 'paper', id: one.paper }]),
  ],
});
