import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers, type Reference } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { places } from '../sessions/place.ts';
import { sessions } from '../sessions/session.ts';
import { taskReference, taskRefSchema } from '../sessions/task-ref.ts';
import { minorSchema, priceSchema } from '../units/money.ts';
import { quantitySchema } from '../units/quantity.ts';

/** A line of work that is asked for; `task` is null for what is no task of the session. */
export const wantedLineSchema = z.strictObject({ id: idSchema, car: idSchema, task: taskRefSchema.nullable(), text: plainText(200) });
export type WantedLine = z.infer<typeof wantedLineSchema>;

/** Something that is not to be done. */
export const unwantedLineSchema = z.strictObject({ id: idSchema, car: idSchema, text: plainText(200) });
export type UnwantedLine = z.infer<typeof unwantedLineSchema>;

/** A part that the keeper brings along: of the household's list, of a lot on the shelf, or in words alone. */
export const broughtPartSchema = z.strictObject({
  car: idSchema,
  part: idSchema.nullable(),
  lot: idSchema.nullable(),
  text: plainText(120),
  /** In the unit; null where the words say enough. */
  quantity: quantitySchema.nullable(),
  unit: plainText(20).nullable(),
});
export type BroughtPart = z.infer<typeof broughtPartSchema>;

/** A line of a quote. Its amount is for all that it covers together; null where only a larger sum is named. */
export const quoteLineSchema = z.strictObject({
  text: plainText(200),
  /** The lines wanted that the price is for; none where it is for something that was not asked. */
  covers: z.array(idSchema).max(60),
  amountMinor: minorSchema.nullable(),
});
export type QuoteLine = z.infer<typeof quoteLineSchema>;

/** A price named beforehand. */
export const quoteSchema = z.strictObject({
  id: idSchema,
  /** Who named it; null: the garage of the session. */
  by: plainText(80).nullable(),
  on: dateSchema,
  validUntil: dateSchema.nullable(),
  lines: z.array(quoteLineSchema).max(60),
  /** The sum as it was named: it is kept though its lines add up to another. */
  totalMinor: priceSchema.nullable(),
  paper: sha256Schema.nullable(),
  note: longText(500),
});
export type Quote = z.infer<typeof quoteSchema>;

/** What came of one line, or what was done beside them. */
export const cameBackLineSchema = z.strictObject({
  /** The line wanted; null where nothing of the kind was asked. */
  wanted: idSchema.nullable(),
  /** The line not wanted that was done all the same. */
  unwanted: idSchema.nullable(),
  as: z.enum(['done', 'not-done', 'done-unasked', 'not-wanted-done']),
  text: plainText(200),
  note: longText(500),
  /** What was charged for it; 0 where it is within another line's; null where the paper does not say. */
  chargedMinor: minorSchema.nullable(),
});
export type CameBackLine = z.infer<typeof cameBackLineSchema>;

/** A time of day. */
const timeSchema = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, refusedBy('not-a-time'));

/** What was asked of a garage once, what it said, and what came back. */
export const bookingRoundSchema = z.strictObject({
  /** The garage that is asked. */
  place: idSchema,
  /** Null while the request is only written. */
  askedOn: dateSchema.nullable(),
  wanted: z.array(wantedLineSchema).min(1, refusedBy('booking-nothing-wanted')).max(60),
  unwanted: z.array(unwantedLineSchema).max(60),
  bring: z.array(broughtPartSchema).max(60),
  /** An entry in the car's digital service record is asked for. */
  digitalRecord: z.boolean(),
  note: longText(1000),
  /** How to reach the keeper. */
  contact: longText(300),
  quotes: z.array(quoteSchema).max(20),
  booked: z.strictObject({ on: dateSchema, day: dateSchema, time: timeSchema.nullable(), reference: longText(80), quote: idSchema.nullable() }).nullable(),
  cameBack: z.strictObject({
    doneOn: dateSchema,
    lines: z.array(cameBackLineSchema).max(120),
    /** The whole sum charged, as it was printed. */
    chargedMinor: priceSchema.nullable(),
    paper: sha256Schema.nullable(),
    note: longText(500),
  }).nullable(),
  /** It came to nothing: the garage declined, or the keeper took it back. */
  dropped: z.strictObject({ on: dateSchema, why: z.enum(['declined', 'cancelled']), reason: longText(300) }).nullable(),
});
export type BookingRound = z.infer<typeof bookingRoundSchema>;

/** What is asked of a garage for one session. It has the session's own id. */
export const bookingSchema = bookingRoundSchema.extend({
  id: idSchema,
  /** What was asked for the session before, here or of another garage, and is over: the oldest first. It is never written anew. */
  earlier: z.array(bookingRoundSchema).max(60).optional(),
});
export type Booking = z.infer<typeof bookingSchema>;

export const bookings = family('booking', 'work', bookingSchema);
export const bookingSet = factEntry('booking-set', bookings, { car: () => null, refersTo: referencesOf });
export const bookingRemoved = factRemoval('booking-removed', bookings);

function referencesOf(booking: Booking): readonly Reference[] {
  // What is over names cars, tasks and lots that may be gone by now; its papers stay.
  const papers = [...(booking.earlier ?? []), booking].flatMap((one) => [...one.quotes.map((quote) => quote.paper), one.cameBack?.paper ?? null]);
  return [
    ...refers(sessions, booking.id),
    ...refers(places, booking.place),
    ...refers(cars, ...new Set([...booking.wanted, ...booking.unwanted, ...booking.bring].map((one) => one.car))),
    ...booking.wanted.flatMap(({ task }) => (task === null ? [] : [taskReference(task)])),
    ...booking.bring.flatMap(({ part, lot }) => [...refers(parts, part), ...refers(lots, lot)]),
    // Papers belong to a later stage, so they are named by their family.
    ...papers.flatMap((id) => (id === null ? [] : [{ family: 'paper', id }])),
  ];
}
