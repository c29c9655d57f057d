import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { dayNumber } from '../../../shared-core/calendar/local-date.ts';
import { fitUsage, type Usage } from '../../../shared-core/fleet/usage-rate.ts';
import { makeSeason } from '../../../shared-core/fleet/usage-season.ts';
import type { BudgetInput, BudgetPrice, BudgetTask } from '../../../shared-core/ledger/budget-input.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { day } from '../calendar/day.ts';

export const TODAY = day('2026-11-25');

/** A price as it was entered today. */
export function priced(minor: number, more: Partial<BudgetPrice> = {}): BudgetPrice {
  return { minor, source: 'entered', known: 1, pricedOn: TODAY, goods: [], ...more };
}

/** Something of car `pip` with a date, renewed every 12 months, at 100.00. */
export function task(id: string, more: Partial<BudgetTask> = {}): BudgetTask {
  return {
    key: `obligation/${id}`, car: 'pip', kind: 'obligation', name: id, first: due(day('2027-03-01')), next: { kind: 'certificate', months: 12, keepsDate: true },
    sessionOn: null, lastDone: null, punctual: true, price: priced(10_000), firstInQuote: false, ...more,
  };
}

/** Due on a date and by nothing else. */
export function due(date: LocalDate | null): BudgetTask['first'] {
  return { date, printedDate: null, km: null, reachedOn: null, wear: null };
}

/** A household of one car without a reading. */
export function budgetOf(tasks: readonly BudgetTask[], more: Partial<BudgetInput> = {}): BudgetInput {
  return {
    today: TODAY, months: 24, cars: [{ id: 'pip', name: 'Pip', usage: null }], only: null, tasks, visits: [], stock: [], unplanned: [], watched: [],
    habits: { pastPrices: [], lagDays: [] }, extra: [], unknown: [], ...more,
  };
}

/** A car of about 12 000 km a year, last read at 50 000 km on a date. */
export function usage(on: LocalDate = day('2026-11-20')): Usage {
  const last = dayNumber(on);
  const readings = Array.from({ length: 10 }, (_, at) => ({ day: last - (9 - at) * 90, km: 50_000 - (9 - at) * 2957 }));
  return must(fitUsage({ readings, declaredKmAYear: null, season: makeSeason('none') }), 'usage');
}
