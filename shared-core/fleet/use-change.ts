import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { carSubject, refers, type EntryKind } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { cars } from './car.ts';

/** A day from which a car is used otherwise: "from May I drive to work". What was driven before says nothing of what follows. */
export const useChangeSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  date: dateSchema,
  /** Distance a year as the keeper expects it from then on; null: no figure. */
  declaredAYear: typedDistanceSchema.nullable(),
  note: longText(500),
});
export type UseChange = z.infer<typeof useChangeSchema>;

export const useChanges = family('use-change', 'fleet', useChangeSchema);
export const useChangeSet = factEntry('use-change-set', useChanges, {
  car: (change) => change.car,
  refersTo: (change) => refers(cars, change.car),
});

const useChangeRemovedSchema = useChangeSchema.pick({ id: true, car: true });

/** A change of use that was none: nothing stands under its id any more. */
export const useChangeRemoved: EntryKind<z.infer<typeof useChangeRemovedSchema>> = {
  kind: 'use-change-removed',
  version: 1,
  schema: useChangeRemovedSchema,
  subject: ({ car }) => carSubject(car),
  apply: ({ id, car }) => [{ family: useChanges.name, stage: useChanges.stage, id, car, value: null }],
  refersTo: ({ id, car }) => [...refers(cars, car), ...refers(useChanges, id)],
};
