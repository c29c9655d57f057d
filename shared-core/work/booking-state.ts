import { z } from 'zod';
import type { Session } from '../sessions/session.ts';
import type { BookingRound } from './booking.ts';

/** How far a booking is: it follows from what was said and is never stored. */
export const bookingStateSchema = z.enum(['not-asked', 'asked', 'quoted', 'booked', 'done', 'dropped']);
export type BookingState = z.infer<typeof bookingStateSchema>;

/**
 * How far a session's booking is. What was asked of another garage than the one at which the session now stands is not asked of this one.
 *
 * @example bookingState(null, session) //=> 'not-asked'
 */
export function bookingState(booking: BookingRound | null, session: Pick<Session, 'place'>): BookingState {
  if (booking === null || booking.place !== session.place) return 'not-asked';
  if (booking.cameBack !== null) return 'done';
  if (booking.dropped !== null) return 'dropped';
  if (booking.askedOn === null) return 'not-asked';
  if (booking.booked !== null) return 'booked';
  return booking.quotes.length > 0 ? 'quoted' : 'asked';
}

/** Whether a garage still waits for the keeper, or the keeper for it. */
export function isUnderway(booking: BookingRound): boolean {
  return booking.askedOn !== null && booking.cameBack === null && booking.dropped === null;
}

/** Whether it is over: what came back was said, or it came to nothing. */
export function isOver(booking: BookingRound): boolean {
  return booking.cameBack !== null || booking.dropped !== null;
}
