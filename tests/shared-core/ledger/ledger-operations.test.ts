import { describe, expect, test } from 'vitest';
import type { OperationName } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

function household() {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip' });
  made.must('car.add', { id: 'wren', name: 'Wren' });
  made.must('item.add', { id: 'oil', car: 'pip', name: 'engine oil', interval: { repeat: { months: 12, distance: null } } });
  made.must('record.add', { id: 'r1', car: 'pip', date: day('2026-11-01'), lines: [{ item: 'oil' }] });
  return made;
}

const quote = { car: 'pip', by: 'the garage', on: day('2026-11-01'), things: [{ id: 't1', item: 'oil', text: 'oil' }], totalMinor: 9000 };

describe('what is refused of the ledger', () => {
  test.each<{ case: string; name: OperationName; request: object; code: string }>([
    { case: 'fuel of a year that has not begun', name: 'fuel.set', request: { car: 'pip', year: 2027, paidMinor: 100 }, code: 'year-not-begun' },
    { case: 'fuel below nothing', name: 'fuel.set', request: { car: 'pip', year: 2026, paidMinor: -1 }, code: 'not-an-amount' },
    { case: 'fuel of no car', name: 'fuel.set', request: { car: 'x', year: 2026, paidMinor: 1 }, code: 'unknown-car' },
    { case: 'a figure that is not there', name: 'fuel.remove', request: { id: 'x' }, code: 'unknown-yearly-fuel' },
    { case: 'put by since never', name: 'ledger-settings.set', request: { monthlyMinor: 100 }, code: 'saving-since-when' },
    { case: 'put by since tomorrow', name: 'ledger-settings.set', request: { monthlyMinor: 100, savingSince: '2026-11-26' }, code: 'date-in-future' },
    { case: 'a price for nothing', name: 'quote.set', request: { ...quote, things: [] }, code: 'quote-covers-nothing' },
    { case: 'a quote without a price', name: 'quote.set', request: { ...quote, totalMinor: null }, code: 'quote-without-price' },
    { case: 'a thing twice', name: 'quote.set', request: { ...quote, things: [...quote.things, ...quote.things] }, code: 'quote-thing-twice' },
    { case: 'an item twice', name: 'quote.set', request: { ...quote, things: [...quote.things, { id: 't2', item: 'oil', text: 'again' }] }, code: 'quote-thing-twice' },
    { case: "another car's item", name: 'quote.set', request: { ...quote, car: 'wren' }, code: 'unknown-item' },
    { case: 'a price for what does not stand in it', name: 'quote.set', request: { ...quote, lines: [{ text: 'x', covers: ['t9'], amountMinor: 1 }] }, code: 'quote-covers-strange' },
    { case: 'named tomorrow', name: 'quote.set', request: { ...quote, on: '2026-11-26' }, code: 'date-in-future' },
    { case: 'valid until before it was named', name: 'quote.set', request: { ...quote, validUntil: '2026-10-01' }, code: 'quote-valid-before' },
    { case: "another car's record", name: 'quote.set', request: { car: 'wren', by: 'x', on: '2026-11-01', things: [{ id: 't', item: null, text: 'x' }], totalMinor: 1, records: ['r1'] }, code: 'unknown-record' },
    { case: 'a paper that is not kept', name: 'quote.set', request: { ...quote, paper: 'a'.repeat(64) }, code: 'unknown-paper' },
    { case: 'a quote that is not there', name: 'quote.remove', request: { id: 'x' }, code: 'unknown-held-quote' },
    { case: 'a cost for an item that was not done', name: 'record.add', request: { car: 'pip', lines: [{ name: 'wash' }], costs: [{ kind: 'parts', text: 'filter', amountMinor: 1, item: 'oil' }] }, code: 'cost-of-no-line' },
    { case: 'a tool with a price and no day', name: 'tool.set', request: { name: 'jack', state: 'owned', paidMinor: 100 }, code: 'tool-bought-when' },
    { case: 'a tool with uses and no price', name: 'tool.set', request: { name: 'jack', state: 'owned', spreadOver: 4 }, code: 'tool-paid-what' },
    { case: 'a tool bought tomorrow', name: 'tool.set', request: { name: 'jack', state: 'owned', paidMinor: 100, boughtOn: '2026-11-26' }, code: 'date-in-future' },
    { case: 'a tool over no use', name: 'tool.set', request: { name: 'jack', state: 'owned', paidMinor: 100, boughtOn: '2026-11-01', spreadOver: 0 }, code: 'not-uses-of-a-tool' },
  ])('$case', ({ name, request, code }) => {
    const made = household();
    const before = made.entries.length;
    const reply = made.call(name, request as never);
    expect([reply.ok ? 'taken' : reply.refusal.code, made.entries.length]).toEqual([code, before]);
  });

  test("a tool that was paid for is not taken away, a year's fuel is entered anew in its place", () => {
    const made = household();
    made.must('tool.set', { id: 'jack', name: 'jack', state: 'owned', paidMinor: 100, boughtOn: day('2026-11-01') });
    const removed = made.call('tool.remove', { id: 'jack' });
    expect(removed.ok ? 'taken' : removed.refusal.code).toBe('tool-has-a-price');
    made.must('fuel.set', { car: 'pip', year: 2025, paidMinor: 100 });
    made.must('fuel.set', { car: 'pip', year: 2025, paidMinor: 250 });
    expect(made.must('ledger.show', {}).fuel.map((one) => one.paidMinor)).toEqual([250]);
  });
});

