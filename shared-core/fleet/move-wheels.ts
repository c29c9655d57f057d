import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sayKind } from '../result/words/say.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import type { Car } from './car.ts';
import { findCar } from './find-car.ts';
import { decideReading } from './record-reading.ts';
import { recordReadingReply } from './recorded-reading.ts';
import { firstClash } from './wheel-places.ts';
import { wheelMoved, wheelMoves, wheelMoveSchema, wheelPlaceSchema, wheels, type WheelMove, type WheelPlace } from './wheel.ts';

/** Moves wheels on one day, all together; a reading given with it is judged like any other. */
export const moveWheels = change({
  request: z.strictObject({
    car: z.string().min(1).max(80),
    on: dateSchema.optional(),
    moves: z.array(z.strictObject({ wheel: idSchema, place: wheelPlaceSchema })).min(1).max(20),
    reading: typedDistanceSchema.nullable().default(null),
  }),
  reply: z.object({ moves: z.array(wheelMoveSchema), reading: recordReadingReply.nullable() }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const strange = request.moves.find((move) => facts.get(wheels, move.wheel)?.car !== car.value.id);
    if (strange !== undefined) return refuse('unknown-wheel', { wheel: strange.wheel }, ['moves']);
    const on = request.on ?? moment.today;
    const moves = composeMoves(facts, car.value, request.moves, on, moment);
    if (!moves.ok) return moves;
    const { reading } = request;
    const read = reading === null ? ok(null) : decideReading(facts, car.value, { ...reading, car: car.value.id, date: on, source: 'keeper', note: '', paper: null, sure: false, replaced: null }, moment);
    if (!read.ok) return read;
    return ok({
      entries: [...(read.value?.entries ?? []), ...moves.value.map((move) => newEntry(wheelMoved, move))],
      reply: { moves: [...moves.value], reading: read.value?.reply ?? null },
    });
  },
});

/** A wheel of the car, and where it is to be. */
export interface WantedMove {
  readonly wheel: string;
  readonly place: WheelPlace;
}

/**
 * The moves of wheels on one day; a wheel moved before on that day is where it is put now. Refused where two would be in
 * one place, on that day or on a later one.
 */
export function composeMoves(facts: Facts, car: Car, wanted: readonly WantedMove[], on: LocalDate, moment: Moment): Result<readonly WheelMove[]> {
  if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
  if (car.firstRegistered !== null && on < car.firstRegistered) return refuse('before-registration', { date: on, registered: car.firstRegistered }, ['on']);
  if (new Set(wanted.map((one) => one.wheel)).size < wanted.length) return refuse('wheel-twice', {}, ['moves']);
  const standing = facts.ofCar(wheelMoves, car.id);
  const moves = wanted.map((one): WheelMove => {
    const sameDay = standing.find((move) => move.wheel === one.wheel && move.date === on);
    return { id: sameDay?.id ?? moment.newId(), car: car.id, wheel: one.wheel, date: on, place: one.place };
  });
  const changed = new Set(moves.map((move) => move.id));
  const clash = firstClash([...standing.filter((move) => !changed.has(move.id)), ...moves]);
  return clash === null ? ok(moves) : refuse('wheel-place-taken', { place: sayKind('at', clash.place), date: clash.date }, ['moves']);
}
