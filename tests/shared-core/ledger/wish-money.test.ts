import { describe, expect, test } from 'vitest';
import { householdAccount, unaccounted } from '../../../shared-core/ledger/household-account.ts';
import { sumOf } from '../../../shared-core/ledger/posting.ts';
import { paidFor } from '../../../shared-core/ledger/years.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { wishFor, wishHousehold } from './wish-household.ts';

const today = day('2026-11-25');
/** What was paid, and for whom; it always adds up. */
function paid(household: MemoryHousehold) {
  const account = householdAccount(household.facts(), today);
  const { paidMinor, carsMinor, wishesMinor, shelfMinor } = paidFor(account);
  expect([unaccounted(account), carsMinor + wishesMinor + shelfMinor]).toEqual([0, paidMinor]);
  return { paidMinor, carsMinor, wishesMinor, shelfMinor };
}
const wishCosts = (household: MemoryHousehold, wish: string) => sumOf(householdAccount(household.facts(), today).costs.filter(({ side }) => side.kind === 'wish' && side.wish === wish));

/** Springs of 110.01 on the shelf, and 3 washers for 1.00; wished for and planned. */
function withSprings(): { readonly household: MemoryHousehold; readonly item: string } {
  const household = wishHousehold();
  household.must('lot.set', { id: 'springs', part: 'sp', quantity: 1, receivedOn: day('2026-11-20'), paidMinor: 11_001 });
  household.must('lot.set', { id: 'washers', part: 'w1', quantity: 3, receivedOn: day('2026-11-20'), paidMinor: 100 });
  household.must('wish.set', { id: 'a', car: 'pip', name: 'a', needs: [{ specification: 'springs', quantity: 1 }, { specification: 'washer', quantity: 1 }] });
  return { household, item: household.must('wish.plan', { wish: 'a' }).item.id };
}

// By hand: 111.01 were paid in all, for the springs and the washers.
describe('cars, shelf and wishes are what was paid', () => {
  test('on the shelf, then put aside', () => {
    const { household } = withSprings();
    expect(paid(household)).toEqual({ paidMinor: 11_101, carsMinor: 0, wishesMinor: 0, shelfMinor: 11_101 });
    household.must('wish.put-aside', { wish: 'a', lots: ['springs'] });
    expect(paid(household)).toEqual({ paidMinor: 11_101, carsMinor: 0, wishesMinor: 11_001, shelfMinor: 100 });
    household.must('wish.put-aside', { wish: 'a', lots: ['springs', 'washers'] });
    expect(paid(household)).toEqual({ paidMinor: 11_101, carsMinor: 0, wishesMinor: 11_101, shelfMinor: 0 });
  });

  test('come true in a record of its own: all of it is the wish’s, and what is left of its lots is free again', () => {
    const { household, item } = withSprings();
    household.must('wish.put-aside', { wish: 'a', lots: ['springs', 'washers'] });
    household.must('record.add', { car: 'pip', date: today, lines: [{ name: 'springs', item }], lotsUsed: [{ lot: 'springs', quantity: 1 }, { lot: 'washers', quantity: 1 }], costs: [{ kind: 'consumables', text: 'grease', amountMinor: 250 }] });
    // A third of 1.00 is 0.33; 0.67 lie on the shelf.
    expect(paid(household)).toEqual({ paidMinor: 11_351, carsMinor: 0, wishesMinor: 11_001 + 33 + 250, shelfMinor: 67 });
    expect(wishCosts(household, 'a')).toBe(11_284);
  });

  test('come true beside other work: only what is its own is the wish’s', () => {
    const { household, item } = withSprings();
    household.must('item.add', { id: 'oil', car: 'pip', name: 'oil', history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs: [{ specification: 'oil', quantity: 4 }, { specification: 'washer', quantity: 1 }] });
    household.must('record.add', {
      car: 'pip', date: today, place: 'garage', lines: [{ name: 'springs', item }, { name: 'oil', item: 'oil' }], lotsUsed: [{ lot: 'springs', quantity: 1 }, { lot: 'washers', quantity: 2 }],
      costs: [{ kind: 'labour', text: 'springs', amountMinor: 6000, item }, { kind: 'labour', text: 'oil', amountMinor: 3000, item: 'oil' }, { kind: 'fee', text: 'waste', amountMinor: 199 }], printedTotalMinor: 9200,
    });
    // Springs 110.01 and 60.00 are the wish's. Washers serve both (0.67), so they are the car's, as the fee and the 0.01 that the printed total has more.
    expect(paid(household)).toEqual({ paidMinor: 11_101 + 9200, carsMinor: 3000 + 199 + 1 + 67, wishesMinor: 17_001, shelfMinor: 33 });
  });

  test('let go, its parts lie on the shelf again', () => {
    const { household } = withSprings();
    household.must('wish.put-aside', { wish: 'a', lots: ['springs'] });
    household.must('wish.unplan', { wish: 'a' });
    household.must('wish.let-go', { wish: 'a' });
    expect(paid(household)).toEqual({ paidMinor: 11_101, carsMinor: 0, wishesMinor: 0, shelfMinor: 11_101 });
  });

  test('a wish that used what was put aside for another: each part is whose record it is', () => {
    const { household, item } = withSprings();
    wishFor(household, 'b', ['washer']);
    household.must('wish.put-aside', { wish: 'b', lots: ['washers'] });
    household.must('record.add', { car: 'pip', date: today, lines: [{ name: 'springs', item }], lotsUsed: [{ lot: 'washers', quantity: 3 }, { lot: 'springs', quantity: 1 }] });
    expect([paid(household), wishCosts(household, 'b')]).toEqual([{ paidMinor: 11_101, carsMinor: 0, wishesMinor: 11_101, shelfMinor: 0 }, 0]);
  });

  test('what is left of a lot of a wish that came true is of the next wish alone, in whichever order they stand', () => {
    const { household, item } = withSprings();
    household.must('wish.put-aside', { wish: 'a', lots: ['springs', 'washers'] });
    household.must('record.add', { car: 'pip', date: today, lines: [{ name: 'springs', item }], lotsUsed: [{ lot: 'springs', quantity: 1 }, { lot: 'washers', quantity: 1 }] });
    wishFor(household, 'b', ['washer']);
    household.must('wish.put-aside', { wish: 'b', lots: ['washers'] });
    // A third of 1.00 went into the first.
    expect(household.must('ledger.show', {}).wishes.map((one) => [one.wish, one.minor])).toEqual([['a', 11_034], ['b', 67]]);
    expect(paid(household).wishesMinor).toBe(11_101);
    const shown = household.must('wishes.show', {}).wishes;
    expect(shown.map((one) => [one.wish.id, one.needs.map(({ aside }) => aside)])).toEqual([['b', [1]], ['a', shown.find((one) => one.wish.id === 'a')?.needs.map(() => 0)]]);
  });
});
