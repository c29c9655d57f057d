import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { sameName } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { idSchema } from '../result/id.ts';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned } from '../sessions/session.ts';
import { findTask, taskKey } from '../sessions/task-ref.ts';
import { bookingSchema, broughtPartSchema, unwantedLineSchema, wantedLineSchema, type Booking } from './booking.ts';
import { afterRounds, MOST_ROUNDS, roundsOver } from './booking-rounds.ts';
import { isUnderway } from './booking-state.ts';
import { bookingEntries, garageSession, type GarageSession } from './find-booking.ts';
import { numberedLines } from './numbered-lines.ts';

const shape = bookingSchema.shape;
const newBroughtSchema = broughtPartSchema.extend({ part: idSchema.nullable().default(null), lot: idSchema.nullable().default(null), quantity: broughtPartSchema.shape.quantity.default(null), unit: broughtPartSchema.shape.unit.default(null) });
const request = z.strictObject({
  session: idSchema,
  /** The day on which it was asked; null while it is only written. */
  askedOn: dateSchema.nullable().default(null),
  wanted: z.array(wantedLineSchema.extend({ id: idSchema.optional(), task: wantedLineSchema.shape.task.default(null) })).min(1, refusedBy('booking-nothing-wanted')).max(60),
  unwanted: z.array(unwantedLineSchema.extend({ id: idSchema.optional() })).max(60).default([]),
  bring: z.array(newBroughtSchema).max(60).default([]),
  digitalRecord: z.boolean().default(true),
  note: shape.note.default(''),
  contact: shape.contact.default(''),
  /** Asks another time, after what came back was said; absent: where the day it was asked on is after that. */
  anew: z.boolean().optional(),
});
type Asked = z.output<typeof request>;

/** What a change of a booking answers. */
export const bookingReplySchema = z.object({ booking: bookingSchema });

/**
 * Writes what is asked of the garage of a kept session, or writes it anew: lines with an id that stands stay the same lines. After it
 * came to nothing it begins afresh, and what is over stays as it was. Where another garage was asked and still counts on the keeper, that
 * one is told and dropped first.
 */
export const askBooking = change({
  request,
  reply: bookingReplySchema,
  decide: (facts, asked, { today }) => {
    const found = garageSession(facts, asked.session);
    if (!found.ok) return found;
    const { session, place } = found.value;
    if (place.kind !== 'garage') return refuse('booking-not-garage', { place: place.name }, ['session']);
    if (!isPinned(session)) return refuse(session.state === 'proposed' ? 'booking-not-kept' : 'session-ended', { day: session.day }, ['session']);
    if (asked.askedOn !== null && asked.askedOn > today) return refuse('booking-asked-ahead', { day: asked.askedOn }, ['askedOn']);
    const other = found.value.booking;
    if (other !== null && other.place !== session.place && isUnderway(other)) return refuse('booking-stands-elsewhere', { asked: placeName(facts, other.place), place: place.name }, ['session']);
    const standing = standingRequest(found.value, asked);
    const sound = [() => checkLines(facts, found.value, standing, asked), () => checkBrought(facts, asked), () => checkGone(standing, asked), () => checkAskedOn(standing, asked)].map((check) => check()).find((one) => !one.ok);
    if (sound !== undefined && !sound.ok) return sound;
    const { session: id, anew: _anew, ...rest } = asked;
    const rounds = roundsOver(found.value.booking);
    if (standing === null && rounds.length > MOST_ROUNDS) return refuse('booking-rounds-too-many', {}, ['session']);
    const booking: Booking = {
      ...(standing ?? { quotes: [], booked: null, cameBack: null, ...afterRounds(rounds) }), ...rest, id, place: place.id, dropped: null,
      wanted: numberedLines(asked.wanted, standing?.wanted ?? [], 'wanted'),
      unwanted: numberedLines(asked.unwanted, standing?.unwanted ?? [], 'unwanted'),
    };
    return ok({ entries: bookingEntries(found.value.booking, booking), reply: { booking } });
  },
});

function placeName(facts: Facts, id: string): string {
  return standingPlaces(facts).find((one) => one.place.id === id)?.place.name ?? id;
}

/** The request that goes on; null where one begins afresh. */
function standingRequest({ session, booking }: GarageSession, { askedOn, wanted, anew }: Asked): Booking | null {
  if (booking?.cameBack != null && (anew ?? isAskedAfter(booking, booking.cameBack, { askedOn, wanted }))) return null;
  return booking === null || booking.dropped !== null || booking.place !== session.place ? null : booking;
}

