import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { bookings, type Booking } from '../work/booking.ts';
import { bookingState, bookingStateSchema, isUnderway } from '../work/booking-state.ts';
import { bookingNotes } from './booking-notes.ts';
import { stateMessage } from './booking-said.ts';
import { said, saidSchema } from './plan-said.ts';

/** What was asked of a garage for a session that stands no more, or stands elsewhere now. */
export const bookingRowSchema = z.object({
  session: z.string(),
  day: dateSchema,
  placeName: z.string(),
  carNames: z.array(z.string()),
  state: bookingStateSchema,
  said: saidSchema,
  /** Something is still to be done about it: a garage to be told, or what came back to be said. */
  waits: z.boolean(),
  notes: z.array(saidSchema),
});
export type BookingRow = z.infer<typeof bookingRowSchema>;

/** Bookings beside those of the sessions that stand at the garage that was asked: first what still waits, then the newest. */
export function bookingRows(facts: Facts): BookingRow[] {
  const rows = facts.all(bookings).flatMap((booking) => {
    const session = facts.get(sessions, booking.id);
    return session === null || (isPinned(session) && session.place === booking.place) ? [] : [rowOf(facts, booking, session)];
  });
  return rows.sort((a, b) => Number(b.waits) - Number(a.waits) || (a.day > b.day ? -1 : a.day < b.day ? 1 : 0));
}

function rowOf(facts: Facts, booking: Booking, session: Session): BookingRow {
  const day: LocalDate = booking.cameBack?.doneOn ?? booking.booked?.day ?? session.day;
  const there = { day: session.day, place: booking.place };
  const state = bookingState(booking, there);
  return {
    session: session.id, day,
    placeName: standingPlaces(facts).find((one) => one.place.id === booking.place)?.place.name ?? booking.place,
    carNames: [...new Set(booking.wanted.map((one) => facts.get(cars, one.car)?.name ?? one.car))].sort(),
    state,
    said: said(stateMessage(state, booking, there, null, false)),
    waits: isUnderway(booking),
    notes: bookingNotes(facts, session, booking).map(said),
  };
}
