import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { findCar, sameName } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { recalls, recallSchema, recallSet, type Recall } from './recall.ts';

const shape = recallSchema.shape;

/** States a recall; with the id of one that stands, states it anew: how it was done, above all. */
export const setRecall = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    number: shape.number,
    what: shape.what,
    how: shape.how.default(null),
    doneOn: shape.doneOn.default(null),
    doneBy: shape.doneBy.default(null),
    nextOn: shape.nextOn.default(null),
    papers: shape.papers.default([]),
  }),
  reply: z.object({ recall: recallSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const recall: Recall = { ...request, id: request.id ?? moment.newId(), car: car.value.id };
    const sound = checkRecall(facts, car.value, recall, moment.today);
    return sound.ok ? ok({ entries: [newEntry(recallSet, recall)], reply: { recall } }) : sound;
  },
});

function checkRecall(facts: Facts, car: Car, recall: Recall, today: LocalDate): Result<null> {
  const { number, how, doneOn, doneBy, nextOn } = recall;
  const standing = facts.get(recalls, recall.id);
  if (standing !== null && standing.car !== car.id) return refuse('id-taken', { id: recall.id }, ['id']);
  const twin = facts.ofCar(recalls, car.id).find((other) => other.id !== recall.id && sameName(other.number, number));
  if (twin !== undefined) return refuse('recall-known', { number }, ['number']);
  if (doneOn === null && (how !== null || doneBy !== null)) return refuse('recall-done-when', {}, ['doneOn']);
  if (doneOn !== null && how === null) return refuse('recall-done-how', {}, ['how']);
  if (doneOn !== null && doneOn > today) return refuse('date-in-future', { date: doneOn }, ['doneOn']);
  if (doneOn !== null && car.firstRegistered !== null && doneOn < car.firstRegistered) return refuse('before-registration', { date: doneOn, registered: car.firstRegistered }, ['doneOn']);
  return doneOn !== null && nextOn !== null && nextOn <= doneOn ? refuse('recall-next-before', { date: nextOn }, ['nextOn']) : ok(null);
}
