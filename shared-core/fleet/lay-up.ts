import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { carSubject, refers, type EntryKind } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { cars } from './car.ts';

/** A stretch of days in which a car rests, once: from the first to the last, both included. Months that return each year stand with the car. */
export const layUpSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  from: dateSchema,
  /** Null: nobody knows yet until when. */
  to: dateSchema.nullable(),
  note: longText(500),
});
export type LayUp = z.infer<typeof layUpSchema>;

export const layUps = family('lay-up', 'fleet', layUpSchema);
export const layUpSet = factEntry('lay-up-set', layUps, {
  car: (layUp) => layUp.car,
  refersTo: (layUp) => refers(cars, layUp.car),
});

const layUpRemovedSchema = layUpSchema.pick({ id: true, car: true });

/** A lay-up that was none: nothing stands under its id any more. */
export const layUpRemoved: EntryKind<z.infer<typeof layUpRemovedSchema>> = {
  kind: 'lay-up-removed',
  version: 1,
  schema: layUpRemovedSchema,
  subject: ({ car }) => carSubject(car),
  apply: ({ id, car }) => [{ family: layUps.name, stage: layUps.stage, id, car, value: null }],
  refersTo: ({ id, car }) => [...refers(cars, car), ...refers(layUps, id)],
};
