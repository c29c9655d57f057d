import { z } from 'zod';
import { DATE_ORDERS } from '../../calendar/date-text.ts';
import { idSchema } from '../../result/id.ts';
import { refusedBy } from '../../result/refused-by.ts';
import { distanceUnitSchema } from '../../units/distance-schema.ts';

/** What a column of an imported table may hold. */
export const importColumns = ['date', 'reading', 'unit', 'car', 'work', 'outcome', 'cost', 'place', 'by', 'note'] as const;
export type ImportColumn = (typeof importColumns)[number];

export const MOST_COLUMNS = 200;

/** The number of a column, 1 the first; null: the table holds no such thing. */
const columnNumber = z.int().min(1).max(MOST_COLUMNS).nullable();

/** Which column holds what, by number; what is left out is looked for. */
export const chosenColumnsSchema = z.partialRecord(z.enum(importColumns), columnNumber);

export const delimiters = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof delimiters)[number];

/** What a person says of a table to be taken in; null, and what is left out, is looked for in the table itself. */
export const importChoicesSchema = z.strictObject({
  /** The car of the rows that name none. */
  car: z.string().min(1).max(80).nullable().default(null),
  columns: chosenColumnsSchema.default({}),
  dateOrder: z.enum(DATE_ORDERS).nullable().default(null),
  /** The unit of the readings that name none. */
  unit: distanceUnitSchema.nullable().default(null),
  /** Which of point and comma stands before parts of one, in numbers that may be read both ways. */
  decimalMark: z.enum(['.', ',']).nullable().default(null),
  delimiter: z.enum(delimiters, refusedBy('import-delimiter')).nullable().default(null),
  hasHeader: z.boolean().nullable().default(null),
  /** What a text in the column of work means: an item of the car; null: no item, a line of its own. */
  items: z.array(z.strictObject({ text: z.string().max(5000), item: idSchema.nullable() })).max(2000).default([]),
});
export type ImportChoices = z.output<typeof importChoicesSchema>;
