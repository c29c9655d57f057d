import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refusedBy } from '../result/refused-by.ts';

/** How far ahead a calendar reaches, in months. */
const LONGEST_MONTHS = 60;
const notMonths = refusedBy('calendar-months');

const calendarKindSchema = z.enum(['item', 'obligation', 'recall', 'recheck', 'follow-up', 'session']);

export const calendarRequestSchema = z.strictObject({
  months: z.int(notMonths).min(1, notMonths).max(LONGEST_MONTHS, notMonths).default(24),
  /** Kinds of events to be left out. */
  omit: z.array(calendarKindSchema).max(6).default([]),
});
export type CalendarRequest = z.output<typeof calendarRequestSchema>;

/** Something of whole days in a calendar. */
export const calendarEventSchema = z.object({
  kind: calendarKindSchema,
  /** Of what it is: with the kind the same for as long as the thing stands, so that a later file replaces the event. */
  id: z.string(),
  /** The first and the last day of it. */
  from: dateSchema,
  to: dateSchema,
  title: z.string(),
  text: z.string(),
  /** The day from which it is to be arranged, where that is still ahead; a reminder stands there. */
  remindOn: dateSchema.nullable(),
  /** Its days are taken by it; a forecast takes none. */
  busy: z.boolean(),
});
export type CalendarEvent = z.infer<typeof calendarEventSchema>;

export const calendarViewSchema = z.object({ name: z.string(), events: z.array(calendarEventSchema) });
export type CalendarView = z.infer<typeof calendarViewSchema>;
