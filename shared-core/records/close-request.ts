import { z } from 'zod';
import { renewalSchema } from '../care/renewal.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { wasteSchema } from '../parts/waste.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { followUpRuleSchema } from '../work/task-sheet.ts';
import { addRecordRequest } from './add-record.ts';

const record = addRecordRequest.shape;
const renewal = renewalSchema.shape;
const waste = wasteSchema.shape;

/** An obligation met in the session: the test passed. */
const metSchema = z.strictObject({ obligation: renewal.obligation, lastValidDay: dateSchema.optional(), paidMinor: renewal.paidMinor.default(null), reference: renewal.reference.default(null), papers: renewal.papers.default([]) });

/** What was read at a step and is kept as a measurement; `fresh`: of the new part. */
const keptValueSchema = z.strictObject({ value: idSchema, fresh: z.boolean().default(false) });

/** What was done on one car. Lines are of its items; what is not among them is left for another day. */
export const closeCarSchema = z.strictObject({
  car: idSchema,
  reading: typedDistanceSchema.nullable().default(null),
  lines: z.array(record.lines.element).max(100).default([]),
  met: z.array(metSchema).max(20).default([]),
  measured: z.array(keptValueSchema).max(100).default([]),
  followUps: z.array(z.strictObject({ ...followUpRuleSchema.shape, item: idSchema.nullable().default(null), text: plainText(200) })).max(1000).default([]),
  doneBy: record.doneBy, approvedBy: record.approvedBy, reference: record.reference, method: record.method,
  costs: record.costs, printedTotalMinor: record.printedTotalMinor, lotsUsed: record.lotsUsed, papers: record.papers, note: record.note,
  /** What becomes of photographs that no record or renewal takes: kept among the papers of the car, or set aside. Asked for where there are any. */
  photos: z.enum(['keep', 'set-aside']).optional(),
});
export type CloseCar = z.output<typeof closeCarSchema>;

/** How a session went. */
export const closeSessionRequest = z.strictObject({
  session: idSchema,
  /** The day on which it was done; that of the last tick unless given, else today. */
  date: dateSchema.optional(),
  cars: z.array(closeCarSchema).min(1).max(20),
  wastes: z.array(z.strictObject({ what: waste.what, quantity: waste.quantity.default(null), unit: waste.unit.default(null), where: waste.where.default(null) })).max(20).default([]),
  sure: record.sure,
});
export type CloseSessionRequest = z.output<typeof closeSessionRequest>;
