import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';

/**
 * The pack of an earlier keeper with which a car came: kept byte for byte by its digest, and carried on into later packs. What it
 * brought is the earlier keeper's: it is read, it moves intervals on, and it is not changed.
 */
export const previousPackSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  /** The SHA-256 of the pack's ZIP. */
  pack: sha256Schema,
  bytes: z.int().min(1),
  name: plainText(200),
  composedOn: dateSchema,
  takenOn: dateSchema,
  /** How many entries it holds and proves. */
  rows: z.int().min(1),
  keyFingerprint: sha256Schema,
  /** It was compared with a seal given before, and agreed. */
  sealed: z.boolean(),
  /** What the car was called by in it. */
  carThere: idSchema,
  /** The records it brought, each with the moment at which its keeper wrote it down. */
  records: z.array(z.strictObject({ id: idSchema, entered: z.string().max(40) })).max(20_000),
  /** The other things it brought: readings, observations, items. */
  others: z.array(idSchema).max(60_000),
});
export type PreviousPack = z.infer<typeof previousPackSchema>;

export const previousPacks = family('previous-pack', 'records', previousPackSchema);
export const packTakenIn = factEntry('pack-taken-in', previousPacks, { car: (one) => one.car, refersTo: (one) => refers(cars, one.car) });

/** When an earlier keeper wrote each of a car's records down, by its id; the keeper's own are not among them. */
export function enteredBefore(facts: Facts, car: string): ReadonlyMap<string, string> {
  return new Map(facts.ofCar(previousPacks, car).flatMap((one) => one.records.map(({ id, entered }) => [id, entered] as const)));
}
