import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { Car } from './car.ts';
import { findCar } from './find-car.ts';
import { layUpRemoved, layUps, layUpSchema, layUpSet, type LayUp } from './lay-up.ts';

const shape = layUpSchema.shape;

/** States a dated lay-up, past, present or to come; with the id of one that stands, states it anew (its end, above all). */
export const setLayUp = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    from: shape.from,
    to: shape.to.default(null),
    note: shape.note.default(''),
  }),
  reply: z.object({ layUp: layUpSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const layUp: LayUp = { ...request, id: request.id ?? moment.newId(), car: car.value.id };
    const sound = checkLayUp(facts, car.value, layUp);
    return sound.ok ? ok({ entries: [newEntry(layUpSet, layUp)], reply: { layUp } }) : sound;
  },
});

/** Takes a lay-up back: the car did not rest. */
export const removeLayUp = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ layUp: layUpSchema }),
  decide: (facts, request) => {
    const layUp = facts.get(layUps, request.id);
    if (layUp === null) return refuse('unknown-lay-up', {}, ['id']);
    return ok({ entries: [newEntry(layUpRemoved, { id: layUp.id, car: layUp.car })], reply: { layUp } });
  },
});

/** A lay-up keeps its car, ends no earlier than it begins, and holds no day of another. */
function checkLayUp(facts: Facts, car: Car, layUp: LayUp): Result<LayUp> {
  const { from, to } = layUp;
  const standing = facts.get(layUps, layUp.id);
  if (standing !== null && standing.car !== car.id) return refuse('id-taken', { id: layUp.id }, ['id']);
  if (to !== null && to < from) return refuse('lay-up-ends-before', { from, to }, ['to']);
  if (car.firstRegistered !== null && from < car.firstRegistered) return refuse('before-registration', { date: from, registered: car.firstRegistered }, ['from']);
  const other = facts.ofCar(layUps, car.id).find((one) => one.id !== layUp.id && overlaps(one, layUp));
  if (other === undefined) return ok(layUp);
  return refuse(other.to === null ? 'lay-up-overlaps-open' : 'lay-up-overlaps', { from: other.from, to: other.to }, ['from']);
}

function overlaps(one: LayUp, other: LayUp): boolean {
  return (one.to === null || one.to >= other.from) && (other.to === null || other.to >= one.from);
}
