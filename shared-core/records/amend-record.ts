import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, refuse } from '../result/result.ts';
import { checkRecord } from './add-record.ts';
import { workAmended, workAmendedSchema } from './work-amended.ts';
import { workRecords, workRecordSchema } from './work-record.ts';

/** Corrects a work record: only the fields given, with the reason; the original stays in the journal. */
export const amendRecord = change({
  request: z.strictObject({
    ...workRecordSchema.omit({ car: true, reading: true }).partial().shape,
    id: workRecordSchema.shape.id,
    why: workAmendedSchema.shape.why,
  }),
  reply: z.object({ record: workRecordSchema }),
  decide: (facts, request, moment) => {
    const now = facts.get(workRecords, request.id);
    if (now === null) return refuse('unknown-record', { record: request.id }, ['id']);
    const { why, ...fields } = request;
    const record = workRecordSchema.parse({ ...now, ...fields });
    const sound = checkRecord(facts, must(facts.get(cars, record.car), 'car of a record'), record, moment.today);
    return sound.ok ? ok({ entries: [newEntry(workAmended, { ...record, why })], reply: { record } }) : sound;
  },
});
