import { z } from 'zod';
import { carSubject, type EntryKind } from './entry-kind.ts';
import type { Family } from './family.ts';

const removalSchema = z.strictObject({ id: z.string().min(1).max(80), car: z.string().min(1).max(80).nullable() });
export type FactRemoval = z.infer<typeof removalSchema>;

/**
 * The usual kind of entry that takes a fact away: nothing stands under its id any more. `car` is null for what belongs to the household.
 *
 * @example const placeRemoved = factRemoval('place-removed', places);
 */
export function factRemoval(kind: string, family: Family<unknown> | Family<never>): EntryKind<FactRemoval> {
  return {
    kind,
    version: 1,
    schema: removalSchema,
    subject: ({ car }) => carSubject(car),
    apply: ({ id, car }) => [{ family: family.name, stage: family.stage, id, car, value: null }],
    refersTo: ({ id }) => [{ family: family.name, id }],
  };
}
