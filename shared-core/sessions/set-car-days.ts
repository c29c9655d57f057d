import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { carDays, carDaysRemoved, carDaysSchema, carDaysSet, type CarDays } from './car-days.ts';

const shape = carDaysSchema.shape;

/** States days on which a car is needed or away; with the id of a stretch that stands, states it anew. */
export const setCarDays = change({
  request: z.strictObject({ id: shape.id.optional(), car: z.string().min(1).max(80), from: shape.from, to: shape.to.optional(), why: shape.why.default('needed'), note: shape.note.default('') }),
  reply: z.object({ days: carDaysSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const days: CarDays = { ...request, id: request.id ?? moment.newId(), car: car.value.id, to: request.to ?? request.from };
    if (days.to < days.from) return refuse('days-end-before', { from: days.from, to: days.to }, ['to']);
    const standing = facts.get(carDays, days.id);
    if (standing !== null && standing.car !== days.car) return refuse('id-taken', { id: days.id }, ['id']);
    return ok({ entries: [newEntry(carDaysSet, days)], reply: { days } });
  },
});

/** Takes a stretch back: the car is free. */
export const removeCarDays = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ days: carDaysSchema }),
  decide: (facts, request) => {
    const days = facts.get(carDays, request.id);
    if (days === null) return refuse('unknown-days', {}, ['id']);
    return ok({ entries: [newEntry(carDaysRemoved, { id: days.id, car: days.car })], reply: { days } });
  },
});
