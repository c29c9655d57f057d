import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Message } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import { sessions, type Session } from '../sessions/session.ts';
import { bookingRemoved, type Booking } from './booking.ts';
import { afterRounds, MOST_ROUNDS, roundsOver } from './booking-rounds.ts';
import { isOver, isUnderway } from './booking-state.ts';
import { bookingEntries, bookingOf } from './find-booking.ts';

/** What becomes of a booking as its session joins another one, and what the keeper is told of it. */
export interface JoinedBooking {
  readonly entries: readonly NewEntry[];
  readonly notes: readonly Message[];
}

/**
 * Puts the booking of a session under the one that it joins, as `joined` will stand. Where that has one of its own, what is over becomes
 * history beside it, and what was only written gives way; where both garages still count on the keeper, the first is to be told.
 */
export function joinBookings(facts: Facts, from: Session, joined: Session): JoinedBooking {
  const going = bookingOf(facts, from);
  if (going === null) return { entries: [], notes: [] };
  const before = facts.get(sessions, joined.id);
  const there = before === null ? null : bookingOf(facts, before);
  const placeOf = ({ place }: Booking) => standingPlaces(facts).find((one) => one.place.id === place)?.place.name ?? place;
  const told: readonly Message[] = isUnderway(going) ? [{ key: 'booking-note-joined', values: { place: placeOf(going) } }] : [];
  const gone = (booking: Booking) => newEntry(bookingRemoved, { id: booking.id, car: null });
  const goesOn = (notes: readonly Message[]): JoinedBooking => {
    const rounds = [...(there === null ? [] : roundsOver(there)), ...(going.earlier ?? [])];
    return { entries: [...(there !== null && there.id !== joined.id ? [gone(there)] : []), ...bookingEntries(going, withRounds({ ...going, id: joined.id }, rounds))], notes };
  };
  const givesWay = (booking: Booking, notes: readonly Message[]): JoinedBooking => ({ entries: [gone(going), ...bookingEntries(booking, withRounds({ ...booking, id: joined.id }, [...(booking.earlier ?? []), ...roundsOver(going)]))], notes });
  if (there === null) return goesOn(told);
  if (isOver(going)) return givesWay(there, []);
  if (isOver(there)) return goesOn(told);
  if (going.askedOn === null) return givesWay(there, [{ key: 'booking-written-joined', values: { place: placeOf(going) } }]);
  if (there.askedOn === null && going.place === joined.place) return goesOn([...told, { key: 'booking-written-joined', values: { place: placeOf(there) } }]);
  const rounds = going.earlier ?? [];
  return {
    entries: rounds.length === 0 ? [] : bookingEntries(there, withRounds({ ...there, id: joined.id }, [...(there.earlier ?? []), ...rounds])),
    notes: [{ key: 'booking-joined-two', values: { place: placeOf(going) } }],
  };
}

function withRounds({ earlier: _earlier, ...booking }: Booking, rounds: Parameters<typeof afterRounds>[0]): Booking {
  return { ...booking, ...afterRounds(rounds.slice(-MOST_ROUNDS)) };
}
