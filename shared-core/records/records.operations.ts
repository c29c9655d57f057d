import { addRecord } from './add-record.ts';
import { amendRecord } from './amend-record.ts';
import { answerIntake } from './answer-intake.ts';
import { closeObservation, noteObservation } from './note-observation.ts';

/** What can be asked of the records by name; keeping a paper's bytes is the host's. */
export const recordsOperations = {
  'record.add': addRecord,
  'record.amend': amendRecord,
  'intake.answer': answerIntake,
  'observation.note': noteObservation,
  'observation.close': closeObservation,
} as const;