describe('fuel of a year', () => {
  test('is of the years that the car was here, the first and the last among them', () => {
    const made = memoryHousehold();
    made.must('car.add', { id: 'heron', name: 'Heron', keptSince: day('2021-12-31') });
    made.must('car.leave', { car: 'heron', on: day('2024-01-01'), how: 'sold' });
    const entered = (year: number) => {
      const set = made.call('fuel.set', { car: 'heron', year, paidMinor: 100 });
      return set.ok ? 'entered' : set.refusal.code;
    };
    expect([2020, 2021, 2024, 2025].map(entered)).toEqual(['fuel-before-car', 'entered', 'entered', 'fuel-after-car']);
  });
});

describe('what the ledger does not hold is said', () => {
  test('a garage without a cost, a lot without a price that was used, a tool without uses, and a part that seems counted twice', () => {
    const made = household();
    made.must('specification.set', { id: 's', name: 's', unit: 'litre' });
    made.must('part.set', { id: 'can', name: 'oil', meets: ['s'] });
    made.must('lot.set', { id: 'priced', part: 'can', quantity: 5, receivedOn: day('2026-01-01'), paidMinor: 5000 });
    made.must('lot.set', { id: 'unpriced', part: 'can', quantity: 5, receivedOn: day('2026-01-01') });
    made.must('record.add', { id: 'r2', car: 'pip', date: day('2026-11-02'), place: 'garage', lines: [{ name: 'wash' }] });
    made.must('record.add', { id: 'r3', car: 'pip', date: day('2026-11-03'), title: 'Oil', lines: [{ item: 'oil' }], costs: [{ kind: 'parts', text: 'oil', amountMinor: 4000 }], lotsUsed: [{ lot: 'priced', quantity: 4 }, { lot: 'unpriced', quantity: 1 }] });
    made.must('tool.set', { id: 'jack', name: 'jack', state: 'owned', paidMinor: 100, boughtOn: day('2026-11-01') });
    expect(made.must('ledger.show', {}).notes.map((note) => note.code)).toEqual(['ledger-note-garage-without-cost', 'ledger-note-lot-without-cost', 'ledger-note-shelf-twice', 'ledger-note-tool-not-spread']);
  });

  test('what was paid before the car was here is not counted, and said', () => {
    const made = memoryHousehold();
    made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-01-01'), keptSince: day('2024-01-01') });
    made.must('record.add', { car: 'pip', date: day('2023-01-01'), lines: [{ name: 'oil' }], printedTotalMinor: 9000 });
    made.must('record.add', { car: 'pip', date: day('2025-01-01'), lines: [{ name: 'oil' }], printedTotalMinor: 8000 });
    const { paid, notes } = made.must('ledger.show', {});
    expect([paid.paidMinor, notes.map((note) => note.code)]).toEqual([8000, ['ledger-note-others-paid']]);
  });
});
