import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

const INTERVAL = { repeat: { months: 12, distance: null } };

/** Oil and a filter of the car Pip, for which somebody named 123.45. */
function quoted(): MemoryHousehold {
  const household = partsHousehold();
  household.must('item.add', { id: 'oil', car: 'pip', name: 'oil and filter', history: 'never-done', interval: INTERVAL, needs: [{ specification: 'oil', quantity: 4 }, { specification: 'filter-pip', quantity: 1 }] });
  household.must('item.add', { id: 'look', car: 'pip', name: 'look at the belt', work: 'check', history: 'never-done', interval: INTERVAL });
  household.must('item.add', { id: 'wipers', car: 'pip', name: 'wipers', work: 'replace', history: 'never-done', interval: INTERVAL });
  return household;
}

function held(household: MemoryHousehold, item: string, records: readonly string[]): readonly [number | null, string] {
  household.must('quote.set', { id: 'q', car: 'pip', by: 'a garage', on: day('2026-11-02'), things: [{ id: 'a', item, text: item }], lines: [{ text: item, covers: ['a'], amountMinor: 12_345 }], records: [...records] });
  const [view] = household.must('quotes.show', {}).quotes;
  return [view?.savedMinor ?? null, view?.said.code ?? ''];
}

function record(household: MemoryHousehold, more: Partial<RequestOf<'record.add'>>): readonly string[] {
  return [household.must('record.add', { id: 'r', car: 'pip', date: day('2026-11-20'), lines: [{ item: 'oil', name: 'oil and filter', work: 'replace' }], ...more }).record.id];
}

describe('a quote held against records', () => {
  test.each<{ case: string; more: Partial<RequestOf<'record.add'>>; item?: string; saved: number | null }>([
    { case: 'a record that says nothing of money claims no saving', more: {}, saved: null },
    { case: 'nor one of a garage', more: { place: 'garage' }, saved: null },
    { case: 'nor one where the shelf gave but some of what it takes', more: { lotsUsed: [{ lot: 'can-1', quantity: 4 }] }, saved: null },
    // 4 of 5 litres at 30.00.
    { case: 'the shelf gave all of it: 24.00 and 7.00', more: { lotsUsed: [{ lot: 'can-1', quantity: 4 }, { lot: 'f1-1', quantity: 1 }] }, saved: 12_345 - 3100 },
    { case: 'nothing was paid, and that is said', more: { printedTotalMinor: 0 }, saved: 12_345 },
    { case: 'what it cost is said', more: { costs: [{ kind: 'parts', text: 'oil and filter', amountMinor: 4000 }] }, saved: 8345 },
    { case: 'a check that needs nothing costs nothing', more: { lines: [{ item: 'look', name: 'look at the belt', work: 'check' }] }, item: 'look', saved: 12_345 },
  ])('$case', ({ more, item, saved }) => {
    const household = quoted();
    household.must('lot.set', { id: 'can-1', part: 'can', quantity: 5, receivedOn: day('2026-11-01'), paidMinor: 3000 });
    household.must('lot.set', { id: 'f1-1', part: 'f1', quantity: 1, receivedOn: day('2026-11-01'), paidMinor: 700 });
    expect(held(household, item ?? 'oil', record(household, more))).toEqual([saved, saved === null ? 'quote-no-cost' : 'quote-whole-saves']);
  });

  test('what an earlier keeper paid is no cost of one’s own, and a record named twice counts once', () => {
    const household = quoted();
    const [id = ''] = record(household, { costs: [{ kind: 'parts', text: 'oil and filter', amountMinor: 4000 }] });
    expect(held(household, 'oil', [id, id])[0]).toBe(8345);
    household.must('car.change', { id: 'pip', keptSince: day('2026-11-24') });
    expect(held(household, 'oil', [id])[0]).toBeNull();
  });
});

describe('a quote held against what is likely', () => {
  test('what is put in without that anybody says what it takes has no cost, until it was paid for alone', () => {
    const household = quoted();
    expect(held(household, 'wipers', [])[0]).toBeNull();
    household.must('record.add', { car: 'pip', date: day('2025-11-20'), lines: [{ item: 'wipers', name: 'wipers', work: 'replace' }], costs: [{ kind: 'parts', text: 'wipers', amountMinor: 1500 }] });
    expect(held(household, 'wipers', [])[0]).toBe(10_845);
    expect(held(household, 'look', [])[0]).toBe(12_345);
  });
});
