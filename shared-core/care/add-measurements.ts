import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { recordReadingReply } from '../fleet/recorded-reading.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { refusedBy } from '../result/refused-by.ts';
import { ok, type Refusal } from '../result/result.ts';
import { addMeasurementRequest, composeMeasurement, readingWith } from './add-measurement.ts';
import { measurementSchema, measurementTaken, type Measurement } from './measurement.ts';

const shape = addMeasurementRequest.shape;
const MOST_AT_ONCE = 60;

/** What differs from one value to the next: where it was measured, and what is said of it. */
const valueRequest = z.strictObject({ place: shape.place, wheel: shape.wheel, value: shape.value, fresh: shape.fresh, note: shape.note });

/** Adds what was measured in one go, in several places or across one thing: all of it or nothing, undone in one step. */
export const addMeasurements = change({
  request: z.strictObject({
    ...addMeasurementRequest.omit({ id: true, place: true, wheel: true, value: true, fresh: true, note: true }).shape,
    values: z.array(valueRequest).min(1, refusedBy('nothing-measured')).max(MOST_AT_ONCE),
  }),
  reply: z.object({ measurements: z.array(measurementSchema), reading: recordReadingReply.nullable() }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const read = readingWith(facts, car.value, request, moment);
    if (!read.ok) return read;
    const { values, ...common } = request;
    const reading = read.value?.reply.reading.id ?? request.readingId;
    const taken: Measurement[] = [];
    for (const [at, value] of values.entries()) {
      const one = composeMeasurement(facts, car.value, { ...common, ...value }, reading, moment);
      if (!one.ok) return { ok: false, refusal: atValue(one.refusal, at) };
      taken.push(one.value);
    }
    return ok({
      entries: [...(read.value?.entries ?? []), ...taken.map((one) => newEntry(measurementTaken, one))],
      reply: { measurements: taken, reading: read.value?.reply ?? null },
    });
  },
});

/** What is refused of one value is named as that value's. */
function atValue(refusal: Refusal, at: number): Refusal {
  const [field] = refusal.path ?? [];
  return typeof field === 'string' && field in valueRequest.shape ? { ...refusal, path: ['values', at, field] } : refusal;
}
