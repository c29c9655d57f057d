import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { measureKindSchema } from '../care/measure-kind.ts';
import { jointDataSchema } from '../fleet/card-figure.ts';
import { figureKindSchema } from '../fleet/known-figures.ts';
import { sessionStateSchema } from '../sessions/session.ts';
import { taskRefSchema } from '../sessions/task-ref.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { measuredUnitSchema } from '../units/measured-value.ts';
import { torqueUnitSchema } from '../units/torque.ts';
import { disposalSchema } from '../work/disposal.ts';
import { hazardSchema } from '../work/hazard.ts';
import { stepMeasureSchema, turnSchema } from '../work/sheet-step.ts';
import { sessionPartsSchema } from './parts-view-schema.ts';
import { saidSchema } from './plan-said.ts';

/** A figure of the data card as a sheet shows it; entered or named as missing, never invented. */
export const jobFigureSchema = z.object({
  figure: z.string(),
  name: z.string(),
  kind: figureKindSchema.nullable(),
  entered: z.boolean(),
  /** As it was typed; "not entered" where it is not. */
  text: z.string(),
  otherUnits: z.array(z.string()),
  source: z.string().nullable(),
  paper: z.string().nullable(),
  note: z.string(),
  /** What to do where it is not entered; null where it is. */
  lack: saidSchema.nullable(),
});

/** A torque by the data card or of the keeper's own, in every unit that a wrench has. */
export const jobTorqueSchema = z.object({
  name: z.string(),
  /** The figure of the card; null for one of the keeper's own. */
  figure: z.string().nullable(),
  entered: z.boolean(),
  /** As it was typed; "not entered" where it is not. */
  text: z.string(),
  /** The same in each unit, that of typing exact, the others to three figures; empty where it is not entered. */
  inUnits: z.array(z.object({ unit: torqueUnitSchema, value: z.number(), text: z.string() })),
  typedUnit: torqueUnitSchema.nullable(),
  on: jointDataSchema.nullable(),
  source: z.string().nullable(),
  note: z.string(),
  /** Asked where it is unlike those usual for its thread and the keeper has not said that it is so: never a refusal. */
  question: saidSchema.nullable(),
  lack: saidSchema.nullable(),
});
export type JobTorque = z.infer<typeof jobTorqueSchema>;

/** A fluid with what it must meet and how much; null where the sheet names no figure for it. */
export const jobFluidSchema = z.object({ name: z.string(), specification: jobFigureSchema.nullable(), quantity: jobFigureSchema.nullable() });

/** A step in its place. */
export const jobStepSchema = z.object({
  /** Its number on the car's sheet, from 1. */
  number: z.int(),
  /** The steps of tasks that it is, for ticks; several where tasks open or close the same thing in the same words. */
  of: z.array(z.object({ task: z.string(), step: z.string() })),
  text: z.string(),
  torques: z.array(jobTorqueSchema),
  fluids: z.array(jobFluidSchema),
  figures: z.array(jobFigureSchema),
  tools: z.array(z.string()),
  /** A value to be measured and entered here, and the unit in which it is read; null for a thing of the keeper's own that was never measured. */
  measure: stepMeasureSchema.extend({ kind: measureKindSchema, text: z.string(), unit: measuredUnitSchema.nullable() }).nullable(),
  hazards: z.array(z.object({ hazard: hazardSchema, name: z.string() })),
  disposal: z.array(disposalSchema),
});

/** Steps that belong together. The order of blocks and of steps in them is the order of work. */
export const jobBlockSchema = z.object({
  kind: z.enum(['open', 'close', ...turnSchema.options]),
  title: z.string(),
  access: z.string().nullable(),
  /** The keys of the tasks it is for; of an access all that use it. */
  tasks: z.array(z.string()),
  steps: z.array(jobStepSchema),
  /** Where nobody has written how, what to do about it; null where there are steps. */
  gap: saidSchema.nullable(),
});

/** A task of the session, in working order. */
export const jobTaskSchema = z.object({
  task: taskRefSchema,
  /** Its name in `tasks` and `of`: "item/pip-oil". */
  key: z.string(),
  name: z.string(),
  done: z.boolean(),
  minutes: z.int().nullable(),
  access: z.array(z.string()),
  hasSheet: z.boolean(),
  /** A starting sheet that its name calls for; null where none does. */
  startingSheet: z.string().nullable(),
  /** Where to write a sheet; null where there is one, or the task is an obligation. */
  gap: saidSchema.nullable(),
  hazards: z.array(z.object({ hazard: hazardSchema, name: z.string() })),
  checks: z.array(z.string()),
  reset: z.string().nullable(),
  followUps: z.array(z.object({ text: z.string(), days: z.int().nullable(), distance: typedDistanceSchema.nullable(), when: saidSchema })),
  note: z.string(),
});

