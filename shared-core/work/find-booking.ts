import { daysBetween } from '../calendar/local-date.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { meantSince } from '../sessions/meant-since.ts';
import { standingPlaces, type Place } from '../sessions/place.ts';
import { sessions, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { bookingRemoved, bookings, bookingSet, type Booking } from './booking.ts';

/**
 * The booking of a session: its own; else one whose session joined this one before bookings went along. It is written under this session's
 * id when it next changes.
 */
export function bookingOf(facts: Facts, session: Session): Booking | null {
  const own = facts.get(bookings, session.id);
  return own ?? lostBookings(facts).find((one) => likelySession(facts, one)?.id === session.id) ?? null;
}

/** The session of a booking: its own; else the one that it is the booking of. Null where its own is gone and none took it over. */
export function sessionOfBooking(facts: Facts, booking: Booking): Session | null {
  const session = facts.get(sessions, booking.id) ?? likelySession(facts, booking);
  return session !== null && bookingOf(facts, session)?.id === booking.id ? session : null;
}

/** Bookings whose session is gone. */
function lostBookings(facts: Facts): readonly Booking[] {
  return facts.all(bookings).filter((one) => facts.get(sessions, one.id) === null);
}

/**
 * The one session that a booking without its own may be of: at its garage, for a task that it asks for and that was meant to be done when it
 * was asked; of several the one nearest to its day. A session that has ended counts, so that a later one does not take it.
 */
function likelySession(facts: Facts, { place, askedOn, wanted, booked, cameBack }: Booking): Session | null {
  if (askedOn === null) return null;
  const asked = new Set(wanted.flatMap(({ task }) => (task === null ? [] : [taskKey(task)])));
  const may = facts.all(sessions).filter((one) => one.place === place && one.state !== 'proposed' && one.tasks.some((task) => asked.has(taskKey(task)) && meantSince(one, task).on <= askedOn));
  const apart = (one: Session) => Math.abs(daysBetween(one.day, cameBack?.doneOn ?? booked?.day ?? askedOn));
  return [...may].sort((a, b) => apart(a) - apart(b) || (a.id < b.id ? -1 : 1))[0] ?? null;
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
