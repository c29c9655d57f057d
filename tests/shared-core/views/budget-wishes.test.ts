import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';
import { standing, wishFor, wishHousehold } from '../ledger/wish-household.ts';

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

/** Springs that a garage puts in for 90.00, with a plate for 25.00 beside; a check for 50.00 is kept there on 10 December. */
function planned(): MemoryHousehold {
  const household = wishHousehold();
  household.must('ledger-settings.set', { savedBefore: 50_000 });
  household.must('place.set', { id: 'corner', name: 'the corner', kind: 'garage' });
  household.must('item.add', { id: 'check', car: 'pip', name: 'check', work: 'check', place: 'garage', garagePrice: 5000, history: 'unknown', interval: { repeat: { months: 120, distance: null } } });
  household.must('session.keep', { sessions: [{ id: 's', day: day('2026-12-10'), place: 'corner', tasks: [{ kind: 'item', id: 'check' }] }] });
  wishFor(household, 'w', ['springs'], { place: 'garage', garagePrice: 9000, others: [{ text: 'plate', priceMinor: 2500 }] });
  return household;
}

describe('a wish in a kept session', () => {
  // By hand: 50.00, and 118.00 + 25.00 + 90.00.
  test('costs what it cost before it was planned, parts and all, and once', () => {
    const household = planned();
    expect(household.must('budget.show', { wishes: true }).total.plannedMinor).toBe(28_300);
    household.must('wish.plan', { wish: 'w', session: 's' });
    const budget = household.must('budget.show', { wishes: true });
    expect([budget.total.plannedMinor, budget.wishes?.added]).toEqual([28_300, []]);
    expect(household.must('budget.show', {}).total.plannedMinor).toBe(28_300);
  });

  test('for which the garage named a sum is paid with that, and not again as a wish', () => {
    const household = planned();
    household.must('wish.plan', { wish: 'w', session: 's' });
    const item = standing(household, 'w').item ?? '';
    household.must('booking.ask', { session: 's', askedOn: day('2026-11-20'), wanted: ['check', item].map((id) => ({ car: 'pip', task: { kind: 'item', id }, text: id })) });
    household.must('booking.quote', { session: 's', quote: { on: day('2026-11-21'), totalMinor: 20_000 } });
    const budget = household.must('budget.show', { wishes: true });
    expect([budget.lines.map((line) => [line.kind, line.amountMinor]), budget.wishes?.added]).toEqual([[['visit', 20_000]], []]);
  });

  test('has no price where something of it has none, and that is named', () => {
    const household = planned();
    household.must('wish.set', { id: 'w', others: [{ text: 'plate', priceMinor: null }] });
    household.must('wish.plan', { wish: 'w', session: 's' });
    const budget = household.must('budget.show', { wishes: true });
    expect([budget.total.plannedMinor, budget.missing.map((one) => one.name)]).toEqual([5000, ['w']]);
  });
});

describe('what is put aside for a wish', () => {
  test('takes nothing off anything else in the budget, and off its own item what it is worth', () => {
    const household = planned();
    household.must('item.add', { id: 'other', car: 'alder', name: 'springs of another', history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs: [{ specification: 'springs', quantity: 1 }] });
    household.must('lot.set', { id: 'l', part: 'sp', quantity: 1, receivedOn: day('2026-11-01'), paidMinor: 11_000 });
    const due = () => household.must('budget.show', {}).lines.flatMap((line) => (line.key === 'item/check' ? [] : [[line.name, line.amountMinor]]));
    expect(due()).toEqual([['springs of another', 0]]);
    household.must('wish.put-aside', { wish: 'w', lots: ['l'] });
    expect(due()).toEqual([['springs of another', 11_800]]);
    household.must('wish.plan', { wish: 'w', session: 's' });
    expect(due()).toEqual([['w', 11_500], ['springs of another', 11_800]]);
  });
});
