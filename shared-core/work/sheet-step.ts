import { z } from 'zod';
import { measureKindSchema, measureNameSchema, measurePlaceSchema } from '../care/measure-kind.ts';
import { jointDataSchema } from '../fleet/card-figure.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { torqueUnitSchema } from '../units/torque.ts';
import { disposalSchema } from './disposal.ts';
import { hazardSchema } from './hazard.ts';

/** A figure of the car's data card by its key. The number itself stands on the card alone. `name` is what a figure of the keeper's own is called. */
export const figureRefSchema = z.strictObject({ figure: idSchema, name: plainText(80).nullable().default(null) });
export type FigureRef = z.infer<typeof figureRefSchema>;

const noJoint = { joint: 'bolt', thread: null, strength: null, seat: null } as const;

/** A torque by a figure of the data card, or the keeper's own with where it comes from. */
export const stepTorqueSchema = z.discriminatedUnion('by', [
  figureRefSchema.extend({ by: z.literal('figure') }),
  z.strictObject({
    by: z.literal('own'),
    name: plainText(80),
    typed: z.strictObject({ value: z.number(), unit: torqueUnitSchema }),
    on: jointDataSchema.default(noJoint),
    source: plainText(120),
    /** The keeper has looked again: it is as it is printed, however unlikely. */
    sure: z.boolean().default(false),
  }),
]);
export type StepTorque = z.infer<typeof stepTorqueSchema>;

/** A fluid that a step takes, what it must meet and how much of it, by figures of the data card. */
export const stepFluidSchema = z.strictObject({ name: plainText(80), specification: figureRefSchema.nullable().default(null), quantity: figureRefSchema.nullable().default(null) });
export type StepFluid = z.infer<typeof stepFluidSchema>;

/** What is measured at a step; a thing of the keeper's own has a name. */
export const stepMeasureSchema = z.strictObject({ kind: measureKindSchema, name: measureNameSchema.nullable().default(null), place: measurePlaceSchema.nullable().default(null) });

/** What is opened up or closed again, by the name that items give the access. */
export const stepAccessSchema = z.strictObject({ name: plainText(40), way: z.enum(['open', 'close']) });

/**
 * When a step comes among those of all tasks of a car: what is done before anything is opened (running it warm), what drains, work, what is
 * filled in, what needs the engine to run, levels and last looks. So an engine never runs for one task while another has it drained.
 */
export const turnSchema = z.enum(['before', 'drain', 'work', 'fill', 'run', 'level']);
export type Turn = z.infer<typeof turnSchema>;

/** A step as it is sent: whatever it does not have may be left out. */
export const newStepSchema = z.strictObject({
  id: idSchema.optional(),
  text: plainText(600),
  turn: turnSchema.default('work'),
  access: stepAccessSchema.nullable().default(null),
  torques: z.array(stepTorqueSchema).max(8).default([]),
  fluids: z.array(stepFluidSchema).max(4).default([]),
  /** Other figures of the card that are wanted in hand: pressures, a gap, jacking points. */
  figures: z.array(figureRefSchema).max(12).default([]),
  tools: z.array(plainText(80)).max(20).default([]),
  measure: stepMeasureSchema.nullable().default(null),
  hazards: z.array(hazardSchema).max(20).default([]),
  disposal: z.array(disposalSchema).max(10).default([]),
});
export type NewStep = z.infer<typeof newStepSchema>;

const fields = newStepSchema.shape;

/** One step of a task, as it stands. Its id stays when the sheet is changed. */
export const sheetStepSchema = z.strictObject({
  id: idSchema,
  text: fields.text,
  turn: turnSchema,
  access: stepAccessSchema.nullable(),
  torques: fields.torques.unwrap(),
  fluids: fields.fluids.unwrap(),
  figures: fields.figures.unwrap(),
  tools: fields.tools.unwrap(),
  measure: stepMeasureSchema.nullable(),
  hazards: fields.hazards.unwrap(),
  disposal: fields.disposal.unwrap(),
});
export type SheetStep = z.infer<typeof sheetStepSchema>;
