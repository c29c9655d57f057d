import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { horizonSchema } from '../sessions/plan-settings.ts';
import { sessionStateSchema } from '../sessions/session.ts';
import { taskRefSchema } from '../sessions/task-ref.ts';
import { saidSchema } from './plan-said.ts';

export const planRequestSchema = z.strictObject({
  /** How far ahead, in days; null: as the settings have it. */
  horizonDays: horizonSchema.nullable().default(null),
  /** A name under which progress is told and the solving can be stopped. */
  job: z.string().min(1).max(80).nullable().default(null),
});

/** What a task costs where it stands, under its headings: they sum to `totalMinor`. */
export const termsSchema = z.object({ priceMinor: z.int(), earlyMinor: z.int(), lateMinor: z.int(), totalMinor: z.int(), earlyDays: z.number(), lateDays: z.number() });

/** One reason by its code, and what it is worth; a kept day or a legal date is worth more than any money. */
export const reasonSchema = z.object({ code: z.string(), values: saidSchema.shape.values, worthMinor: z.int().nullable() });

export const taskViewSchema = z.object({
  task: taskRefSchema,
  car: z.string(),
  carName: z.string(),
  name: z.string(),
  minutes: z.int(),
  access: z.array(z.string()),
  late: z.boolean(),
  likely: dateSchema.nullable(),
  /** The last day on which it may be done by law. */
  legalBy: dateSchema.nullable(),
});

export const plannedTaskSchema = taskViewSchema.extend({ terms: termsSchema, why: z.object({ text: z.string(), reasons: z.array(reasonSchema) }) });
export type PlannedTask = z.infer<typeof plannedTaskSchema>;

export const leftTaskSchema = taskViewSchema.extend({ terms: z.object({ lateMinor: z.int(), openingMinor: z.int(), totalMinor: z.int(), lateDays: z.number() }), why: saidSchema });

export const planSessionSchema = z.object({
  /** The kept session it is; null where it is only proposed. */
  id: z.string().nullable(),
  day: dateSchema,
  place: z.string(),
  placeName: z.string(),
  state: sessionStateSchema,
  minutes: z.int(),
  /** The most minutes that day holds there. */
  mostMinutes: z.int(),
  openingMinor: z.int(),
  minutesMinor: z.int(),
  tasks: z.array(plannedTaskSchema),
});
export type PlanSession = z.infer<typeof planSessionSchema>;

/** A proposed plan: its sessions with their reasons, what is left and why, what it costs, how far that is proven, and what it saves. */
export const planViewSchema = z.object({
  today: dateSchema,
  horizonDays: z.int(),
  lastDay: dateSchema,
  currency: z.string(),
  status: z.enum(['optimal', 'stopped']),
  totalMinor: z.int(),
  boundMinor: z.int(),
  /** The total under its headings. */
  cost: z.object({ openingMinor: z.int(), minutesMinor: z.int(), priceMinor: z.int(), earlyMinor: z.int(), lateMinor: z.int(), leftMinor: z.int() }),
  /** Expected days late, over all tasks. */
  lateDays: z.number(),
  /** Each task by itself on its first open day; null where that keeps not every legal date. */
  baselineMinor: z.int().nullable(),
  savingMinor: z.int().nullable(),
  sessions: z.array(planSessionSchema),
  left: z.array(leftTaskSchema),
  /** What the plan comes to, and how far it is proven. */
  summary: z.array(saidSchema),
  /** What was assumed, or is not known. */
  notes: z.array(saidSchema),
  /** What it was proposed of, and which task stands where: so the screens know how long what was proven of it holds. */
  basis: z.string(),
  choices: z.string(),
});
export type PlanView = z.infer<typeof planViewSchema>;
