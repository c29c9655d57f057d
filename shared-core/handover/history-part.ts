import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { sha256TextSchema } from '../journal/digest.ts';
import { currencySchema } from '../units/money.ts';
import { historyStatusSchema } from './history-status.ts';
import { packPeriodSchema } from './pack-period.ts';
import { shownValues, type PackEntry } from './journal-part.ts';

/** One entry as a program reads it: the values of its row that are shown, and the names of those that are not. */
export const historyRecordSchema = z.strictObject({
  row: z.int().nonnegative(),
  kind: z.string(),
  version: z.int().positive(),
  subject: z.string(),
  /** When it was written down: the row's moment. */
  entered: z.string(),
  values: z.record(z.string(), z.json()),
  withheld: z.array(z.string()),
});
export type HistoryRecord = z.infer<typeof historyRecordSchema>;

/** A paper in the pack; one with parts made unreadable names the digest of the paper it was made from. */
export const historyPaperSchema = z.strictObject({
  path: z.string(),
  sha256: sha256TextSchema,
  redactedFrom: sha256TextSchema.nullable(),
  /** Where parts are blacked out: on which pages, and how many. */
  blackedOut: z.array(z.strictObject({ page: z.int().positive(), parts: z.int().positive() })).min(1).optional(),
  /** The rows that name this paper, or the one it was made from, in a field that they withhold. */
  namedIn: z.array(z.int().nonnegative()).min(1).optional(),
});
export type HistoryPaper = z.infer<typeof historyPaperSchema>;

/** The pack of an earlier keeper: where it stands in this one, or within which other one it does; neither where it was left out. */
export const historyPreviousSchema = z.strictObject({
  name: z.string(),
  composedOn: dateSchema,
  rows: z.int().positive(),
  /** The digest of its ZIP. */
  sha256: sha256TextSchema,
  path: z.string().nullable(),
  within: z.string().nullable(),
  /** The days it shows; absent where it shows the whole history. */
  period: packPeriodSchema.optional(),
});
export type HistoryPrevious = z.infer<typeof historyPreviousSchema>;

/** `data/history.json`: the same that the PDF says, for programs. `document` is what the PDF was drawn from. */
export const historyPartSchema = z.strictObject({
  format: z.literal('trunnion-history-1'),
  name: z.string(),
  composedOn: dateSchema,
  sample: z.boolean(),
  document: z.json(),
  /** How the car stands on the day, by the six elements of status; packs of before do not have it. */
  status: historyStatusSchema.optional(),
  papers: z.array(historyPaperSchema),
  /** The currency (ISO 4217) of the amounts of its keeper. What came from an earlier keeper may be in another: the entry `pack-taken-in` says so. */
  currency: currencySchema.optional(),
  /** The packs of all earlier keepers, the first one first. */
  previous: z.array(historyPreviousSchema).min(1).optional(),
  /** Where not the whole history is shown: its days. Rows that tell of other days are left out. */
  period: packPeriodSchema.optional(),
  records: z.array(historyRecordSchema),
});
export type HistoryPart = z.infer<typeof historyPartSchema>;

/** The record of an entry, with exactly what the entry shows. */
export function historyRecord(entry: PackEntry): HistoryRecord {
  const { seq, kind, version, subject, at } = entry.row;
  const values = shownValues(entry) as HistoryRecord['values'];
  return { row: seq, kind, version, subject, entered: at, values, withheld: entry.withheld };
}
