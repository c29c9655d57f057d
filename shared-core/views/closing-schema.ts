import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { disposalSchema } from '../work/disposal.ts';
import { recordLineSchema } from '../records/work-record.ts';
import { stepValueSchema } from '../work/doing.ts';
import { jobSheetSchema } from './job-sheet-view-schema.ts';
import { saidSchema } from './plan-said.ts';

/** A task as the closing of its session proposes to tell it. */
export const closingTaskSchema = z.object({
  task: jobSheetSchema.shape.cars.element.shape.tasks.element.shape.task,
  key: z.string(),
  name: z.string(),
  steps: z.int(),
  ticked: z.int(),
  work: recordLineSchema.shape.work.nullable(),
  /** What it came out as, by what was ticked and found: the keeper has the last word. Null of an obligation. */
  outcome: recordLineSchema.shape.outcome.nullable(),
  /** Whole minutes by its own time; null where none ran. */
  minutes: z.int().nullable(),
  /** Torques given and steps left out, for the line's note. */
  note: z.string(),
  followUps: jobSheetSchema.shape.cars.element.shape.tasks.element.shape.followUps,
});
export type ClosingTask = z.infer<typeof closingTaskSchema>;

export const closingCarSchema = z.object({
  car: z.string(),
  carName: z.string(),
  /** The unit in which its odometer reads. */
  unit: z.enum(['km', 'mi']),
  tasks: z.array(closingTaskSchema),
  /** What is taken off the shelf for what was done, where the shelf has it. */
  lots: z.array(z.object({ lot: z.string(), partName: z.string(), where: z.string().nullable(), unit: z.string(), quantity: z.number(), for: z.string() })),
  lacks: z.array(saidSchema),
  values: z.array(stepValueSchema),
  found: z.int(),
  photos: z.int(),
});
export type ClosingCar = z.infer<typeof closingCarSchema>;

/** How a session is proposed to be closed: all that was ticked, read, timed and used, to be looked over once. */
export const closingSchema = z.object({
  today: dateSchema,
  session: jobSheetSchema.shape.session,
  date: dateSchema,
  cars: z.array(closingCarSchema),
  sharedSeconds: z.int(),
  /** Leavings to be written down until they are taken away; `kept`: those that one usually keeps in a can. */
  wastes: z.array(z.object({ what: disposalSchema, name: z.string(), kept: z.boolean() })),
});
export type Closing = z.infer<typeof closingSchema>;
