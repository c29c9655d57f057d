import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, refuse } from '../result/result.ts';
import { checkMeasurement } from './add-measurement.ts';
import { measurements, measurementSchema, measurementTaken } from './measurement.ts';

const { id, item, date, typed, fresh, gauge, paper, note, dismissed } = measurementSchema.shape;

/**
 * Corrects a measurement, only in the fields given: another value, the first of a new part, found wrong. Its subject stays;
 * what was entered first stays in the journal.
 */
export const correctMeasurement = change({
  request: z.strictObject({
    id,
    item: item.optional(),
    date: date.optional(),
    typed: typed.optional(),
    fresh: fresh.optional(),
    gauge: gauge.optional(),
    paper: paper.optional(),
    note: note.optional(),
    dismissed: dismissed.optional(),
  }),
  reply: z.object({ measurement: measurementSchema }),
  decide: (facts, request, moment) => {
    const now = facts.get(measurements, request.id);
    if (now === null) return refuse('unknown-measurement', {}, ['id']);
    // On another day the odometer was another.
    const odometer = request.date === undefined || request.date === now.date ? {} : { reading: null, metres: null };
    const next = measurementSchema.parse({ ...now, ...request, ...odometer });
    const measurement = checkMeasurement(facts, must(facts.get(cars, now.car), 'car of a measurement'), next, moment.today);
    return measurement.ok ? ok({ entries: [newEntry(measurementTaken, measurement.value)], reply: { measurement: measurement.value } }) : measurement;
  },
});
