import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { instantSchema } from '../journal/row.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { places } from './place.ts';
import { taskRefSchema, taskReference } from './task-ref.ts';

/** As many tasks as one session may hold. */
export const MOST_TASKS = 100;
/** As long as the note of a session may be. */
export const LONGEST_NOTE = 500;

/** Proposed ones are laid on the yard and may be laid anew; kept and moved ones stay where they are; the others are history. */
export const sessionStateSchema = z.enum(['proposed', 'kept', 'moved', 'done', 'cancelled']);

/** One occasion of work: a day at a place, and the tasks to be done there. There is one at most for each day and place. */
export const sessionSchema = z.strictObject({
  id: idSchema,
  day: dateSchema,
  place: idSchema,
  tasks: z.array(taskRefSchema).min(1).max(MOST_TASKS),
  state: sessionStateSchema,
  /** Where it stood before it was last moved. */
  movedFrom: z.strictObject({ day: dateSchema, place: idSchema }).nullable(),
  /** The day on which it was first kept or proposed: a task done after it is done for this session. */
  madeOn: dateSchema,
  /** The instant of that: a task recorded on the same day is done for this session where it was written down later. Absent in older entries. */
  madeAt: instantSchema.optional(),
  /** Tasks that came from another session, and since when they have been meant to be done. */
  joined: z.array(z.strictObject({ task: taskRefSchema, on: dateSchema, at: instantSchema.optional() })).max(MOST_TASKS).optional(),
  note: longText(LONGEST_NOTE),
});
export type Session = z.infer<typeof sessionSchema>;

export const sessions = family('session', 'sessions', sessionSchema);
export const sessionSet = factEntry('session-set', sessions, {
  car: () => null,
  refersTo: (session) => [...refers(places, session.place), ...session.tasks.map(taskReference)],
});
export const sessionRemoved = factRemoval('session-removed', sessions);

/** Whether a session stays where it is: a plan works around it. */
export function isPinned(session: Pick<Session, 'state'>): boolean {
  return session.state === 'kept' || session.state === 'moved';
}

/** Pinned sessions of a day or later, by day. */
export function pinnedFrom(facts: Facts, day: LocalDate): readonly Session[] {
  return pinned(facts).filter((session) => session.day >= day);
}

/** Pinned sessions of earlier days, by day: nobody has said how they went. */
export function pinnedBefore(facts: Facts, day: LocalDate): readonly Session[] {
  return pinned(facts).filter((session) => session.day < day);
}

function pinned(facts: Facts): readonly Session[] {
  return facts.all(sessions).filter(isPinned).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}
