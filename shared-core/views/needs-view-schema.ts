import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { itemNeedSchema } from '../care/service-item.ts';
import { saidSchema } from './plan-said.ts';

/** A need of a car: when, what and how much of it, and whether it is on the shelf, on the way or still to be bought. */
export const standingNeedSchema = z.object({
  need: z.string(), car: z.string(), carName: z.string(), item: z.string(), itemName: z.string(),
  specification: z.string(), specificationName: z.string(), unit: z.string(), quantity: z.number(), neededBy: dateSchema,
  session: z.object({ id: z.string(), day: dateSchema }).nullable(),
  late: z.boolean(),
  taken: z.array(z.object({ lot: z.string(), part: z.string(), partName: z.string(), quantity: z.number(), where: z.string().nullable() })),
  coming: z.number(), comingOn: dateSchema.nullable(), lacking: z.number(),
  state: z.enum(['on-shelf', 'on-the-way', 'missing']),
  /** The parts that meet it, the preferred first, with the offers that stand for each, kits that hold it included. */
  metBy: z.array(z.object({ part: z.string(), partName: z.string(), offers: z.int() })),
  /** What is to be entered before it can be bought; null where nothing is. */
  gap: z.object({ code: z.enum(['no-part', 'no-offer']), said: saidSchema }).nullable(),
});
export type StandingNeed = z.infer<typeof standingNeedSchema>;

/** The needs of all cars within a horizon, and every task with what is entered for it. */
export const needsViewSchema = z.object({
  today: dateSchema,
  horizonDays: z.int(),
  needs: z.array(standingNeedSchema),
  tasks: z.array(z.object({ car: z.string(), carName: z.string(), item: z.string(), itemName: z.string(), needs: z.array(itemNeedSchema) })),
});
export type NeedsView = z.infer<typeof needsViewSchema>;
