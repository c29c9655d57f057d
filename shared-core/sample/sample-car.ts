import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { carSchema } from '../fleet/car.ts';
import { readingSourceSchema } from '../fleet/reading.ts';
import { costLineSchema } from '../records/work-record.ts';
import { idSchema } from '../result/id.ts';
import { photographSubjectSchema } from './sample-drawing.ts';
import { sampleAllowanceSchema, sampleRecallSchema } from './sample-duties.ts';
import { sampleWearSchema } from './sample-wear.ts';

/** A request of an operation, passed on as it stands: the operation itself checks it. */
const requestSchema = z.record(z.string(), z.json());

/** How the car was driven and how often it was read. */
const odometerSchema = z.strictObject({
  from: dateSchema,
  start: z.number(),
  perYear: z.array(z.number()).min(1),
  seed: z.int(),
  /** Regular readings: from a day on, the gap, the last one. */
  readFrom: dateSchema,
  gapDays: z.tuple([z.int(), z.int()]),
  lastRead: dateSchema,
  /** The day a new instrument was put in, and what it then showed. */
  replaced: z.strictObject({ on: dateSchema, shows: z.number() }).optional(),
});

/** A reading beside the regular ones; its value comes from the car's story. */
const singleReadingSchema = z.strictObject({
  on: dateSchema,
  entered: dateSchema.optional(),
  source: readingSourceSchema,
  note: z.string().default(''),
  /** The place of a digit that was lost in typing, from 0. */
  loseDigit: z.int().optional(),
  /** The day on which the keeper gave the right value. */
  correctedOn: dateSchema.optional(),
});
export type SingleReading = z.infer<typeof singleReadingSchema>;

/** A dated lay-up or a change of use: the fields of the operation, and the day it was written down. */
const sampleUseSchema = z.looseObject({ id: idSchema, on: dateSchema });

/** Yearly renewals of an obligation: one for each amount paid. */
const renewalsSchema = z.strictObject({
  first: dateSchema,
  everyMonths: z.int().default(12),
  paidMinor: z.array(z.int()),
  reference: z.string().optional(),
  /** How many of the latest have their certificate kept. */
  certificates: z.int().default(0),
  /** The odometer is read at each. */
  reads: z.boolean().default(false),
});
export type Renewals = z.infer<typeof renewalsSchema>;

const sampleObligationSchema = z.strictObject({
  obligation: z.looseObject({ id: idSchema }),
  /** A first roadworthiness test is counted from first registration by so many years. */
  firstTestYears: z.int().optional(),
  renewals: renewalsSchema.optional(),
});

const photographSchema = z.strictObject({ draw: z.literal('photograph'), subject: photographSubjectSchema, wear: z.number().min(0).max(1) });
export type Photograph = z.infer<typeof photographSchema>;

const recordPaperSchema = z.discriminatedUnion('draw', [
  /** A receipt over the costs of the record, from the garage or from a shop. */
  z.strictObject({ draw: z.literal('receipt'), heading: z.string().optional() }),
  z.strictObject({ draw: z.literal('certificate'), statements: z.array(z.string()) }),
  photographSchema,
]);
export type RecordPaper = z.infer<typeof recordPaperSchema>;

/** A work record: the fields of the operation, and how it came to be written. */
const recordSchema = z.looseObject({
  id: idSchema,
  on: dateSchema,
  /** The day it was written down; the day of the work unless given. */
  entered: dateSchema.optional(),
  placeName: z.string().nullable().default(null),
  reference: z.string().nullable().default(null),
  costs: z.array(costLineSchema).default([]),
  printedTotalMinor: z.int().nullable().default(null),
  /** The odometer was read. */
  read: z.boolean().default(false),
  papers: z.array(recordPaperSchema).default([]),
  /** A later correction: the day, and the fields given anew with the reason. */
  amended: z.strictObject({ on: dateSchema, fields: requestSchema }).optional(),
});
export type SampleRecord = z.infer<typeof recordSchema>;

const observationSchema = z.looseObject({
  id: idSchema,
  on: dateSchema,
  photograph: photographSchema.optional(),
  closed: z.strictObject({ on: dateSchema, record: idSchema }).optional(),
});
export type SampleObservation = z.infer<typeof observationSchema>;

/** A follow-up: the fields of the operation, and when and how it was ticked. */
const sampleFollowUpSchema = z.looseObject({ id: idSchema, on: dateSchema, done: z.strictObject({ on: dateSchema, note: z.string() }).optional() });

/** A figure of the data card: the fields of the operation; entered soon after the car unless given. */
const sampleFigureSchema = z.looseObject({
  key: idSchema,
  /** It stands on the car's sheet, which is kept as a paper. */
  sheet: z.boolean().default(false),
});

/** A maker's sheet that figures of the data card stand on. */
const cardSheetSchema = z.strictObject({ on: dateSchema, heading: z.string(), number: z.string(), statements: z.array(z.string()) });

const sampleServiceSchema = z.looseObject({ id: idSchema, on: dateSchema });

/** A car of the sample as its file tells it, dates already turned into dates. */
export const sampleCarSchema = z.strictObject({
  addedOn: dateSchema,
  car: z.looseObject({ id: idSchema, name: z.string(), unit: carSchema.shape.unit, firstRegistered: dateSchema, laidUpMonths: z.array(z.int()).default([]) }),
  odometer: odometerSchema,
  readings: z.array(singleReadingSchema).default([]),
  layUps: z.array(sampleUseSchema).default([]),
  useChanges: z.array(sampleUseSchema).default([]),
  items: z.array(z.looseObject({ id: idSchema })),
  wear: sampleWearSchema.prefault({}),
  obligations: z.array(sampleObligationSchema),
  allowances: z.array(sampleAllowanceSchema).default([]),
  recalls: z.array(sampleRecallSchema).default([]),
  records: z.array(recordSchema),
  observations: z.array(observationSchema).default([]),
  followUps: z.array(sampleFollowUpSchema).default([]),
  cardSheet: cardSheetSchema.optional(),
  card: z.array(sampleFigureSchema).default([]),
  services: z.array(sampleServiceSchema).default([]),
});
export type SampleCar = z.infer<typeof sampleCarSchema>;
