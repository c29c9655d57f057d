import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';

const minor = z.int().min(0).max(Number.MAX_SAFE_INTEGER);

/** One day at one place: the tasks done then, by id, and its minutes: theirs, and those of each access once for a car. */
export const plannedSessionSchema = z.strictObject({ day: dateSchema, place: z.string(), tasks: z.array(z.string()).min(1), minutes: z.int().min(0) });
export type PlannedSession = z.infer<typeof plannedSessionSchema>;

/**
 * The answer to a plan instance, money in minor units. `optimal`: no plan costs less. `stopped`: the best found so far; none costs less
 * than the bound. `left` holds the ids of the tasks left out. Sessions stand by day, then in the instance's order of places; tasks in
 * its order of tasks.
 */
export const planAnswerSchema = z.strictObject({
  status: z.enum(['optimal', 'stopped']),
  totalMinor: minor,
  boundMinor: minor,
  sessions: z.array(plannedSessionSchema),
  left: z.array(z.string()),
});
export type PlanAnswer = z.infer<typeof planAnswerSchema>;
