import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { metresFromKilometres, type Metres } from '../units/distance.ts';
import { carUseOf } from './car-usage.ts';
import { cars } from './car.ts';
import { instrumentReplaced, instruments, instrumentSchema, type Instrument } from './instrument.ts';
import { readings } from './reading.ts';
import { distanceLastShown } from './replace-instrument.ts';
import { toldUse } from './told-use.ts';

/**
 * Corrects what the old instrument last showed when one was replaced: an estimate becomes what was read. The distance of
 * instruments put in later moves with it. Refused: a value that does not fit the readings before, unless the keeper is sure.
 */
export const correctInstrument = change({
  request: z.strictObject({
    instrument: idSchema,
    lastShown: typedDistanceSchema,
    note: instrumentSchema.shape.note.optional(),
    sure: z.boolean().default(false),
  }),
  reply: z.object({ instrument: instrumentSchema }),
  decide: (facts, request) => {
    const found = facts.get(instruments, request.instrument);
    if (found === null) return refuse('unknown-instrument', {}, ['instrument']);
    const car = must(facts.get(cars, found.car), 'car of an instrument');
    const [earlier, later] = partedAt(facts.ofCar(instruments, car.id), found);
    const ofEarlier = facts.ofCar(readings, car.id).filter((reading) => reading.date < found.date);
    const distance = distanceLastShown(carUseOf(ofEarlier, earlier, toldUse(facts, car)), { date: found.date, sure: request.sure }, request.lastShown);
    if (!distance.ok) return distance;
    const instrument: Instrument = { ...found, distance: distance.value, estimated: false, note: request.note ?? found.note };
    const moved = later.map((one) => ({ ...one, distance: movedBy(one.distance, distance.value - found.distance) }));
    return ok({ entries: [instrument, ...moved].map((one) => newEntry(instrumentReplaced, one)), reply: { instrument } });
  },
});

function partedAt(all: readonly Instrument[], found: Instrument): readonly [readonly Instrument[], readonly Instrument[]] {
  return [all.filter((one) => one.date < found.date), all.filter((one) => one.date > found.date)];
}

function movedBy(distance: Metres, metres: number): Metres {
  return metresFromKilometres((distance + metres) / 1000);
}
