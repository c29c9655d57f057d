import type { z } from 'zod';
import { carSubject, put, refers, type EntryKind } from '../journal/entry-kind.ts';
import { plainText } from '../result/plain-text.ts';
import { workRecorded, workRecords, workRecordSchema } from './work-record.ts';

/** A correction of a work record: the whole record as it should read, and why. The original entry stays in the journal. */
export const workAmendedSchema = workRecordSchema.extend({ why: plainText(300) });
export type WorkAmended = z.infer<typeof workAmendedSchema>;

export const workAmended: EntryKind<WorkAmended> = {
  kind: 'work-amended',
  version: 1,
  schema: workAmendedSchema,
  subject: (values) => carSubject(values.car),
  apply: ({ why: _why, ...record }) => [put(workRecords, record, record.car)],
  refersTo: ({ why: _why, ...record }) => [...refers(workRecords, record.id), ...workRecorded.refersTo(record)],
};
