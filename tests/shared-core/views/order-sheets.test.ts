import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { orderSheet, type SheetSource } from '../../../shared-core/views/order-sheets.ts';
import { day } from '../calendar/day.ts';

const LINE: SheetSource['lines'][number] = { number: 'F1', numberNow: null, partName: 'Filter', packs: 2, quantity: 1, unit: 'each', priceMinor: 800, depositMinor: 0, for: [{ carName: 'Pip' }, { carName: 'Pip' }, { carName: 'Alder' }] };
const source = (lines: readonly Partial<SheetSource['lines'][number]>[], more: Partial<SheetSource> = {}): SheetSource => ({ supplier: 'north', supplierName: 'North Parts', deliveryMinor: 500, discountMinor: 0, lines: lines.map((line) => ({ ...LINE, ...line })), ...more });
const sheet = (lines: readonly Partial<SheetSource['lines'][number]>[], more: Partial<SheetSource> = {}) => orderSheet(source(lines, more), 'GBP', day('2026-11-25'));

test('the table reads back as it was, with commas, quotes and lines in it', () => {
  const { csv } = sheet([{ partName: 'Filter, "large"' }, { quantity: 5, unit: 'litre' }]);
  const rows = Papa.parse<string[]>(csv.trimEnd()).data;
  expect(rows).toEqual([
    ['supplier', 'number', 'part', 'packs', 'in a pack', 'price of a pack', 'sum', 'deposit', 'currency', 'for'],
    ['North Parts', 'F1', 'Filter, "large"', '2', '1 piece', '8.00', '16.00', '0.00', 'GBP', 'Pip, Alder'],
    ['North Parts', 'F1', 'Filter', '2', '5 litres', '8.00', '16.00', '0.00', 'GBP', 'Pip, Alder'],
  ]);
});

test.each(['=1+1', '+1', '-1', '@x', '\tx', '=a\nb'])('a name that a spreadsheet would reckon with (%j) is made harmless', (name) => {
  const [, row] = Papa.parse<string[]>(sheet([{ partName: name }]).csv.trimEnd()).data;
  expect(row?.[2]).toBe(`'${name}`);
});

test('the e-mail names each line with its price, and what is paid in all; deposits stand beside it', () => {
  // By hand: 2 * 8.00 and 1 * 70.00 are 86.00, with 5.00 and less 1.00 it is 90.00; 10.00 of deposit.
  const { mail, paidMinor } = sheet([{}, { number: null, partName: 'Battery', packs: 1, priceMinor: 7000, depositMinor: 1000, for: [] }], { discountMinor: 100 });
  expect([paidMinor, mail.split('\n')]).toEqual([9000, [
    'To North Parts: please send the following.', '', '2 x Filter F1, 1 piece, 8.00 GBP = 16.00 GBP', '1 x Battery, 1 piece, 70.00 GBP = 70.00 GBP', '',
    'Goods: 86.00 GBP.', 'Delivery: 5.00 GBP.', 'Discount: 1.00 GBP.', 'Together: 90.00 GBP.', 'Deposits beside it, which come back: 10.00 GBP.',
  ]]);
});

test('the list for a counter says whom each is for, by the number that now holds', () => {
  expect(sheet([{ numberNow: 'F7' }, { partName: 'Oil', number: null, packs: 1, quantity: 1, unit: 'litre', for: [] }]).counter.split('\n')).toEqual(['North Parts, 25 Nov 2026', '[ ] 2 x Filter F7 (1 piece): Pip, Alder', '[ ] 1 x Oil (1 litre): the shelf']);
});
