import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refusedBy } from '../result/refused-by.ts';
import { saidSchema } from './plan-said.ts';

const notMonths = refusedBy('not-months-ahead');

export const budgetRequestSchema = z.strictObject({
  /** How many months ahead, from today. */
  months: z.int(notMonths).min(1, notMonths).max(60, notMonths).default(24),
  /** One car by its id or name; null: all that are here. */
  car: z.string().min(1).max(80).nullable().default(null),
  /** With the wishes, each in the month in which it is paid for. */
  wishes: z.boolean().default(false),
});

/** A sum: 1 in 10 below low, as likely below as above likely, 1 in 10 above high; expected ones add up, and so do planned ones. */
const bandShape = { lowMinor: z.int(), likelyMinor: z.int(), highMinor: z.int(), expectedMinor: z.int(), plannedMinor: z.int() };
const periodSchema = z.object({ from: dateSchema, to: dateSchema, ...bandShape });
const kindSchema = z.enum(['item', 'obligation', 'visit', 'unplanned', 'extra']);

/** One payment that is likely to come. */
export const budgetLineSchema = z.object({
  key: z.string(),
  kind: kindSchema,
  car: z.string().nullable(),
  carName: z.string().nullable(),
  name: z.string(),
  due: dateSchema,
  on: dateSchema,
  /** Which of the months, 0 the first. */
  month: z.int(),
  amountMinor: z.int(),
  source: z.enum(['entered', 'offers', 'as-last-times', 'quoted', 'wished']),
  offShelfMinor: z.int(),
  /** What of the amount is growth of prices until then. */
  grownMinor: z.int(),
  inSession: z.boolean(),
  late: z.boolean(),
  why: z.object({ text: z.string(), reasons: z.array(saidSchema) }),
});
export type BudgetLineView = z.infer<typeof budgetLineSchema>;

export const budgetViewSchema = z.object({
  today: dateSchema,
  /** The last day in it. */
  to: dateSchema,
  currency: z.string(),
  car: z.object({ id: z.string(), name: z.string() }).nullable(),
  total: z.object(bandShape),
  summary: saidSchema,
  months: z.array(periodSchema),
  quarters: z.array(periodSchema),
  cars: z.array(z.object({ car: z.string().nullable(), name: z.string().nullable(), ...bandShape })),
  kinds: z.array(z.object({ kind: kindSchema, ...bandShape })),
  /** By day: they add up to what is planned. */
  lines: z.array(budgetLineSchema),
  /** What moves the sum most, the largest first; `share` of how far it may lie off, of 1. */
  drivers: z.array(z.object({ key: z.string(), kind: kindSchema, car: z.string().nullable(), carName: z.string().nullable(), name: z.string(), expectedMinor: z.int(), share: z.number() })),
  /** What is in no sum. */
  missing: z.array(z.object({ key: z.string(), car: z.string(), carName: z.string(), name: z.string(), why: z.enum(['unknown', 'unpriced']), said: saidSchema })),
  /** With wishes: what it would be without them, and which are in it. */
  wishes: z.object({ without: z.object(bandShape), added: z.array(z.object({ wish: z.string(), name: z.string(), month: z.int(), minor: z.int() })) }).nullable(),
  /** What was learned, what was assumed, and what is not in it. */
  notes: z.array(saidSchema),
});
export type BudgetView = z.infer<typeof budgetViewSchema>;
