import { cars } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import type { Facts } from '../journal/facts.ts';
import type { Message } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import type { Booking } from '../work/booking.ts';
import { doneByGarage, undoneLines } from '../work/booking-rounds.ts';
import { isUnderway } from '../work/booking-state.ts';
import { wantedOfTasks } from '../work/wanted-of-tasks.ts';
import { doneSince } from './plan-input.ts';

/** What does not fit together between a booking and its session, and what is still to be entered. */
export function bookingNotes(facts: Facts, session: Session, booking: Booking): Message[] {
  const nameOf = (id: string) => standingPlaces(facts).find((one) => one.place.id === id)?.place.name ?? id;
  const underway = isUnderway(booking);
  const { booked } = booking;
  const asked = nameOf(booking.place);
  if (underway && session.state === 'cancelled') return [{ key: 'booking-note-session-cancelled', values: { place: asked } }];
  if (underway && booking.place !== session.place) return [{ key: 'booking-note-other-place', values: { asked, place: nameOf(session.place) } }];
  if (booking.place !== session.place) return notRecorded(facts, session, booking);
  const quote = booking.quotes.find((one) => one.id === booked?.quote) ?? null;
  return [
    ...(underway && isPinned(session) && booked !== null && booked.day !== session.day ? [{ key: 'booking-note-other-day', values: { booked: booked.day, day: session.day } }] : []),
    ...(booking.id !== session.id ? [{ key: 'booking-note-joined', values: { place: asked } }] : []),
    ...(booked !== null && quote?.validUntil != null && quote.validUntil < booked.on ? [{ key: 'booking-note-quote-over', values: { valid: quote.validUntil, on: booked.on } }] : []),
    ...(underway ? carsThatLeft(facts, booking, asked) : []),
    ...(underway || booking.askedOn === null ? tasksApart(facts, session, booking) : []),
    ...leftUndone(facts, session, booking),
    ...notRecorded(facts, session, booking),
  ];
}

/** A garage that still waits for a car which has left is told so. */
function carsThatLeft(facts: Facts, { wanted }: Booking, place: string): Message[] {
  const gone = [...new Set(wanted.map((one) => one.car))].filter((car) => facts.get(departures, car) !== null);
  return gone.map((car) => ({ key: 'booking-note-car-left', values: { car: facts.get(cars, car)?.name ?? car, place } }));
}

/** Tasks that were put into the session, or taken out, since the request was written. */
function tasksApart(facts: Facts, session: Session, booking: Booking): Message[] {
  const held = new Set(session.tasks.map(taskKey));
  const asked = new Set(booking.wanted.flatMap((one) => (one.task === null ? [] : [taskKey(one.task)])));
  const done = doneByGarage(booking);
  const gone = booking.wanted.filter((one) => one.task !== null && !held.has(taskKey(one.task)));
  const fresh = wantedOfTasks(facts, session).filter((one) => one.task !== null && !asked.has(taskKey(one.task)) && !done.has(taskKey(one.task)) && !doneSince(facts, one.task, session));
  return [...gone.map((one) => ({ key: 'booking-note-gone-task', values: { text: one.text } })), ...fresh.map((one) => ({ key: 'booking-note-new-task', values: { text: one.text } }))];
}

/** What the garage was asked for and has not done, while the session still stands for it. */
function leftUndone(facts: Facts, session: Session, { cameBack, wanted }: Booking): Message[] {
  if (cameBack === null || !isPinned(session)) return [];
  const left = undoneLines({ wanted, cameBack }).filter((line) => cameBack.lines.some((one) => one.wanted === line.id));
  return left.filter(({ task }) => task === null || !doneSince(facts, task, session)).map(({ text }) => ({ key: 'booking-note-left-undone', values: { text } }));
}

/** What a garage has done, now or before, and no record or renewal says yet. */
function notRecorded(facts: Facts, session: Session, booking: Booking): Message[] {
  const done = [...(booking.earlier ?? []), booking].flatMap((round) => (round.cameBack?.lines ?? []).flatMap((line) => (line.as === 'done' ? (round.wanted.find((one) => one.id === line.wanted) ?? []) : [])));
  return done
    .filter((one) => one.task !== null && !doneSince(facts, one.task, session))
    .map((one) => ({ key: 'booking-note-not-recorded', values: { text: one.text, car: facts.get(cars, one.car)?.name ?? one.car } }));
}
