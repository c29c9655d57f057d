import { z } from 'zod';
import type { Car } from '../fleet/car.ts';
import { carUse, type CarUse } from '../fleet/car-usage.ts';
import { instrumentOn } from '../fleet/continuous-distance.ts';
import { findCar } from '../fleet/find-car.ts';
import { judgeCarReading } from '../fleet/judge-car-reading.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { fromTyped } from '../units/distance.ts';
import { distanceAllowanceRemoved, distanceAllowances, distanceAllowanceSchema, distanceAllowanceSet, type DistanceAllowance } from './distance-allowance.ts';

const shape = distanceAllowanceSchema.shape;

/** States how much distance is allowed; with the id of one that stands, states it anew. */
export const setDistanceAllowance = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    kind: shape.kind,
    name: shape.name.default(null),
    distance: shape.distance,
    every: shape.every.default('year'),
    from: shape.from,
    to: shape.to.default(null),
    startReading: shape.startReading.default(null),
  }),
  reply: z.object({ allowance: distanceAllowanceSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const allowance: DistanceAllowance = { ...request, id: request.id ?? moment.newId(), car: car.value.id };
    const sound = checkAllowance(facts, car.value, allowance);
    return sound.ok ? ok({ entries: [newEntry(distanceAllowanceSet, allowance)], reply: { allowance } }) : sound;
  },
});

/** Takes an allowance away. */
export const removeDistanceAllowance = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ allowance: distanceAllowanceSchema }),
  decide: (facts, request) => {
    const allowance = facts.get(distanceAllowances, request.id);
    if (allowance === null) return refuse('unknown-allowance', {}, ['id']);
    return ok({ entries: [newEntry(distanceAllowanceRemoved, { id: allowance.id, car: allowance.car })], reply: { allowance } });
  },
});

function checkAllowance(facts: Facts, car: Car, allowance: DistanceAllowance): Result<null> {
  const standing = facts.get(distanceAllowances, allowance.id);
  if (standing !== null && standing.car !== car.id) return refuse('id-taken', { id: allowance.id }, ['id']);
  if (allowance.to !== null && allowance.to < allowance.from) return refuse('allowance-ends-before', { from: allowance.from, to: allowance.to }, ['to']);
  if (car.firstRegistered !== null && allowance.from < car.firstRegistered) return refuse('before-registration', { date: allowance.from, registered: car.firstRegistered }, ['from']);
  return checkStart(carUse(facts, car), allowance);
}

/** What the odometer is said to have shown on the first day is judged as a reading of that day would be. */
function checkStart(use: CarUse, { from, startReading }: DistanceAllowance): Result<null> {
  if (startReading === null) return ok(null);
  const shown = fromTyped(startReading);
  if (!shown.ok) return refuse('not-a-distance', {}, ['startReading']);
  const read = { date: from, typed: startReading, shown: shown.value, instrument: instrumentOn(use.instruments, from)?.id ?? null };
  const { against } = judgeCarReading(use, read);
  if (against === null) return ok(null);
  const { date, typed } = against.reading;
  return refuse('start-reading-doubtful', { given: startReading.value, givenUnit: startReading.unit, on: from, value: typed.value, unit: typed.unit, date }, ['startReading']);
}
