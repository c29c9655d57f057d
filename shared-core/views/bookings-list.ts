import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned, type Session } from '../sessions/session.ts';
import { bookings, type Booking } from '../work/booking.ts';
import { bookingState, bookingStateSchema, isUnderway } from '../work/booking-state.ts';
import { sessionOfBooking } from '../work/find-booking.ts';
import { bookingNotes } from './booking-notes.ts';
import { stateMessage } from './booking-said.ts';
import { said, saidSchema } from './plan-said.ts';

/** What was asked of a garage for a session that stands no more, or stands elsewhere now. */
export const bookingRowSchema = z.object({
  session: z.string(),
  /** Its session is gone: there is no page of it. */
  gone: z.boolean(),
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
    const session = sessionOfBooking(facts, booking);
    if (session === null) return booking.askedOn === null ? [] : [rowOfGone(facts, booking, booking.askedOn)];
    return isPinned(session) && session.place === booking.place ? [] : [rowOf(facts, booking, session)];
  });
  return rows.sort((a, b) => Number(b.waits) - Number(a.waits) || (a.day > b.day ? -1 : a.day < b.day ? 1 : 0));
}

function rowOf(facts: Facts, booking: Booking, session: Session): BookingRow {
  return { ...bareRow(facts, booking, session.day), session: session.id, gone: false, notes: bookingNotes(facts, session, booking).map(said) };
}

/** Of a session that is gone: it joined another one with a booking of its own, as a rule. Nothing else leads to it, and the garage may still wait. */
function rowOfGone(facts: Facts, booking: Booking, askedOn: LocalDate): BookingRow {
  const row = bareRow(facts, booking, booking.booked?.day ?? askedOn);
  return { ...row, gone: true, notes: row.waits ? [said({ key: 'booking-note-session-gone', values: { place: row.placeName } })] : [] };
}

function bareRow(facts: Facts, booking: Booking, sessionDay: LocalDate): Omit<BookingRow, 'gone' | 'notes'> {
  const day = booking.cameBack?.doneOn ?? booking.booked?.day ?? sessionDay;
  const there = { day: sessionDay, place: booking.place };
  const state = bookingState(booking, there);
  return {
    session: booking.id, day,
    placeName: standingPlaces(facts).find((one) => one.place.id === booking.place)?.place.name ?? booking.place,
    carNames: [...new Set(booking.wanted.map((one) => facts.get(cars, one.car)?.name ?? one.car))].sort(),
    state,
    said: said(stateMessage(state, booking, there, null, false)),
    waits: isUnderway(booking),
  };
}
