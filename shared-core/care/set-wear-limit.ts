import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { wheels } from '../fleet/wheel.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { checkMeasuredValue, checkMeasureName, checkMeasureWay } from './check-measure.ts';
import { sameSubjectName } from './series-limits.ts';
import { wearLimits, wearLimitSchema, wearLimitSet, type ItemMeasure, type WearLimit } from './wear-limit.ts';

const shape = wearLimitSchema.shape;

/** Sets the limit of what is measured, in one place, on one wheel, or for all of its kind; a limit of null takes it back. */
export const setWearLimit = change({
  request: z.strictObject({
    car: z.string().min(1).max(80),
    what: shape.what,
    name: shape.name.default(null),
    place: shape.place.default(null),
    wheel: shape.wheel.default(null),
    limit: shape.limit,
    way: shape.way.default(null),
    source: shape.source.default(null),
  }),
  reply: z.object({ limit: wearLimitSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const standing = facts.ofCar(wearLimits, car.value.id).find((one) => sameSubject(one, request));
    const limit: WearLimit = { ...request, id: standing?.id ?? moment.newId(), car: car.value.id };
    const sound = checkWearLimit(facts, limit);
    return sound.ok ? ok({ entries: [newEntry(wearLimitSet, limit)], reply: { limit } }) : sound;
  },
});

type Subject = Pick<WearLimit, 'what' | 'name' | 'place' | 'wheel'>;

function sameSubject(one: Subject, other: Subject): boolean {
  return one.what === other.what && sameSubjectName(one.name, other.name) && one.place === other.place && one.wheel === other.wheel;
}

function checkWearLimit(facts: Facts, one: WearLimit): Result<null> {
  if (one.wheel !== null && one.place !== null) return refuse('wheel-and-place', {}, ['place']);
  if (one.wheel !== null && one.what !== 'tread') return refuse('only-tread-has-wheel', {}, ['wheel']);
  if (one.wheel !== null && facts.get(wheels, one.wheel)?.car !== one.car) return refuse('unknown-wheel', { wheel: one.wheel }, ['wheel']);
  const named = checkMeasureName(one);
  if (!named.ok) return named;
  if (one.limit === null) return ok(null);
  const way = checkMeasureWay(one, one.way);
  if (!way.ok) return way;
  const value = checkMeasuredValue(facts, one.car, one, one.limit);
  return value.ok ? ok(null) : value;
}

/** What must hold of what a service item is measured by; faults are named by the item's own field. */
export function checkItemMeasure(facts: Facts, car: string, { kind, name, limit, way }: ItemMeasure): Result<null> {
  const sound = checkWearLimit(facts, { id: '', car, what: kind, name, place: null, wheel: null, limit, way, source: null });
  return sound.ok ? sound : { ok: false, refusal: { ...sound.refusal, path: ['measure', ...(sound.refusal.path ?? [])] } };
}
