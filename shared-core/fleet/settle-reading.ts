import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { cars } from './car.ts';
import { instrumentOn } from './continuous-distance.ts';
import { instruments } from './instrument.ts';
import { readingRecorded, readings, readingSchema, type Reading } from './reading.ts';
import { decideReading } from './record-reading.ts';
import { replaceInstrument } from './replace-instrument.ts';

const settleRequest = z.strictObject({
  reading: idSchema,
  /** `right`: it stands as typed. `wrong`: it counts for nothing. `corrected`: the value was another. `replaced`: a new instrument. */
  verdict: z.enum(['right', 'wrong', 'corrected', 'replaced']),
  /** The right value in the unit typed; with `corrected` only. */
  value: z.number().optional(),
});

/** A reading that is right after all was read from the instrument that is now known to have been in the car on its day. */
function right(facts: Facts, found: Reading): Reading {
  const instrument = instrumentOn(facts.ofCar(instruments, found.car), found.date)?.id ?? null;
  return { ...found, instrument, standing: 'accepted', sure: true };
}

/** Answers the question about a doubtful reading; what was typed first stays in the journal. */
export const settleReading = change({
  request: settleRequest,
  reply: z.object({ reading: readingSchema }),
  decide: (facts, request, moment) => {
    const found = facts.get(readings, request.reading);
    if (found === null) return refuse('unknown-reading', { reading: request.reading }, ['reading']);
    if (found.standing !== 'set-aside') return refuse('reading-not-in-doubt', {}, ['reading']);
    const car = must(facts.get(cars, found.car), 'car of a reading');
    if (request.verdict === 'replaced') {
      const { standing: _standing, doubt: _doubt, instrument: _instrument, ...first } = found;
      const replaced = replaceInstrument(facts, car, first, null, moment);
      if (!replaced.ok) return replaced;
      return ok({ entries: replaced.value.entries, reply: { reading: replaced.value.reply.reading } });
    }
    if (request.verdict === 'corrected') {
      if (request.value === undefined) return refuse('value-missing', {}, ['value']);
      const { typed, date, source, note, paper } = found;
      const better = decideReading(facts, car, { car: car.id, value: request.value, unit: typed.unit, date, source, note, paper, sure: true, replaced: null }, moment);
      if (!better.ok) return better;
      return ok({ entries: [newEntry(readingRecorded, { ...found, standing: 'dismissed' }), ...better.value.entries], reply: { reading: better.value.reply.reading } });
    }
    const settled = request.verdict === 'right' ? right(facts, found) : ({ ...found, standing: 'dismissed' } as const);
    return ok({ entries: [newEntry(readingRecorded, settled)], reply: { reading: settled } });
  },
});
