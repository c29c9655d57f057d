import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { observationSchema } from '../records/observation.ts';
import { cautionKeySchema } from '../work/caution-key.ts';
import { findSchema, stepPhotoSchema, stepRefSchema, stepValueSchema, tickSchema } from '../work/doing.ts';
import { instantSchema } from '../work/instant.ts';
import { cautionSchema, jobSheetSchema, jobStepSchema } from './job-sheet-view-schema.ts';
import { saidSchema } from './plan-said.ts';

/** One thing to do, shown by itself: a step of a sheet; a task or an access of which nobody has written how; a check; a reminder to set back. */
export const doingStepSchema = z.object({
  /** Its place among all, from 1, and its name among them. */
  place: z.int(),
  key: z.string(),
  car: z.string(),
  carName: z.string(),
  kind: z.enum(['step', 'whole', 'check', 'reset']),
  /** The block it stands in, in words: "Open: undertray". */
  block: z.string(),
  /** Of the tasks that it is a step of, their names. */
  tasks: z.array(z.string()),
  of: z.array(stepRefSchema),
  /** The task whose time runs while it is done; null where several share it. */
  timeOf: z.string().nullable(),
  text: z.string(),
  ...jobStepSchema.pick({ torques: true, fluids: true, figures: true, tools: true, measure: true, hazards: true, disposal: true }).shape,
  /** The cautions of its hazards in full. */
  cautions: z.array(cautionSchema.pick({ name: true, by: true, said: true })),
  tick: tickSchema.nullable(),
  values: z.array(stepValueSchema),
  /** What is asked about a value that is unlikely, by its id: it stands all the same. */
  questions: z.array(z.object({ value: z.string(), said: saidSchema })),
});
export type DoingStep = z.infer<typeof doingStepSchema>;

/** A session as it is worked: step by step, with what was ticked, read, found and photographed, and the time of each task. */
export const doingSchema = z.object({
  today: dateSchema,
  /** When this was answered: times below count to here. */
  now: instantSchema,
  session: jobSheetSchema.shape.session,
  /** Null until the cautions were read. */
  begunAt: instantSchema.nullable(),
  cautions: z.array(cautionSchema),
  /** Cautions that nobody has read yet, by the keys with which they are noted as read: all before the work is begun, later what came with a task or a changed sheet. Until then nothing can be entered. */
  unread: z.array(cautionSchema.extend({ key: cautionKeySchema })),
  steps: z.array(doingStepSchema),
  tasks: z.array(z.object({ key: z.string(), name: z.string(), car: z.string(), carName: z.string(), steps: z.int(), ticked: z.int(), seconds: z.int(), likelyMinutes: z.int().nullable() })),
  /** Minutes that each task took here so far, whether it was done here, elsewhere or not at all; none of less than one. */
  spent: z.array(z.object({ key: z.string(), name: z.string(), carName: z.string(), minutes: z.int(), done: z.boolean() })),
  /** Seconds of what several tasks share. */
  sharedSeconds: z.int(),
  running: z.object({ task: z.string().nullable(), name: z.string(), from: instantSchema }).nullable(),
  /** When somebody last ticked, measured, found or photographed something, or ran or paused the time. */
  lastSign: instantSchema.nullable(),
  /** The time runs, and nobody gave a sign for so long that it is asked about. */
  leftRunning: z.boolean(),
  found: z.array(observationSchema),
  /** Where each of them was found. */
  finds: z.array(findSchema),
  photos: z.array(stepPhotoSchema),
});
export type Doing = z.infer<typeof doingSchema>;
