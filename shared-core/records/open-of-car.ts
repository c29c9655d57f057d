import type { Car } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { findTask } from '../sessions/task-ref.ts';
import { bookings, type Booking } from '../work/booking.ts';
import { isUnderway } from '../work/booking-state.ts';
import { begunWork } from '../work/doing.ts';
import { partOfTasks, type PartOfWork } from '../work/part-of-work.ts';
import { workInHand } from './work-in-hand.ts';

/** The sessions, proposed or kept, in which something of a car is to be done. */
export function openSessionsOf(facts: Facts, car: string): readonly Session[] {
  return facts.all(sessions).filter((one) => (one.state === 'proposed' || isPinned(one)) && one.tasks.some((task) => isOfCar(facts, task, car)));
}

/** Whether a task is one of a car. */
export function isOfCar(facts: Facts, task: Session['tasks'][number], car: string): boolean {
  const found = findTask(facts, task);
  return found.ok && found.value.car === car;
}

/** The work on a session that is of a car. */
export function partOfCar(facts: Facts, session: Session, car: string): PartOfWork {
  const goes = session.tasks.filter((task) => isOfCar(facts, task, car));
  return partOfTasks(facts, goes, session.tasks.filter((task) => !goes.includes(task)));
}

/** Bookings of a car that a garage still counts on, or the keeper. */
export function bookingsUnderway(facts: Facts, car: string): readonly Booking[] {
  return facts.all(bookings).filter((one) => isUnderway(one) && one.wanted.some((line) => line.car === car));
}

/** Refused where work on a car is begun, or a garage counts on it: says what and where. */
export function checkNothingOpen(facts: Facts, car: Car, { now }: Moment): Result<null> {
  const begun = openSessionsOf(facts, car.id).filter((one) => facts.get(begunWork, one.id) !== null).map((session) => {
    const what = workInHand(facts, session.id, partOfCar(facts, session, car.id), now);
    return what === null ? say({ key: 'car-leaves-session-begun', values: { day: session.day } }) : say({ key: 'car-leaves-session', values: { day: session.day, what } });
  });
  const booked = bookingsUnderway(facts, car.id).map(({ place, booked: on, askedOn }) => {
    const name = standingPlaces(facts).find((one) => one.place.id === place)?.place.name ?? place;
    return on === null ? say({ key: 'car-leaves-asked', values: { place: name, day: askedOn } }) : say({ key: 'car-leaves-booking', values: { place: name, day: on.day } });
  });
  const open = [...begun, ...booked];
  return open.length === 0 ? ok(null) : refuse('car-leaves-with-open', { car: car.name, what: open.join('; ') }, ['sure']);
}
