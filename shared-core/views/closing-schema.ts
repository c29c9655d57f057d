import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { disposalSchema } from '../work/disposal.ts';
import { recordLineSchema } from '../records/work-record.ts';
import { stepValueSchema } from '../work/doing.ts';
import { instantSchema } from '../work/instant.ts';
import { jobSheetSchema } from './job-sheet-view-schema.ts';
import { saidSchema } from './plan-said.ts';

/** A task as the closing of its session proposes to tell it. */
export const closingTaskSchema = z.object({
  task: jobSheetSchema.shape.cars.element.shape.tasks.element.shape.task,
  key: z.string(),
  name: z.string(),
  steps: z.int(),
  /** Steps ticked as done; those left out are counted apart. */
  ticked: z.int(),
  leftOut: z.int(),
  work: recordLineSchema.shape.work.nullable(),
  /**
   * What it came out as, by what was ticked and found: the keeper has the last word. Null where that cannot be told, for some of it was
   * done and some was not, so that the keeper says it; and of an obligation.
   */
  outcome: recordLineSchema.shape.outcome.nullable(),
  /** Whole minutes by its own time, counted while somebody was there; null where none ran to speak of. */
  minutes: z.int().nullable(),
  /** Minutes below or above which one is asked whether they are right, by what it took before; null where nobody knows. */
  asks: z.object({ likely: z.int(), below: z.int(), above: z.int() }).nullable(),
  /** Torques given and steps left out, for the line's note; what does not stand there whole is in the note of the car. */
  note: z.string(),
  /** To be looked at again after it; what is open on the car in the same words stands already. */
  followUps: jobSheetSchema.shape.cars.element.shape.tasks.element.shape.followUps,
});
export type ClosingTask = z.infer<typeof closingTaskSchema>;

const takenSchema = z.object({
  /** What is taken off the shelf for what was done, where the shelf has it. */
  lots: z.array(z.object({ task: z.string(), lot: z.string(), partName: z.string(), where: z.string().nullable(), unit: z.string(), quantity: z.number(), for: z.string() })),
  lacks: z.array(saidSchema.extend({ task: z.string() })),
});

export const closingCarSchema = z.object({
  car: z.string(),
  carName: z.string(),
  /** The unit in which its odometer reads. */
  unit: z.enum(['km', 'mi']),
  tasks: z.array(closingTaskSchema),
  /** Tasks that are in a record or a renewal meanwhile: they are not written again. */
  recorded: z.array(z.object({ task: closingTaskSchema.shape.task, key: z.string(), name: z.string(), on: dateSchema, said: saidSchema })),
  ...takenSchema.shape,
  /** The same of tasks that are not proposed as done, should they be. */
  otherwise: takenSchema,
  /** What was read on it, whatever became of the steps. */
  values: z.array(stepValueSchema),
  /** What is to be said in the note of its record. */
  note: z.string(),
  found: z.int(),
  photos: z.int(),
});
export type ClosingCar = z.infer<typeof closingCarSchema>;

const wasteLineSchema = z.object({ what: disposalSchema, name: z.string(), kept: z.boolean(), tasks: z.array(z.string()) });

/** How a session is proposed to be closed: all that was ticked, read, timed and used, to be looked over once. */
export const closingSchema = z.object({
  today: dateSchema,
  session: jobSheetSchema.shape.session,
  date: dateSchema,
  cars: z.array(closingCarSchema),
  /** Time that ran on after the last sign of work, which is not counted; null where none did. */
  ranOn: z.object({ name: z.string(), after: instantSchema, minutes: z.int() }).nullable(),
  /** Seconds of what several tasks share: they are of no task's own minutes, and stand in the note of the first car. */
  sharedSeconds: z.int(),
  /** Leavings of what was done, to be written down until they are taken away; `kept`: those that one usually keeps in a can. */
  wastes: z.array(wasteLineSchema),
  /** Leavings of tasks that are not proposed as done, should they be. */
  otherwise: z.array(wasteLineSchema),
});
export type Closing = z.infer<typeof closingSchema>;
