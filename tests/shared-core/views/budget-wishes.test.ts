import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

/** A radio for 90.00 and springs for 300.00; 30.00 are put by each month since today, nothing was there before. */
function household() {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip' });
  made.must('ledger-settings.set', { monthlyMinor: 3000, savingSince: day('2026-11-25') });
  made.must('wish.set', { id: 'radio', car: 'pip', name: 'radio', others: [{ text: 'radio', priceMinor: 9000 }] });
  made.must('wish.set', { id: 'springs', car: 'pip', name: 'springs', others: [{ text: 'springs', priceMinor: 30_000 }] });
  made.must('wish.set', { id: 'seat', car: 'pip', name: 'seat', others: [{ text: 'seat', priceMinor: null }] });
  return made;
}

describe('what wishes do to the budget ahead', () => {
  // By hand: 90.00 are there on 25 February 2027 (month 3 begins that day), 390.00 after 13 months on 25 December 2027 (month 13).
  test('each is paid in the month in which enough is put by; without a price it adds nothing', () => {
    const budget = household().must('budget.show', { wishes: true });
    expect(budget.wishes).toMatchObject({ without: { likelyMinor: 0, highMinor: 0 }, added: [{ wish: 'radio', month: 3, minor: 9000 }, { wish: 'springs', month: 13, minor: 30_000 }] });
    expect([budget.total.plannedMinor, budget.total.likelyMinor]).toEqual([39_000, 39_000]);
    expect(budget.months.map((one) => one.plannedMinor).flatMap((minor, month) => (minor === 0 ? [] : [[month, minor]]))).toEqual([[3, 9000], [13, 30_000]]);
  });

  test('a shorter look ahead holds only what is paid for by then; unasked none is in it', () => {
    const made = household();
    expect(made.must('budget.show', { wishes: true, months: 12 }).wishes?.added.map((one) => one.wish)).toEqual(['radio']);
    const plain = made.must('budget.show', {});
    expect([plain.wishes, plain.total.likelyMinor]).toEqual([null, 0]);
  });
});
