import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { Message } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import type { Session } from '../sessions/session.ts';
import type { BookingRound } from '../work/booking.ts';
import { bookingState, bookingStateSchema, type BookingState } from '../work/booking-state.ts';
import { bookingOf } from '../work/find-booking.ts';
import { said, saidSchema } from './plan-said.ts';

/** How the booking of a session at a garage stands, in a few words. */
export const bookingShortSchema = z.object({
  state: bookingStateSchema,
  /** The last day on which it is asked with the notice that the garage wants; null once it was asked. */
  askBy: dateSchema.nullable(),
  /** That day has gone by. */
  askByPast: z.boolean(),
  said: saidSchema,
});
export type BookingShort = z.infer<typeof bookingShortSchema>;

/** How the booking of a session stands; null for one at home. */
export function bookingShort(facts: Facts, session: Session, today: LocalDate): BookingShort | null {
  const place = standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  if (place?.kind !== 'garage') return null;
  const booking = bookingOf(facts, session);
  const state = bookingState(booking, session);
  const askBy = state === 'not-asked' ? addDays(session.day, -place.noticeDays) : null;
  const askByPast = askBy !== null && askBy < today;
  return { state, askBy, askByPast, said: said(stateMessage(state, booking, session, askBy, askByPast)) };
}

/** The state of a booking in words. */
export function stateMessage(state: BookingState, booking: BookingRound | null, session: { readonly day: string }, askBy: LocalDate | null, askByPast: boolean): Message {
  if (state === 'not-asked') return { key: askBy === null ? 'booking-state-not-asked' : askByPast ? 'booking-state-not-asked-past' : 'booking-state-not-asked-by', values: { day: askBy } };
  if (state === 'asked') return { key: 'booking-state-asked', values: { day: booking?.askedOn ?? null } };
  if (state === 'quoted') return { key: booking?.quotes.length === 1 ? 'booking-state-quoted-one' : 'booking-state-quoted', values: { n: booking?.quotes.length ?? 0 } };
  if (state === 'done') return { key: 'booking-state-done', values: { day: booking?.cameBack?.doneOn ?? null } };
  if (state === 'dropped') return { key: booking?.dropped?.why === 'declined' ? 'booking-state-declined' : 'booking-state-cancelled', values: {} };
  const booked = booking?.booked ?? null;
  if (booked !== null && booked.day !== session.day) return { key: 'booking-state-booked-other', values: { day: booked.day } };
  return { key: booked?.time == null ? 'booking-state-booked' : 'booking-state-booked-at', values: { time: booked?.time ?? null } };
}
