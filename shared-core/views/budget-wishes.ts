import { addMonths } from '../calendar/add-months.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { BudgetExtra } from '../ledger/budget-input.ts';
import { householdAccount } from '../ledger/household-account.ts';
import { wishes } from '../ledger/wish.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { openCosts, wishSavings } from './wishes-view.ts';

/**
 * What the wishes add to a budget: each in the month in which it is paid for by what is put by, at what it costs yet. One without a price, or
 * that is never paid for, adds nothing, and one in a kept session stands in the budget already, on its day or in what the garage asks for the visit.
 */
export function wishExtras(facts: Facts, today: LocalDate, months: number, inBudget: ReadonlySet<string>): readonly BudgetExtra[] {
  const costs = openCosts(facts, today);
  const plan = wishSavings(facts, today, householdAccount(facts, today), costs);
  return plan.wishes.flatMap(({ id, paidForOn }): BudgetExtra[] => {
    const [wish, cost] = [facts.get(wishes, id), costs.get(id)];
    if (wish === null || cost === undefined || paidForOn === null || cost.unpriced.length > 0) return [];
    if (wish.item !== null && inBudget.has(taskKey({ kind: 'item', id: wish.item }))) return [];
    return [{ id, name: wish.name, car: wish.car, month: monthOf(today, paidForOn, months), lowMinor: cost.lowMinor, likelyMinor: cost.likelyMinor, highMinor: cost.likelyMinor }];
  });
}

/** Which month of a budget a day lies in: 0 the first; the number of months where it lies past them. */
function monthOf(today: LocalDate, day: LocalDate, months: number): number {
  for (let month = 0; month < months; month += 1) if (day < addMonths(today, month + 1)) return month;
  return months;
}
