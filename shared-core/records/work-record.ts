import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { readings } from '../fleet/reading.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { lots } from '../parts/lot.ts';
import { quantitySchema } from '../units/quantity.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { minorSchema } from '../units/money.ts';
import { papers } from './paper.ts';

/** One line of what was done: an item of the car, or a line of its own. */
export const recordLineSchema = z.strictObject({
  item: idSchema.nullable(),
  name: plainText(120),
  work: z.enum(['replace', 'check']),
  outcome: z.enum(['done', 'good', 'watch', 'acted', 'not-done']),
  minutes: z.int().min(1).max(6000).nullable(),
  note: longText(500),
});
export type RecordLine = z.infer<typeof recordLineSchema>;

/** One amount of money; deposits and discounts may be negative. `shelf`: what came off the shelf, which was paid for when it was bought. */
export const costLineSchema = z.strictObject({
  kind: z.enum(['parts', 'labour', 'consumables', 'tools', 'fee', 'deposit', 'discount', 'other', 'shelf']),
  text: plainText(120),
  amountMinor: minorSchema,
  /** What it was for, where it was for one of the record's items alone. */
  item: idSchema.optional(),
});
export type CostLine = z.infer<typeof costLineSchema>;

/** What was done to a car on a day. Each field stands in the journal by its own digest, so that each can be withheld. */
export const workRecordSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  date: dateSchema,
  title: plainText(120),
  place: z.enum(['home', 'garage']),
  placeName: plainText(80).nullable(),
  /** Who did the work. */
  doneBy: plainText(80).nullable(),
  /** Who vouches for it, with a stamp, certificate or reference where there is one. */
  approvedBy: plainText(80).nullable(),
  reference: plainText(120).nullable(),
  /** How it is vouched for: a stamp in the paper book, or an entry in a digital service record. Absent: not said. */
  vouched: z.enum(['stamp', 'digital']).optional(),
  /** By what it was done: handbook page, maker's sheet. */
  method: plainText(160).nullable(),
  reading: idSchema.nullable(),
  lines: z.array(recordLineSchema).min(1).max(100),
  costs: z.array(costLineSchema).max(100),
  /** The total printed on the receipt, kept as printed. */
  printedTotalMinor: minorSchema.nullable(),
  lotsUsed: z.array(z.strictObject({ lot: idSchema, quantity: quantitySchema })).max(60),
  papers: z.array(sha256Schema).max(40),
  note: longText(4000),
  /** Written from memory, long afterwards. */
  reconstructed: z.boolean(),
});
export type WorkRecord = z.infer<typeof workRecordSchema>;

export const workRecords = family('work-record', 'records', workRecordSchema);

const options = {
  car: (record: WorkRecord) => record.car,
  refersTo: (record: WorkRecord) => [
    ...refers(cars, record.car),
    ...refers(readings, record.reading),
    ...refers(serviceItems, ...record.lines.map((line) => line.item), ...record.costs.map((line) => line.item ?? null)),
    ...refers(lots, ...record.lotsUsed.map((use) => use.lot)),
    ...refers(papers, ...record.papers),
  ],
};

/** Work written down. */
export const workRecorded = factEntry('work-recorded', workRecords, options);
