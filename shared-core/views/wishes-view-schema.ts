import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { WISH_STATES } from '../ledger/wish-state.ts';
import { wishSchema } from '../ledger/wish.ts';
import { saidSchema } from './plan-said.ts';

const date = dateSchema.nullable();

const wishCostSchema = z.object({
  partsLowMinor: z.int(), partsMinor: z.int(), workMinor: z.int(), lowMinor: z.int(), likelyMinor: z.int(),
  ownMinutes: z.int().nullable(), ownTimeMinor: z.int().nullable(),
  /** What has no price: named, and in no sum. */
  unpriced: z.array(z.string()),
});

const wishSessionSchema = z.object({
  session: z.string(), day: dateSchema, place: z.string(), placeName: z.string(), kept: z.boolean(), fits: z.boolean(), savesMinor: z.int(), sharedMinutes: z.int(), paidForByThen: z.boolean(), why: saidSchema,
});

export const wishViewSchema = z.object({
  wish: wishSchema,
  carName: z.string(),
  state: z.enum(WISH_STATES),
  fulfilledOn: date,
  needs: z.array(z.object({ specification: z.string(), name: z.string(), unit: z.string(), quantity: z.number(), aside: z.number(), lacking: z.number() })),
  /** What it still costs; null where it has come true or was let go. */
  cost: wishCostSchema.nullable(),
  /** What it has cost so far, with what lies aside for it. */
  spentMinor: z.int(),
  savedMinor: z.int(),
  lacksMinor: z.int().nullable(),
  paidForOn: date,
  /** Where it is planned to be done. */
  planned: z.object({ session: z.string(), day: dateSchema, placeName: z.string(), kept: z.boolean() }).nullable(),
  sessions: z.array(wishSessionSchema),
  /** How far the savings reach, and what is not known. */
  said: z.array(saidSchema),
});
export type WishView = z.infer<typeof wishViewSchema>;

export const wishesViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  saving: z.object({ savedBefore: z.int(), monthlyMinor: z.int(), savingSince: date, putByMinor: z.int(), spentMinor: z.int(), leftMinor: z.int() }),
  /** Those still to come true in the order of preference; then those that have, and those let go. */
  wishes: z.array(wishViewSchema),
  /** What the savings come to, and what a year of waiting does. */
  said: z.array(saidSchema),
});
export type WishesView = z.infer<typeof wishesViewSchema>;
