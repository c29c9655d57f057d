import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { obligationKindSchema, obligations } from '../care/obligation.ts';
import { serviceItems } from '../care/service-item.ts';
import { carSchema, cars } from '../fleet/car.ts';
import { departures, departureSchema } from '../fleet/departure.ts';
import { findCar } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { standingOrders } from '../parts/order-standing.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';
import { openSessionsOf } from '../records/open-of-car.ts';
import { standingLots } from '../records/shelf-left.ts';
import { must } from '../result/assert.ts';
import { ok } from '../result/result.ts';
import { places } from '../sessions/place.ts';
import { bookings } from '../work/booking.ts';
import { obligationView } from './due-view.ts';

/** What is to be seen to when a car leaves: what is to be cancelled, refunded, told off or used otherwise. */
export const leavingViewSchema = z.object({
  car: carSchema,
  departure: departureSchema.nullable(),
  /** Insurance, tax and other duties that run on: to be cancelled, some of them refunded. */
  obligations: z.array(z.object({ id: z.string(), kind: obligationKindSchema, name: z.string(), lastValidDay: dateSchema })),
  /** Open sessions with something of this car in them. */
  sessions: z.array(z.object({ id: z.string(), day: dateSchema, place: z.string(), alone: z.boolean() })),
  /** Garages that were asked or booked for it. */
  bookings: z.array(z.object({ id: z.string(), place: z.string(), day: dateSchema.nullable(), reference: z.string() })),
  /** Orders still to come with something for it. */
  orders: z.array(z.object({ id: z.string(), supplier: z.string(), number: z.string().nullable(), expectedOn: dateSchema, returnBy: dateSchema.nullable(), parts: z.array(z.string()) })),
  /** What lies on the shelf and fits no other car here. */
  shelf: z.array(z.object({ lot: z.string(), part: z.string(), left: z.number() })),
});
export type LeavingView = z.infer<typeof leavingViewSchema>;

/** What is to be seen to when a car leaves; after it has left, what is still so. */
export const showLeaving = ask({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: leavingViewSchema,
  answer: (facts, request, { today }) => {
    const found = findCar(facts, request.car);
    if (!found.ok) return found;
    const car = found.value;
    return ok({
      car,
      departure: facts.get(departures, car.id),
      obligations: facts.ofCar(obligations, car.id).filter((one) => one.lastValidDay >= today).map((one) => ({ id: one.id, kind: one.kind, name: obligationView(one, today).name, lastValidDay: one.lastValidDay })),
      sessions: openSessionsOf(facts, car.id).map((one) => ({ id: one.id, day: one.day, place: placeName(facts, one.place), alone: one.tasks.every((task) => taskCar(facts, task) === car.id) })),
      bookings: bookingsOf(facts, car.id),
      orders: ordersOf(facts, car.id),
      shelf: shelfOf(facts, car.id),
    });
  },
});

/** The cars that left, the latest first; their records and packs are to be had as before. */
export const listLeft = ask({
  request: z.strictObject({}),
  reply: z.object({ cars: z.array(z.object({ car: carSchema, departure: departureSchema })) }),
  answer: (facts) => {
    const left = facts.all(departures).map((departure) => ({ car: must(facts.get(cars, departure.car), 'car that left'), departure }));
    return ok({ cars: left.sort((a, b) => (a.departure.on < b.departure.on ? 1 : a.departure.on > b.departure.on ? -1 : 0)) });
  },
});

function placeName(facts: Facts, place: string): string {
  return facts.get(places, place)?.name ?? place;
}

function taskCar(facts: Facts, task: { readonly kind: 'item' | 'obligation'; readonly id: string }): string | null {
  return (task.kind === 'item' ? facts.get(serviceItems, task.id) : facts.get(obligations, task.id))?.car ?? null;
}

/** Neither dropped nor done. */
function bookingsOf(facts: Facts, car: string): LeavingView['bookings'] {
  const open = facts.all(bookings).filter((one) => one.dropped === null && one.cameBack === null && one.wanted.some((line) => line.car === car) && (one.askedOn !== null || one.booked !== null));
  return open.map((one) => ({ id: one.id, place: placeName(facts, one.place), day: one.booked?.day ?? null, reference: one.booked?.reference ?? '' }));
}

function ordersOf(facts: Facts, car: string): LeavingView['orders'] {
  return standingOrders(facts).flatMap(({ order, lines, state }) => {
    const ours = lines.filter(({ line, open }) => open > 0 && line.for.some((taker) => taker.car === car));
    if (ours.length === 0 || state === 'cancelled' || state === 'delivered') return [];
    const names = ours.map(({ line }) => facts.get(parts, line.part)?.name ?? line.part);
    return [{ id: order.id, supplier: facts.get(suppliers, order.supplier)?.name ?? order.supplier, number: order.number, expectedOn: order.expectedOn, returnBy: order.returnBy, parts: names }];
  });
}

/** What meets something that this car needs, and nothing that another car here needs. */
function shelfOf(facts: Facts, car: string): LeavingView['shelf'] {
  const gone = new Set(facts.all(departures).map((one) => one.car));
  const needed = (isMeant: (id: string) => boolean) => new Set(facts.all(serviceItems).filter((item) => isMeant(item.car)).flatMap((item) => item.needs.map((need) => need.specification)));
  const [here, others] = [needed((id) => id === car), needed((id) => id !== car && !gone.has(id))];
  return standingLots(facts).flatMap(({ lot, left }) => {
    const part = facts.get(parts, lot.part);
    const isOurs = part !== null && left > 0 && part.meets.some((one) => here.has(one)) && !part.meets.some((one) => others.has(one));
    return isOurs ? [{ lot: lot.id, part: part.name, left }] : [];
  });
}
