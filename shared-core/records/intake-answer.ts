import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { workRecords } from './work-record.ts';

/**
 * What is known of an item of a car just bought: done, and a paper proves it; done, as someone says; unknown, which is never
 * taken as done; counted from the purchase, by choice; never done since the car was new.
 */
export const intakeAnswerKindSchema = z.enum(['proven', 'said', 'unknown', 'from-purchase', 'never-done']);
export type IntakeAnswerKind = z.infer<typeof intakeAnswerKindSchema>;

/** The answer that stands for an item. What it means stands beside it: a work record, or the item's history. */
export const intakeAnswerSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  item: idSchema,
  answer: intakeAnswerKindSchema,
  /** The day on which it was given. */
  on: dateSchema,
  /** The record that it made, where it says that the item was done. */
  record: idSchema.nullable(),
});
export type IntakeAnswer = z.infer<typeof intakeAnswerSchema>;

export const intakeAnswers = family('intake-answer', 'records', intakeAnswerSchema);
export const intakeAnswered = factEntry('intake-answered', intakeAnswers, {
  car: (answer) => answer.car,
  refersTo: (answer) => [...refers(cars, answer.car), ...refers(serviceItems, answer.item), ...refers(workRecords, answer.record)],
});
