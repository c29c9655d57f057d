import { z } from 'zod';
import { carSchema } from '../fleet/car.ts';
import { carCameBack, carLeft, departures, departureSchema, type Departure } from '../fleet/departure.ts';
import { findCar } from '../fleet/find-car.ts';
import { readings } from '../fleet/reading.ts';
import { decideReading, recordReadingRequest } from '../fleet/record-reading.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { ok, refuse } from '../result/result.ts';
import { openSession } from '../sessions/move-session.ts';
import { isPinned, sessionSet } from '../sessions/session.ts';
import { boardEntries, takeOut } from '../sessions/session-board.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { stepPhotos } from '../work/doing.ts';
import { endedOfPart } from '../work/part-of-work.ts';
import { endedSpans } from '../work/take-time.ts';
import { checkNothingOpen, isOfCar, openSessionsOf, partOfCar } from './open-of-car.ts';
import { photosToCars } from './photos-to-cars.ts';
import { workRecords } from './work-record.ts';

const shape = departureSchema.shape;

/**
 * The car leaves: sold or scrapped. Nothing of it is due any more, its tasks leave the open sessions, and a session that held nothing else is
 * cancelled. Records, readings, papers and costs stay, and so does what it takes to hand them over. With work on it begun, or a garage that
 * counts on it, it is refused, unless one is sure: then its time ends, and photographs of that work go among its papers.
 */
export const leaveCar = change({
  request: z.strictObject({
    car: z.string().min(1).max(80),
    how: shape.how,
    on: shape.on.optional(),
    reading: typedDistanceSchema.nullable().default(null),
    priceMinor: shape.priceMinor.default(null),
    buyer: shape.buyer.default(null),
    note: shape.note.default(''),
    /** The keeper was told what stands open of it, and is sure. */
    sure: z.boolean().default(false),
  }),
  reply: z.object({ car: carSchema, departure: departureSchema, sessions: z.object({ changed: z.int(), cancelled: z.int() }) }),
  decide: (facts, request, moment) => {
    const found = findCar(facts, request.car);
    if (!found.ok) return found;
    const car = found.value;
    const on = request.on ?? moment.today;
    const before = facts.get(departures, car.id);
    if (before !== null) return refuse('car-left-already', { name: car.name, on: before.on }, ['car']);
    if (on > moment.today) return refuse('date-in-future', { date: on, today: moment.today }, ['on']);
    const first = car.keptSince ?? car.firstRegistered;
    if (first !== null && on < first) return refuse('left-before-kept', { on, since: first }, ['on']);
    const read = request.reading === null ? null : decideReading(facts, car, recordReadingRequest.parse({ car: car.id, ...request.reading, date: on }), moment);
    if (read?.ok === false) return { ok: false, refusal: { ...read.refusal, path: ['reading'] } };
    const later = request.sure ? null : lastKnown(facts, car.id);
    if (later !== null && later > on) return refuse('left-before-known', { car: car.name, on, last: later }, ['sure']);
    const asked = request.sure ? ok(null) : checkNothingOpen(facts, car, moment);
    if (!asked.ok) return asked;
    const departure: Departure = {
      id: car.id, car: car.id, how: request.how, on, reading: read?.value.reply.reading.id ?? null, priceMinor: request.priceMinor, buyer: request.buyer, note: request.note,
    };
    const freed = freeTasks(facts, car.id, moment);
    return ok({ entries: [...(read?.value.entries ?? []), newEntry(carLeft, departure), ...freed.entries], reply: { car, departure, sessions: freed.sessions } });
  },
});

/** A departure taken back: the car is here. Sessions are not laid anew by it. */
export const keepCar = change({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: z.object({ car: carSchema }),
  decide: (facts, request) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    if (facts.get(departures, car.value.id) === null) return refuse('car-has-not-left', { name: car.value.name }, ['car']);
    return ok({ entries: [newEntry(carCameBack, { id: car.value.id, car: car.value.id })], reply: { car: car.value } });
  },
});

/** The last day of a record or a reading of a car; null where there is none. */
function lastKnown(facts: Facts, car: string): Departure['on'] | null {
  const days = [...facts.ofCar(workRecords, car), ...facts.ofCar(readings, car)].map((one) => one.date);
  return days.reduce<Departure['on'] | null>((last, on) => (last === null || on > last ? on : last), null);
}

/** The open sessions without a car's tasks; one that was kept for that car alone stays to be seen as cancelled. */
function freeTasks(facts: Facts, car: string, moment: Moment): { readonly entries: readonly NewEntry[]; readonly sessions: { readonly changed: number; readonly cancelled: number } } {
  const open = openSessionsOf(facts, car);
  const tasks = open.flatMap((one) => one.tasks).filter((task) => isOfCar(facts, task, car));
  const before = new Map(open.map((one) => [one.id, one]));
  const after = takeOut(before, tasks, () => true);
  const emptied = open.filter((one) => isPinned(one) && !after.has(one.id));
  const emptiedIds = new Set(emptied.map((one) => one.id));
  const kept = new Map([...before].filter(([id]) => !emptiedIds.has(id)));
  const cancelled = emptied.map((one) => newEntry(sessionSet, { ...one, state: 'cancelled' as const }));
  const ended = open.flatMap((one) => (emptiedIds.has(one.id) ? endedSpans(facts, one.id, moment) : endedOfPart(facts, one.id, partOfCar(facts, one, car), moment)));
  const photos = facts.all(stepPhotos).filter((one) => one.car === car && openSession(facts, one.session).ok);
  return { entries: [...ended, ...photosToCars(facts, photos, moment), ...boardEntries(kept, after), ...cancelled], sessions: { changed: after.size, cancelled: open.length - after.size } };
}
