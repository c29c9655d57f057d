import { z } from 'zod';
import { dateSchema } from '../../calendar/date-schema.ts';
import { DATE_ORDERS } from '../../calendar/date-text.ts';
import { sha256Schema } from '../../result/id.ts';
import { refusedBy } from '../../result/refused-by.ts';
import { delimiters } from '../import/import-choices.ts';
import { LARGEST_TABLE_BYTES } from '../import/import-request.ts';
import { saidSchema } from '../plan-said.ts';
import { priceChoicesSchema, priceColumns } from './price-columns.ts';

const tooLarge = refusedBy('import-file-large');

/** A price list as bytes or as text, and what the person says of it. */
export const previewPricesRequest = z.strictObject({
  ...priceChoicesSchema.shape,
  base64: z.string().max(Math.ceil(LARGEST_TABLE_BYTES / 3) * 4, tooLarge).nullable().default(null),
  text: z.string().max(LARGEST_TABLE_BYTES, tooLarge).nullable().default(null),
  name: z.string().max(1000).nullable().default(null),
});

/** The same, to be stored; with what the preview answered, what has changed since is refused and not stored. */
export const keepPricesRequest = z.strictObject({ ...previewPricesRequest.shape, digest: sha256Schema.nullable().default(null), outcome: sha256Schema.nullable().default(null) });
export type KeepPricesRequest = z.output<typeof keepPricesRequest>;

/** What a row comes to: a new offer, a new price, seen again at the same; known and not older; no part or supplier for it; or bad. */
export const priceOutcomeSchema = z.enum(['new-offer', 'new-price', 'seen-again', 'known', 'no-part', 'refused']);
export type PriceOutcome = z.infer<typeof priceOutcomeSchema>;

export const priceRowSchema = z.object({
  line: z.int(),
  /** The row as written, shortened. */
  written: z.string(),
  outcome: priceOutcomeSchema,
  supplierName: z.string().nullable(), partName: z.string().nullable(), quantity: z.number().nullable(), unit: z.string().nullable(),
  priceMinor: z.int().nullable(),
  /** What it was before. */
  beforeMinor: z.int().nullable(),
  seenOn: dateSchema.nullable(),
  /** Why it is left out, or what is to be known of it. */
  said: saidSchema.nullable(),
});
export type PriceRow = z.infer<typeof priceRowSchema>;

const questionSchema = z.object({ answer: z.enum(['columns', 'supplier', 'dateOrder', 'decimalMark']), text: z.string(), options: z.array(z.object({ value: z.string(), text: z.string() })) });
export type PriceQuestion = z.infer<typeof questionSchema>;

export const priceViewSchema = z.object({
  file: z.string().nullable(),
  /** Of the file's bytes, and of all that is said here of rows: `prices.keep` takes both. */
  digest: sha256Schema,
  outcome: sha256Schema,
  /** No question is open, and something would be stored. */
  ready: z.boolean(),
  currency: z.string(),
  delimiter: z.enum(delimiters),
  hasHeader: z.boolean(),
  dateOrder: z.enum(DATE_ORDERS).nullable(),
  /** Each column by its number, with its head and its first cells. */
  heads: z.array(z.object({ column: z.int(), head: z.string().nullable(), first: z.array(z.string()) })),
  columns: z.record(z.enum(priceColumns), z.int().nullable()),
  questions: z.array(questionSchema),
  rows: z.array(priceRowSchema),
  counts: z.record(priceOutcomeSchema, z.int()),
});
export type PriceView = z.infer<typeof priceViewSchema>;

export const keptPricesSchema = z.object({ ...priceViewSchema.shape, stored: z.int() });
