import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { bookingRemoved, bookings, bookingSchema, bookingSet, type Booking } from './booking.ts';
import { withoutLastRound } from './booking-rounds.ts';
import { isOver } from './booking-state.ts';
import { bookingEntries, garageSession } from './find-booking.ts';

const dropped = bookingSchema.shape.dropped.unwrap().shape;

/** Ends a booking that comes to nothing: the garage declined, or it was taken back. What was only written is taken away whole; the session stays. */
export const dropBooking = change({
  request: z.strictObject({ session: idSchema, on: dateSchema.optional(), why: dropped.why, reason: dropped.reason.default('') }),
  /** Where nothing had been asked yet, `booking` is what stood before it was written; null where that was nothing. */
  reply: z.object({ booking: bookingSchema.nullable() }),
  decide: (facts, { session, on, why, reason }, { today }) => {
    const found = garageSession(facts, session);
    const standing = found.ok ? found.value.booking : facts.get(bookings, session);
    if (!found.ok && standing === null) return found;
    if (standing === null || (found.ok && standing.place !== found.value.session.place && isOver(standing))) return refuse('booking-not-asked', { place: found.ok ? found.value.place.name : '' }, ['session']);
    if (standing.askedOn === null) {
      const before = found.ok ? withoutLastRound(standing) : null;
      return ok({ entries: [before === null ? newEntry(bookingRemoved, { id: standing.id, car: null }) : newEntry(bookingSet, before)], reply: { booking: before } });
    }
    if (standing.cameBack !== null) return refuse('booking-done', { day: standing.cameBack.doneOn }, ['session']);
    if (standing.dropped !== null) return refuse('booking-dropped', {}, ['session']);
    const day = on ?? today;
    if (day > today) return refuse('booking-dropped-ahead', { day }, ['on']);
    // Under a session that is there: what joined another one is written under that.
    const booking: Booking = { ...standing, ...(found.ok ? { id: found.value.session.id } : {}), dropped: { on: day, why, reason } };
    return ok({ entries: found.ok ? bookingEntries(standing, booking) : [newEntry(bookingRemoved, { id: standing.id, car: null })], reply: { booking: found.ok ? booking : null } });
  },
});
