import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sayKind } from '../result/words/say.ts';
import { findCar, sameName } from './find-car.ts';
import { composeMoves } from './move-wheels.ts';
import { readTyreDateCode } from './tyre-date-code.ts';
import { wheelIn } from './wheel-places.ts';
import { wheelMoved, wheelMoves, wheelMoveSchema, wheelPlaceSchema, wheels, wheelSchema, wheelSet, type Wheel } from './wheel.ts';

const shape = wheelSchema.shape;

/** Adds a wheel with its tyre; refused where another is in its place. */
export const addWheel = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    name: shape.name,
    dateCode: shape.dateCode.default(null),
    size: shape.size.default(null),
    note: shape.note.default(''),
    place: wheelPlaceSchema,
    /** Since when it is there. */
    on: dateSchema.optional(),
  }),
  reply: z.object({ wheel: wheelSchema, moves: z.array(wheelMoveSchema) }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const { place, on = moment.today, ...rest } = request;
    const wheel: Wheel = { ...rest, id: request.id ?? moment.newId(), car: car.value.id };
    if (facts.get(wheels, wheel.id) !== null) return refuse('id-taken', { id: wheel.id }, ['id']);
    const sound = checkWheel(facts, wheel, moment.today);
    if (!sound.ok) return sound;
    const there = wheelIn(facts.ofCar(wheelMoves, car.value.id), place, on);
    if (there !== null) return refuse('wheel-in-place', { wheel: facts.get(wheels, there)?.name ?? there, place: sayKind('at', place), date: on }, ['place']);
    const moves = composeMoves(facts, car.value, [{ wheel: wheel.id, place }], on, moment);
    if (!moves.ok) return moves;
    return ok({ entries: [newEntry(wheelSet, wheel), ...moves.value.map((move) => newEntry(wheelMoved, move))], reply: { wheel, moves: [...moves.value] } });
  },
});

/** Changes what is said of a wheel: only the fields given. */
export const changeWheel = change({
  request: z.strictObject({ ...wheelSchema.omit({ car: true }).partial().shape, id: shape.id }),
  reply: z.object({ wheel: wheelSchema }),
  decide: (facts, request, moment) => {
    const now = facts.get(wheels, request.id);
    if (now === null) return refuse('unknown-wheel', { wheel: request.id }, ['id']);
    const wheel = wheelSchema.parse({ ...now, ...request });
    const sound = checkWheel(facts, wheel, moment.today);
    return sound.ok ? ok({ entries: [newEntry(wheelSet, wheel)], reply: { wheel } }) : sound;
  },
});

/** Two wheels of a car are not called the same, and a tyre's code is one that can be. */
function checkWheel(facts: Facts, wheel: Wheel, today: LocalDate): Result<Wheel> {
  const other = facts.ofCar(wheels, wheel.car).find((one) => one.id !== wheel.id && sameName(one.name, wheel.name));
  if (other !== undefined) return refuse('wheel-name-taken', { name: wheel.name }, ['name']);
  if (wheel.dateCode === null) return ok(wheel);
  const code = readTyreDateCode(wheel.dateCode, today);
  return code.ok ? ok(wheel) : { ok: false, refusal: { ...code.refusal, path: ['dateCode'] } };
}
