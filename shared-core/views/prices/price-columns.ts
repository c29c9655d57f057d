import { z } from 'zod';
import { dateSchema } from '../../calendar/date-schema.ts';
import { DATE_ORDERS } from '../../calendar/date-text.ts';
import { idSchema } from '../../result/id.ts';
import { refusedBy } from '../../result/refused-by.ts';
import { delimiters, MOST_COLUMNS } from '../import/import-choices.ts';

/** What a column of a price list may hold. */
export const priceColumns = ['supplier', 'number', 'name', 'pack', 'price', 'date'] as const;
export type PriceColumn = (typeof priceColumns)[number];

/** What a person says of a price list; null, and what is left out, is looked for in the list itself. */
export const priceChoicesSchema = z.strictObject({
  /** Which column holds what, 1 the first; null: none does. */
  columns: z.partialRecord(z.enum(priceColumns), z.int().min(1).max(MOST_COLUMNS).nullable()).default({}),
  hasHeader: z.boolean().nullable().default(null),
  delimiter: z.enum(delimiters, refusedBy('import-delimiter')).nullable().default(null),
  dateOrder: z.enum(DATE_ORDERS).nullable().default(null),
  decimalMark: z.enum(['.', ',']).nullable().default(null),
  /** Whose prices they are, in rows that name nobody. */
  supplier: idSchema.nullable().default(null),
  /** The day on which they were seen, in rows that have none; null: today. */
  seenOn: dateSchema.nullable().default(null),
});
export type PriceChoices = z.output<typeof priceChoicesSchema>;

/** Heads by which a column is known, the surest first. */
const HEADS: Readonly<Record<PriceColumn, readonly string[]>> = {
  supplier: ['supplier', 'seller', 'shop', 'vendor', 'from', 'merchant'],
  number: ['number', 'part number', 'part no', 'no', 'article number', 'article no', 'article', 'item number', 'item no', 'sku', 'code', 'order number', 'reference', 'ref'],
  name: ['part', 'name', 'part name', 'description', 'item', 'product', 'title', 'article name'],
  pack: ['in a pack', 'pack', 'pack size', 'size', 'quantity', 'qty', 'contents', 'content', 'amount', 'unit'],
  price: ['price of a pack', 'price', 'unit price', 'pack price', 'net price', 'gross price', 'each', 'cost', 'list price'],
  date: ['date', 'seen', 'seen on', 'price date', 'valid from', 'as of', 'on'],
};

/** What a column holds by its head, with how sure the word is, 0 the surest; a currency behind it does not count. @example priceColumnOf('Price (GBP)') //=> { column: 'price', rank: 1 } */
export function priceColumnOf(head: string): { readonly column: PriceColumn; readonly rank: number } | null {
  const words = head.slice(0, 80).normalize('NFKC').toLowerCase().replace(/[_()[\]{}:;,./\\#-]+/g, ' ').trim().split(/\s+/);
  const bare = words.filter((word, at) => at === 0 || !/^([a-z]{3}|\p{Sc})$/u.test(word) || HEADS.price.includes(word)).join(' ');
  for (const text of [words.join(' '), bare]) {
    const column = priceColumns.find((one) => HEADS[one].includes(text));
    if (column !== undefined) return { column, rank: HEADS[column].indexOf(text) };
  }
  return null;
}
