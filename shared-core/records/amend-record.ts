import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { canonicalJson, type Json } from '../journal/canonical-json.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, refuse } from '../result/result.ts';
import { checkRecord } from './add-record.ts';
import { earlierThings } from './earlier-things.ts';
import { observationNoted, observations, observationSchema } from './observation.ts';
import { watchedAnew } from './watched-anew.ts';
import { workAmended, workAmendedSchema } from './work-amended.ts';
import { workRecords, workRecordSchema } from './work-record.ts';

/**
 * Corrects a work record: only the fields given, with the reason; the original stays in the journal. What its lines had to be
 * watched is closed or carried with them.
 */
export const amendRecord = change({
  request: z.strictObject({
    ...workRecordSchema.omit({ car: true, reading: true }).partial().shape,
    id: workRecordSchema.shape.id,
    why: workAmendedSchema.shape.why,
  }),
  reply: z.object({
    record: workRecordSchema,
    /** What its lines had or have to be watched, where that changes: closed by it, carried, or noted. */
    observations: z.array(observationSchema),
  }),
  decide: (facts, request, moment) => {
    const now = facts.get(workRecords, request.id);
    if (now === null) return refuse('unknown-record', { record: request.id }, ['id']);
    if (earlierThings(facts, now.car).has(now.id)) return refuse('of-earlier-keeper', {}, ['id']);
    const { why, ...fields } = request;
    const record = workRecordSchema.parse({ ...now, ...fields });
    if (canonicalJson(record as unknown as Json) === canonicalJson(now as unknown as Json)) return refuse('nothing-amended', {}, ['why']);
    const sound = checkRecord(facts, must(facts.get(cars, record.car), 'car of a record'), record, moment.today);
    if (!sound.ok) return sound;
    const seen = watchedAnew(now, record, facts.ofCar(observations, record.car), moment);
    return ok({ entries: [newEntry(workAmended, { ...record, why }), ...seen.map((one) => newEntry(observationNoted, one))], reply: { record, observations: [...seen] } });
  },
});
