import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { placeSchema } from '../sessions/place.ts';
import { bookingShortSchema } from './booking-said.ts';
import { bookingRowSchema } from './bookings-list.ts';
import { saidSchema } from './plan-said.ts';
import { leftTaskSchema, plannedTaskSchema } from './plan-view-schema.ts';
import { sessionViewSchema } from './session-view.ts';

/** What was last proposed, as the plan itself answered it: what it proved is said again while it holds. */
export const lastPlanSchema = z.strictObject({ status: z.enum(['optimal', 'stopped']), totalMinor: z.int(), boundMinor: z.int(), basis: z.string().max(64), choices: z.string().max(64) });

/** A task of a session that stands; `planned` is null where it is done, or its session's day has passed. */
const standingTaskSchema = sessionViewSchema.shape.tasks.element.extend({
  planned: plannedTaskSchema.pick({ minutes: true, access: true, late: true, likely: true, legalBy: true, terms: true, why: true }).nullable(),
});
export type StandingTask = z.infer<typeof standingTaskSchema>;

export const standingSessionSchema = sessionViewSchema.extend({
  tasks: z.array(standingTaskSchema),
  /** All that is to be done on that day at that place, in this session and in one that joins it, and the most that the day holds. */
  dayMinutes: z.int(),
  mostMinutes: z.int(),
  /** What opening that day costs, and its minutes; 0 where the session joins one that counts them. */
  openingMinor: z.int(),
  minutesMinor: z.int(),
  /** The kept session of the same day and place that a proposed one would join. */
  joins: z.string().nullable(),
  /** Work on it has begun: so many of its steps are ticked. Null before. */
  begun: z.object({ ticked: z.int(), steps: z.int() }).nullable(),
  /** How it stands with the garage; null for a session at home. */
  booking: bookingShortSchema.nullable(),
});
export type StandingSession = z.infer<typeof standingSessionSchema>;

/** The sessions that stand, with their reasons; what is left and why; what it comes to. */
export const sessionsViewSchema = z.object({
  today: dateSchema,
  horizonDays: z.int(),
  lastDay: dateSchema,
  currency: z.string(),
  places: z.array(placeSchema.pick({ id: true, name: true, kind: true }).extend({ assumed: z.boolean() })),
  sessions: z.array(standingSessionSchema),
  /** What was asked of garages for sessions that stand no more, or stand elsewhere now. */
  bookings: z.array(bookingRowSchema),
  left: z.array(leftTaskSchema),
  totalMinor: z.int(),
  summary: z.array(saidSchema),
  notes: z.array(saidSchema),
});
export type SessionsView = z.infer<typeof sessionsViewSchema>;
