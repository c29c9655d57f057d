import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { sayDate } from '../result/words/say.ts';
import { amountText } from '../units/money.ts';
import { say } from '../result/words/say.ts';
import { amountSaid } from './amount-said.ts';
import { csvText } from './csv-text.ts';

/** A row of a sheet: so many packs of a part, by its number, and for which cars. */
export const sheetRowSchema = z.object({
  number: z.string(), part: z.string(), packs: z.int(), pack: z.string(), priceMinor: z.int(), totalMinor: z.int(), depositMinor: z.int(), for: z.string(),
});
export type SheetRow = z.infer<typeof sheetRowSchema>;

/** A sheet for one supplier: to print, as a table (head and cells, amounts as text), as plain text for an e-mail, and what to ask for at a counter. */
export const orderSheetSchema = z.object({
  supplier: z.string(), supplierName: z.string(), on: dateSchema, currency: z.string(),
  rows: z.array(sheetRowSchema),
  goodsMinor: z.int(), deliveryMinor: z.int(), discountMinor: z.int(), depositsMinor: z.int(), paidMinor: z.int(),
  table: z.object({ head: z.array(z.string()), rows: z.array(z.array(z.string())) }),
  /** The table as CSV. */
  csv: z.string(),
  mail: z.string(),
  counter: z.string(),
});
export type OrderSheet = z.infer<typeof orderSheetSchema>;

/** What a sheet is made from: a proposal's order for one supplier, or one that was placed. */
export interface SheetSource {
  readonly supplier: string;
  readonly supplierName: string;
  readonly deliveryMinor: number;
  readonly discountMinor: number;
  readonly lines: readonly {
    readonly number: string | null; readonly numberNow: string | null; readonly partName: string; readonly packs: number; readonly quantity: number; readonly unit: string | null;
    readonly priceMinor: number; readonly depositMinor: number; readonly for: readonly { readonly carName: string }[];
  }[];
}

const HEAD = ['supplier', 'number', 'part', 'packs', 'in a pack', 'price of a pack', 'sum', 'deposit', 'currency', 'for'];

/** Writes the sheets of an order. Prices stand in the mail too, so that what was agreed is agreed by both. */
export function orderSheet(source: SheetSource, currency: string, on: LocalDate): OrderSheet {
  const rows = source.lines.map(rowOf);
  const goodsMinor = rows.reduce((sum, row) => sum + row.totalMinor, 0);
  const depositsMinor = rows.reduce((sum, row) => sum + row.depositMinor, 0);
  const { supplier, supplierName, deliveryMinor, discountMinor } = source;
  const sums = { goodsMinor, deliveryMinor, discountMinor, depositsMinor, paidMinor: goodsMinor + deliveryMinor - discountMinor };
  const amount = (minor: number) => amountText(minor, currency);
  const cells = rows.map((row) => [supplierName, row.number, row.part, String(row.packs), row.pack, amount(row.priceMinor), amount(row.totalMinor), amount(row.depositMinor), currency, row.for]);
  return {
    supplier, supplierName, on, currency, rows, ...sums,
    table: { head: HEAD, rows: cells },
    csv: csvText([HEAD, ...cells]),
    mail: mailText(supplierName, rows, sums, currency),
    counter: counterText(supplierName, rows, on),
  };
}

function rowOf(line: SheetSource['lines'][number]): SheetRow {
  const cars = [...new Set(line.for.map((one) => one.carName))].join(', ');
  return {
    number: line.numberNow ?? line.number ?? '', part: line.partName, packs: line.packs, pack: amountSaid(line.quantity, line.unit), priceMinor: line.priceMinor, totalMinor: line.packs * line.priceMinor, depositMinor: line.packs * line.depositMinor,
    for: cars === '' ? say({ key: 'sheet-for-shelf', values: {} }) : cars,
  };
}

function mailText(supplierName: string, rows: readonly SheetRow[], sums: Pick<OrderSheet, 'goodsMinor' | 'deliveryMinor' | 'discountMinor' | 'depositsMinor' | 'paidMinor'>, currency: string): string {
  const money = (minor: number) => `${amountText(minor, currency)} ${currency}`;
  const line = (key: string, minor: number) => (minor === 0 ? [] : [say({ key, values: { sum: money(minor) } })]);
  return [
    say({ key: 'sheet-mail-greeting', values: { supplier: supplierName } }),
    '',
    ...rows.map((row) => `${row.packs} x ${named(row)}, ${row.pack}, ${money(row.priceMinor)} = ${money(row.totalMinor)}`),
    '',
    ...line('sheet-goods', sums.goodsMinor),
    ...line('sheet-delivery', sums.deliveryMinor),
    ...line('sheet-discount', sums.discountMinor),
    say({ key: 'sheet-paid', values: { sum: money(sums.paidMinor) } }),
    ...line('sheet-deposits', sums.depositsMinor),
  ].join('\n');
}

function counterText(supplierName: string, rows: readonly SheetRow[], on: LocalDate): string {
  return [`${supplierName}, ${sayDate(on)}`, ...rows.map((row) => `[ ] ${row.packs} x ${named(row)} (${row.pack}): ${row.for}`)].join('\n');
}

function named(row: SheetRow): string {
  return row.number === '' ? row.part : `${row.part} ${row.number}`;
}
