import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { packOf } from '../../../shared-core/views/prices/pack-text.ts';
import { previewPrices } from '../../../shared-core/views/prices/preview-prices.ts';
import { priceChoicesSchema, priceColumnOf, type PriceChoices } from '../../../shared-core/views/prices/price-columns.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest());
let made = 0;
const moment = { today: day('2026-11-25'), now: '2026-11-25T12:00:00.000Z', newId: () => `new-${(made += 1)}` };
const preview = (household: MemoryHousehold, text: string, choices: Partial<PriceChoices> = {}) => previewPrices(household.facts(), text, priceChoicesSchema.parse(choices), { name: null, digest: '0'.repeat(64) }, moment, sha256);
const whole = (household: MemoryHousehold, text: string, choices: Partial<PriceChoices> = {}) => {
  const result = preview(household, text, choices);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
};

describe('a price list', () => {
  test('each row comes to what it says: a new price, seen again, a new offer, known, no part here, bad', () => {
    const household = partsHousehold();
    const { view, entries } = whole(household, [
      'Supplier;Part number;Description;Pack;Price (GBP);Date',
      'North Parts;f-1;;1;8.40;2026-11-20',
      'north parts;;Filter F2;1;9.00;2026-11-20',
      'South Stores;F1;;1;7.10;2026-11-20',
      'North Parts;;Fern oil;5 l;35.00;2026-10-01',
      'North Parts;Z99;;1;1.00;2026-11-20',
      'East Shop;F1;;1;1.00;2026-11-20',
      'North Parts;;Washer W1;10;free;2026-11-20',
      'North Parts;;Fern oil;5 kg;35.00;2026-11-20',
      'North Parts;F1;;1;8.50;2026-11-20',
      'North Parts;;Washer W1;10;3.10;2026-12-01',
    ].join('\n'));
    expect(view.rows.map((row) => [row.line, row.outcome, row.partName, row.priceMinor, row.beforeMinor, row.said?.code ?? null])).toEqual([
      [2, 'new-price', 'Filter F1', 840, 800, null],
      [3, 'seen-again', 'Filter F2', 900, 900, null],
      [4, 'new-offer', 'Filter F1', 710, null, null],
      [5, 'known', 'Fern oil', 3500, 3500, 'price-known'],
      [6, 'no-part', null, null, null, 'price-no-part'],
      [7, 'refused', null, null, null, 'price-unknown-supplier'],
      [8, 'refused', null, null, null, 'import-amount'],
      [9, 'refused', null, null, null, 'price-pack-unit'],
      [10, 'refused', null, null, null, 'price-twice'],
      [11, 'refused', null, null, null, 'date-in-future'],
    ]);
    expect(view.counts).toEqual({ 'new-offer': 1, 'new-price': 1, 'seen-again': 1, 'known': 1, 'no-part': 1, 'refused': 5 });
    expect(entries.map((entry) => entry.values)).toMatchObject([{ id: 'n-f1', priceMinor: 840, number: 'f-1', seenOn: '2026-11-20' }, { id: 'n-f2', priceMinor: 900, seenOn: '2026-11-20' }, { supplier: 'south', part: 'f1', quantity: 1, priceMinor: 710 }]);
  });

  test('asks whose prices they are, and which column holds the price; then nothing is decided', () => {
    const household = partsHousehold();
    const asked = whole(household, 'number,what\nF1,8.40\n');
    expect([asked.view.questions.map((one) => one.answer), asked.view.rows, asked.view.ready]).toEqual([['columns', 'supplier'], [], false]);
    const { view } = whole(household, 'number,what\nF1,8.40\n', { supplier: 'north', columns: { price: 2 } });
    expect([view.questions, view.rows[0]?.outcome, view.rows[0]?.seenOn]).toEqual([[], 'new-price', '2026-11-25']);
  });

  test('dates that may be read two ways are asked about, never guessed', () => {
    const household = partsHousehold();
    const text = 'number,price,date\nF1,8.40,05/11/2026\n';
    expect(whole(household, text, { supplier: 'north' }).view.questions.map((one) => one.answer)).toEqual(['dateOrder']);
    expect(whole(household, text, { supplier: 'north', dateOrder: 'dmy' }).view.rows[0]).toMatchObject({ outcome: 'new-price', seenOn: '2026-11-05' });
    // The other way round it is 11 May, before the price that stands.
    expect(whole(household, text, { supplier: 'north', dateOrder: 'mdy' }).view.rows[0]).toMatchObject({ outcome: 'known', seenOn: '2026-05-11' });
  });

  test('a number that was replaced finds its part; what fits several fits none', () => {
    const household = partsHousehold();
    household.must('number.supersede', { old: 'F0', new: 'F1' });
    household.must('number.supersede', { old: 'F1', new: 'F9' });
    household.must('part.set', { id: 'twin', name: 'Filter twin', number: 'F2' });
    const { view } = whole(household, 'number,price\nF0,8.10\nF9,8.20\nF2,1.00\n', { supplier: 'north' });
    expect(view.rows.map((row) => [row.partName, row.said?.code ?? null])).toEqual([['Filter F1', null], [null, 'price-twice'], [null, 'price-several-parts']]);
  });

  test('tax, deposit and cheaper steps stay as they were; a step that is no cheaper now goes', () => {
    const household = partsHousehold();
    household.must('offer.set', { id: 'n-b1', supplier: 'north', part: 'b1', quantity: 1, priceMinor: 7000, depositMinor: 1000, taxAdded: 2000, breaks: [{ packs: 2, priceMinor: 6500 }, { packs: 5, priceMinor: 5000 }], seenOn: day('2026-11-01') });
    const { entries } = whole(household, 'name,price\nBattery B1,60.00\n', { supplier: 'north' });
    expect(entries[0]?.values).toMatchObject({ id: 'n-b1', priceMinor: 6000, depositMinor: 1000, taxAdded: 2000, breaks: [{ packs: 5, priceMinor: 5000 }] });
  });

  test.each([['', 'import-empty'], ['number,price', 'import-only-head'], ['number,price\nF1,"8', 'import-quotes']])('%j is refused', (text, code) => {
    const refused = preview(partsHousehold(), text, { supplier: 'north' });
    expect(refused.ok ? null : refused.refusal.code).toBe(code);
  });

  test('a day ahead on which they were all seen is refused as that', () => {
    const refused = preview(partsHousehold(), 'number,price\nF1,8.40\n', { supplier: 'north', seenOn: day('2026-11-26') });
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'date-in-future', path: ['seenOn'] } });
    expect(whole(partsHousehold(), 'number,price\nF1,8.40\n', { supplier: 'north', seenOn: day('2026-11-25') }).entries).toHaveLength(1);
  });

  test('a formula is no price', () => {
    expect(whole(partsHousehold(), 'number,price\nF1,=1+1\n', { supplier: 'north' }).view.rows[0]?.said?.code).toBe('import-formula');
  });
});

test.each([['5 l', 'litre', 5], ['500ml', 'litre', 0.5], ['0,5', 'litre', 0.5], ['400 g', 'kilogram', 0.4], ['10 pcs', null, 10], ['1 set', 'set', 1]] as const)('a pack of %s is %s %s', (text, unit, value) => {
  expect(packOf(text, unit)).toEqual({ ok: true, value });
});

test.each([['', 'litre'], ['0', 'litre'], ['-1', 'each'], ['5 kg', 'litre'], ['five', 'each'], ['0.0001', 'litre'], ['1 m', null]] as const)('a pack of %j in %s is refused', (text, unit) => {
  expect(packOf(text, unit).ok).toBe(false);
});

test.each([['Price (GBP)', 'price'], ['Part No.', 'number'], ['Description', 'name'], ['Pack size', 'pack'], ['Valid from', 'date'], ['Seller', 'supplier'], ['price £', 'price'], ['colour', null]] as const)('the head %s is %s', (head, column) => {
  expect(priceColumnOf(head)?.column ?? null).toBe(column);
});
