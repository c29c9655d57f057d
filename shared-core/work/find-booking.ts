import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { standingPlaces, type Place } from '../sessions/place.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { bookingRemoved, bookings, bookingSet, type Booking } from './booking.ts';

/**
 * The booking of a session: its own; else one whose session joined this one at the same garage, known by a task that both hold. It is
 * written under this session's id when it next changes.
 */
export function bookingOf(facts: Facts, session: Session): Booking | null {
  const own = facts.get(bookings, session.id);
  if (own !== null || !isPinned(session)) return own;
  const held = new Set(session.tasks.map(taskKey));
  return lostBookings(facts).find((one) => one.place === session.place && one.wanted.some(({ task }) => task !== null && held.has(taskKey(task)))) ?? null;
}

/** Bookings whose session is gone: it joined another one. */
export function lostBookings(facts: Facts): readonly Booking[] {
  return facts.all(bookings).filter((one) => facts.get(sessions, one.id) === null);
}

/** The entries that put a booking under its session, in place of what it was before. */
export function bookingEntries(before: Booking | null, after: Booking): readonly NewEntry[] {
  const moved = before !== null && before.id !== after.id;
  return [...(moved ? [newEntry(bookingRemoved, { id: before.id, car: null })] : []), newEntry(bookingSet, after)];
}

/** A session at a garage, the garage, and what was booked there so far. */
export interface GarageSession {
  readonly session: Session;
  readonly place: Place;
  readonly booking: Booking | null;
}

/** The session with its booking; refused where it is not there, or is none of a garage and has no booking. */
export function garageSession(facts: Facts, id: string): Result<GarageSession> {
  const session = facts.get(sessions, id);
  if (session === null) return refuse('unknown-session', { session: id }, ['session']);
  const place = standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  const booking = bookingOf(facts, session);
  if (place === undefined) return refuse('unknown-place', { place: session.place }, ['session']);
  if (place.kind !== 'garage' && booking === null) return refuse('booking-not-garage', { place: place.name }, ['session']);
  return ok({ session, place, booking });
}

/** A booking that was asked, under its session's id, and as it stood before. */
export interface AskedBooking extends GarageSession {
  readonly before: Booking;
  readonly booking: Booking;
}

/** A booking that can still go on; refused where there is none, none was asked, or it has come to nothing. */
export function askedBooking(facts: Facts, id: string): Result<AskedBooking> {
  const found = garageSession(facts, id);
  if (!found.ok) return found;
  const { booking, session, place } = found.value;
  if (booking?.askedOn == null || booking.place !== session.place) return refuse('booking-not-asked', { place: place.name }, ['session']);
  if (booking.dropped !== null) return refuse('booking-dropped', {}, ['session']);
  return ok({ session, place, before: booking, booking: { ...booking, id: session.id } });
}
