import { z } from 'zod';
import { dateSchema } from '../../calendar/date-schema.ts';
import { DATE_ORDERS } from '../../calendar/date-text.ts';
import { sha256Schema } from '../../result/id.ts';
import { distanceUnitSchema } from '../../units/distance-schema.ts';
import { importCarSchema } from './import-cars.ts';
import { delimiters, importColumns } from './import-choices.ts';

/** Something said of a row or a table: a code, and its sentence. */
const saidSchema = z.object({ code: z.string(), text: z.string() });

/** One piece of work of a row, as it would be recorded. */
export const importedLineSchema = z.object({ text: z.string(), item: z.string().nullable(), name: z.string(), work: z.enum(['replace', 'check']) });

/**
 * What a row comes to. `stored`: it is, or would be. `set-aside`: stored, its reading doubtful and to be asked about.
 * `duplicate`: it stands already and is skipped. `waiting`: it needs an answer. `refused`: it is left out.
 */
export const importedRowSchema = z.object({
  /** The line in the file at which the row begins, 1 the first. */
  line: z.int(),
  state: z.enum(['stored', 'set-aside', 'duplicate', 'waiting', 'refused']),
  car: z.string().nullable(),
  date: dateSchema.nullable(),
  reading: z.object({ value: z.number(), unit: distanceUnitSchema }).nullable(),
  lines: z.array(importedLineSchema),
  outcome: z.enum(['done', 'good', 'watch', 'acted', 'not-done']).nullable(),
  costMinor: z.int().nullable(),
  place: z.enum(['home', 'garage']).nullable(),
  placeName: z.string().nullable(),
  by: z.string().nullable(),
  note: z.string(),
  /** Why it is not simply stored; null where it is. */
  code: z.string().nullable(),
  text: z.string(),
  /** What was made clean in it. */
  cleaned: z.array(saidSchema),
  /** The cells as they stand in the file, each cut after 80 characters. */
  cells: z.array(z.string()),
});
export type ImportedRow = z.infer<typeof importedRowSchema>;

/** Something that the table leaves open. `answer` names the field of the request that settles it. */
export const importQuestionSchema = z.object({
  answer: z.enum(['columns', 'car', 'dateOrder', 'decimalMark', 'unit', 'items']),
  ...saidSchema.shape,
  /** The text in question, where it is about one. */
  subject: z.string().nullable(),
  /** What may be answered. For `columns` a value is written `date=2`; for `items` it is an item's id, or empty: no item. */
  options: z.array(z.object({ value: z.string(), text: z.string(), examples: z.array(z.string()) })),
  /** The likeliest answer, where one is; it is never taken without being given. */
  suggested: z.string().nullable(),
  why: z.string().nullable(),
  /** Lines that wait for it, the first few. */
  lines: z.array(z.int()),
});
export type ImportQuestion = z.infer<typeof importQuestionSchema>;

/** Something found out about the table, how, and what else it might be. */
const found = <Value extends z.ZodType>(value: Value) => z.object({ value: value.nullable(), by: z.enum(['choice', 'table', 'header', 'values', 'car', 'none']), text: z.string(), others: z.array(value) });

export const importViewSchema = z.object({
  kind: z.enum(['readings', 'history']),
  file: z.string().nullable(),
  /** Of the file's bytes: `import.keep` takes it and refuses another file. */
  digest: sha256Schema,
  /** Of all that is said here of rows: `import.keep` takes it and refuses where the rows would no longer come to the same. */
  outcome: sha256Schema,
  /** No question is open, and something would be stored. */
  ready: z.boolean(),
  detected: z.object({
    encoding: z.string(),
    delimiter: found(z.enum(delimiters)),
    hasHeader: found(z.boolean()),
    dateOrder: found(z.enum(DATE_ORDERS)),
    decimalMark: found(z.enum(['.', ','])),
    unit: found(distanceUnitSchema),
    car: found(z.string()),
  }),
  columns: z.array(z.object({ number: z.int(), head: z.string().nullable(), holds: z.enum(importColumns).nullable(), by: z.enum(['choice', 'header', 'values', 'none']), examples: z.array(z.string()) })),
  questions: z.array(importQuestionSchema),
  counts: z.object({ rows: z.int(), stored: z.int(), setAside: z.int(), duplicates: z.int(), refused: z.int(), waiting: z.int(), readings: z.int(), records: z.int() }),
  /** Every car of the household by its name, with what it would be brought. */
  cars: z.array(importCarSchema),
  /** Each text in the column of work, once for a car, and what it is taken for. */
  items: z.array(z.object({
    text: z.string(), car: z.string(), item: z.string().nullable(), name: z.string(),
    how: z.enum(['choice', 'name', 'spelling', 'several', 'none']), rows: z.int(),
    /** Items that may be meant. */
    near: z.array(z.object({ id: z.string(), name: z.string() })),
  })),
  /** The first rows in order of line, as they are understood. */
  first: z.array(importedRowSchema),
  /** Every row that is refused, set aside or a duplicate, in order of line. */
  rows: z.array(importedRowSchema),
});
export type ImportView = z.infer<typeof importViewSchema>;