/** Asked after the work was done, or on that day for something else than what was answered: that is another request. */
function isAskedAfter({ askedOn: before }: Booking, { doneOn, lines }: NonNullable<Booking['cameBack']>, { askedOn, wanted }: Pick<Asked, 'askedOn' | 'wanted'>): boolean {
  if (askedOn === null || askedOn < doneOn) return false;
  return askedOn > doneOn || (askedOn !== before && lines.some((line) => line.wanted !== null && !wanted.some((one) => one.id === line.wanted)));
}

function checkLines(facts: Facts, { session }: GarageSession, standing: Booking | null, asked: Asked): Result<unknown> {
  const held = new Set([...session.tasks, ...(standing?.wanted ?? []).flatMap((one) => one.task ?? [])].map(taskKey));
  const cars = new Set([...session.tasks.flatMap((task) => carOf(facts, task) ?? []), ...(standing?.wanted ?? []).map((one) => one.car)]);
  const all = [...asked.wanted.map((line, at) => ({ line, task: line.task, list: 'wanted', at })), ...asked.unwanted.map((line, at) => ({ line, task: null, list: 'unwanted', at }))];
  for (const [place, { line, task, list, at }] of all.entries()) {
    const path = [list, at, 'text'];
    if (!cars.has(line.car)) return refuse('booking-car-not-there', { car: line.car }, [list, at, 'car']);
    if (task !== null && !held.has(taskKey(task))) return refuse('task-not-in-session', {}, path);
    if (task !== null && carOf(facts, task) !== line.car) return refuse('booking-car-not-there', { car: line.car }, [list, at, 'car']);
    const twin = all.slice(0, place).find((one) => one.line.car === line.car && (sameName(one.line.text, line.text) || (task !== null && one.task !== null && taskKey(one.task) === taskKey(task))));
    if (twin !== undefined) return refuse(twin.list === list ? 'booking-line-twice' : 'booking-wanted-and-not', { text: line.text }, path);
  }
  const strange = asked.bring.findIndex((one) => !cars.has(one.car));
  return strange < 0 ? ok(null) : refuse('booking-car-not-there', { car: asked.bring[strange]?.car ?? '' }, ['bring', strange, 'car']);
}

function carOf(facts: Facts, task: Parameters<typeof findTask>[1]): string | null {
  const found = findTask(facts, task);
  return found.ok ? found.value.car : null;
}

function checkBrought(facts: Facts, { bring }: Asked): Result<unknown> {
  for (const [at, { part, lot }] of bring.entries()) {
    if (part !== null && facts.get(parts, part) === null) return refuse('unknown-part', { id: part }, ['bring', at, 'part']);
    if (lot !== null && facts.get(lots, lot) === null) return refuse('unknown-lot', { lot }, ['bring', at, 'lot']);
    if (lot !== null && bring.findIndex((one) => one.lot === lot && one.car === bring[at]?.car) !== at) return refuse('booking-brought-twice', { text: bring[at]?.text ?? '' }, ['bring', at, 'text']);
  }
  return ok(null);
}

/** A line that a price covers, or of which was said what came of it, cannot be taken out from under them: a price would seem to cover less. */
function checkGone(standing: Booking | null, asked: Asked): Result<unknown> {
  if (standing === null) return ok(null);
  const kept = new Set([...asked.wanted, ...asked.unwanted].flatMap((one) => one.id ?? []));
  const gone = [...standing.wanted, ...standing.unwanted].filter((one) => !kept.has(one.id));
  const quoted = gone.find((one) => standing.quotes.some((quote) => quote.lines.some((line) => line.covers.includes(one.id))));
  if (quoted !== undefined) return refuse('booking-line-quoted', { text: quoted.text }, ['wanted']);
  const answered = gone.find((one) => standing.cameBack?.lines.some((line) => line.wanted === one.id || line.unwanted === one.id));
  return answered === undefined ? ok(null) : refuse('booking-line-answered', { text: answered.text }, ['wanted']);
}

/** What was said by the garage was said after it was asked. */
function checkAskedOn(standing: Booking | null, { askedOn }: Asked): Result<unknown> {
  const [first] = standing === null ? [] : [...standing.quotes.map((one) => one.on), ...(standing.booked === null ? [] : [standing.booked.on]), ...(standing.cameBack === null ? [] : [standing.cameBack.doneOn])].sort();
  if (first === undefined) return ok(null);
  if (askedOn === null) return refuse('booking-was-asked', {}, ['askedOn']);
  return askedOn > first ? refuse('booking-asked-after', { day: askedOn, said: first }, ['askedOn']) : ok(null);
}
