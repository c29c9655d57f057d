import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { currencySchema } from '../units/money.ts';

const momentSchema = z.string().max(40);

/** The days that a pack of less than the whole history shows; null: without an end on that side. */
const daysShownSchema = z.strictObject({ from: dateSchema.nullable(), to: dateSchema.nullable() });

/** A pack of a keeper before, as the pack that was taken in names it. */
export const packBeforeSchema = z.strictObject({
  name: plainText(200),
  composedOn: dateSchema,
  rows: z.int().min(1),
  /** The SHA-256 of its ZIP. */
  pack: sha256Schema,
  /** It stands in the pack that was taken in; else an earlier keeper left it out. */
  handedOver: z.boolean(),
  /** Absent: it shows the whole history. */
  period: daysShownSchema.optional(),
});
export type PackBefore = z.infer<typeof packBeforeSchema>;

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
  /** The records it brought, each with the moments at which its keeper wrote it down and amended it; of one from a keeper before, that one's pack. */
  records: z.array(z.strictObject({ id: idSchema, entered: momentSchema, amended: z.array(momentSchema).max(1000).optional(), of: sha256Schema.optional() })).max(20_000),
  /** The other things it brought: readings, observations, items. */
  others: z.array(idSchema).max(60_000),
  /** The currency of the amounts it brought; null or absent: nobody said. */
  currency: currencySchema.nullable().optional(),
  /** Of what had come to its keeper from one before: the currency of its amounts. */
  currencies: z.array(z.strictObject({ id: idSchema, currency: currencySchema.nullable() })).max(80_000).optional(),
  /** What was withheld of what it brought, by the journal's fields. */
  withheld: z.array(z.strictObject({ id: idSchema, fields: z.array(plainText(40)).min(1).max(60) })).max(80_000).optional(),
  /** The packs of keepers before its own, the first one first. */
  before: z.array(packBeforeSchema).max(200).optional(),
  /** Absent: it shows the whole history of its keeper. */
  period: daysShownSchema.optional(),
  /** How many entries were written with it, this one not counted; absent: one for each thing, and the car's. */
  entries: z.int().min(1).max(200_000).optional(),
});
export type PreviousPack = z.infer<typeof previousPackSchema>;

export const previousPacks = family('previous-pack', 'records', previousPackSchema);
export const packTakenIn = factEntry('pack-taken-in', previousPacks, { car: (one) => one.car, refersTo: (one) => refers(cars, one.car) });