/** A caution, the gravest first. */
export const cautionSchema = z.object({
  /** Null for what holds for all work. */
  hazard: hazardSchema.nullable(),
  name: z.string().nullable(),
  by: z.enum(['licensed', 'skilled', 'anyone']),
  said: saidSchema,
  /** The tasks it is for; empty for what holds for all. */
  tasks: z.array(z.string()),
});

/** The sheet of one car. Tasks that are done already stand in `tasks` and have no steps. */
export const carJobSchema = z.object({
  car: z.string(),
  carName: z.string(),
  description: z.string().nullable(),
  registration: z.string().nullable(),
  tasks: z.array(jobTaskSchema),
  blocks: z.array(jobBlockSchema),
  /** All torques, fluids and other figures of the steps once each, in order of work. */
  torques: z.array(jobTorqueSchema.extend({ tasks: z.array(z.string()) })),
  fluids: z.array(jobFluidSchema.extend({ tasks: z.array(z.string()) })),
  figures: z.array(jobFigureSchema.extend({ tasks: z.array(z.string()) })),
  /** What the data card lacks: the figure, what is to be done, and the tasks that miss it. */
  lacks: z.array(z.object({ figure: z.string(), name: z.string(), kind: figureKindSchema.nullable(), said: saidSchema, tasks: z.array(z.string()) })),
});
export type CarJob = z.infer<typeof carJobSchema>;

const partSchema = sessionPartsSchema.shape.needs.element;

/** A need of a task, and where it stands. */
export const jobPartSchema = partSchema.extend({
  task: z.string(),
  state: z.enum(['on-shelf', 'on-the-way', 'missing']),
  /** Orders that are on the way and hold it, whenever they come. */
  orders: z.array(z.object({ order: z.string(), supplierName: z.string(), number: z.string().nullable(), expectedOn: dateSchema, partName: z.string(), inTime: z.boolean() })),
  said: saidSchema,
});
export type JobPart = z.infer<typeof jobPartSchema>;

export const jobToolSchema = z.object({
  name: z.string(),
  /** The household's tool; null where it is not on the list of tools. */
  tool: z.string().nullable(),
  state: z.enum(['owned', 'borrowed', 'missing', 'not-listed']),
  where: z.string().nullable(),
  lender: z.string().nullable(),
  until: dateSchema.nullable(),
  lacking: z.boolean(),
  tasks: z.array(z.string()),
});

/** All that one session needs in hand: read from top to bottom it is the order of the sheet. */
export const jobSheetSchema = z.object({
  today: dateSchema,
  session: z.object({ id: z.string(), day: dateSchema, place: z.string(), placeName: z.string(), placeKind: z.enum(['home', 'garage']), state: sessionStateSchema, note: z.string(), passed: z.boolean() }),
  /** Minutes of what is still to be done, each access once; and of how many tasks nobody has said how long they take. */
  minutes: z.int(),
  withoutMinutes: z.int(),
  /** Before the first step: the maker and local rules first, then the gravest. */
  cautions: z.array(cautionSchema),
  tools: z.array(jobToolSchema),
  /** A garage brings its own: `garage`, and then no part is listed. */
  partsFrom: z.enum(['home', 'garage']),
  parts: z.array(jobPartSchema),
  cars: z.array(carJobSchema),
  disposal: z.array(z.object({ what: disposalSchema, said: saidSchema, tasks: z.array(z.string()) })),
});
export type JobSheet = z.infer<typeof jobSheetSchema>;

/** The sheet of one service item alone, as it would be worked. */
export const sheetViewSchema = z.object({
  item: z.string(),
  itemName: z.string(),
  car: z.string(),
  carName: z.string(),
  hasSheet: z.boolean(),
  startedFrom: z.string().nullable(),
  suggested: z.string().nullable(),
  cautions: z.array(cautionSchema),
  tools: z.array(jobToolSchema),
  job: carJobSchema,
  disposal: jobSheetSchema.shape.disposal,
});
