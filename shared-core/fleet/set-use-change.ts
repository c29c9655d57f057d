import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { Car } from './car.ts';
import { findCar } from './find-car.ts';
import { useChangeRemoved, useChanges, useChangeSchema, useChangeSet, type UseChange } from './use-change.ts';

const shape = useChangeSchema.shape;

/**
 * States that a car is used otherwise from a day on, past or to come; with the id of a change that stands, states it anew.
 * A reading on that very day tells most, for it ends the old use and begins the new one.
 */
export const setUseChange = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    date: shape.date,
    declaredAYear: shape.declaredAYear.default(null),
    note: shape.note.default(''),
  }),
  reply: z.object({ useChange: useChangeSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const useChange: UseChange = { ...request, id: request.id ?? moment.newId(), car: car.value.id };
    const sound = checkUseChange(facts, car.value, useChange);
    return sound.ok ? ok({ entries: [newEntry(useChangeSet, useChange)], reply: { useChange } }) : sound;
  },
});

/** Takes a change of use back: the car is used as before. */
export const removeUseChange = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ useChange: useChangeSchema }),
  decide: (facts, request) => {
    const useChange = facts.get(useChanges, request.id);
    if (useChange === null) return refuse('unknown-use-change', {}, ['id']);
    return ok({ entries: [newEntry(useChangeRemoved, { id: useChange.id, car: useChange.car })], reply: { useChange } });
  },
});

/** A change of use keeps its car, and is the only one of its day. */
function checkUseChange(facts: Facts, car: Car, useChange: UseChange): Result<UseChange> {
  const { id, date } = useChange;
  const standing = facts.get(useChanges, id);
  if (standing !== null && standing.car !== car.id) return refuse('id-taken', { id }, ['id']);
  if (car.firstRegistered !== null && date < car.firstRegistered) return refuse('before-registration', { date, registered: car.firstRegistered }, ['date']);
  const twin = facts.ofCar(useChanges, car.id).find((one) => one.id !== id && one.date === date);
  return twin === undefined ? ok(useChange) : refuse('use-changed-that-day', { date }, ['date']);
}
