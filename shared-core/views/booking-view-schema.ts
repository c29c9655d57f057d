import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { sessionStateSchema } from '../sessions/session.ts';
import { bookingSchema, broughtPartSchema, quoteSchema, unwantedLineSchema, wantedLineSchema } from '../work/booking.ts';
import { bookingStateSchema } from '../work/booking-state.ts';
import { jobFigureSchema } from './job-sheet-view-schema.ts';
import { saidSchema } from './plan-said.ts';

/** What may be asked, for one car of the session: what stands on its request sheet, and what is offered for it. */
export const requestCarSchema = z.object({
  car: z.string(),
  carName: z.string(),
  description: z.string().nullable(),
  registration: z.string().nullable(),
  /** As it was last read, by whom it was read is not of interest to a garage. */
  odometer: z.object({ value: z.number(), unit: z.enum(['km', 'mi']), on: dateSchema }).nullable(),
  /** Figures of the data card that the work asks for, with their source. */
  figures: z.array(jobFigureSchema),
  wanted: z.array(wantedLineSchema.extend({ id: z.string().nullable() })),
  unwanted: z.array(unwantedLineSchema),
  bring: z.array(broughtPartSchema),
  /** Other items of the car that a garage might do unasked. */
  offersUnwanted: z.array(z.object({ text: z.string(), why: saidSchema })),
  /** What the shelf or an order holds for the work. */
  offersBring: z.array(broughtPartSchema.extend({ why: saidSchema })),
  /** The whole request for this car as plain text, and a subject for a mail; one's own words as they were written. */
  subject: z.string(),
  text: z.string(),
});
export type RequestCar = z.infer<typeof requestCarSchema>;

/** A quote with what follows from it. */
export const quoteViewSchema = quoteSchema.extend({
  byName: z.string(),
  /** Null where it is not known. */
  sumMinor: z.int().nullable(),
  over: z.boolean(),
  booked: z.boolean(),
  notes: z.array(saidSchema),
});
export type QuoteView = z.infer<typeof quoteViewSchema>;

const outcomeLineSchema = z.object({
  text: z.string(),
  carName: z.string().nullable(),
  note: z.string(),
  chargedMinor: z.int().nullable(),
});

/** What came back against what was asked. */
export const outcomeSchema = z.object({
  done: z.array(outcomeLineSchema),
  notDone: z.array(outcomeLineSchema),
  unsaid: z.array(outcomeLineSchema),
  /** Not wanted and done all the same. */
  against: z.array(outcomeLineSchema),
  unasked: z.array(outcomeLineSchema),
  chargedMinor: z.int().nullable(),
  /** The quote that it is held against; null where there is none. */
  quote: z.object({ id: z.string(), byName: z.string(), sumMinor: z.int().nullable() }).nullable(),
  groups: z.array(z.object({ lines: z.array(z.string()), covers: z.array(z.string()), quotedMinor: z.int().nullable(), chargedMinor: z.int().nullable(), why: saidSchema.nullable() })),
  summary: z.array(saidSchema),
});
export type Outcome = z.infer<typeof outcomeSchema>;

/** All of what is asked of a garage for one session, from the request to what came back. */
export const bookingViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  session: z.object({ id: z.string(), day: dateSchema, place: z.string(), placeName: z.string(), placeKind: z.enum(['home', 'garage']), state: sessionStateSchema, passed: z.boolean() }),
  state: bookingStateSchema,
  said: saidSchema,
  /** Null once it was asked. */
  askBy: z.object({ day: dateSchema, noticeDays: z.int(), past: z.boolean() }).nullable(),
  /** Whether it can still be asked, quoted or booked: the session is kept, and at a garage. */
  open: z.boolean(),
  /** Of the place of the session; null where nothing was written yet. What was asked elsewhere stands in `elsewhere`. */
  booking: bookingSchema.nullable(),
  elsewhere: z.object({ placeName: z.string(), underway: z.boolean() }).nullable(),
  notes: z.array(saidSchema),
  cars: z.array(requestCarSchema),
  quotes: z.array(quoteViewSchema),
  outcome: outcomeSchema.nullable(),
  /** What was asked for the session before, here or elsewhere, and is over: the oldest first. */
  earlier: z.array(z.object({ placeName: z.string(), day: dateSchema.nullable(), state: bookingStateSchema, said: saidSchema, paper: z.string().nullable(), outcome: outcomeSchema.nullable() })),
});
export type BookingView = z.infer<typeof bookingViewSchema>;
