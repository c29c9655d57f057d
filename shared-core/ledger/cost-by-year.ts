import { yearOf, type LocalDate } from '../calendar/local-date.ts';
import type { Renewal } from '../care/renewal.ts';
import type { WorkRecord } from '../records/work-record.ts';

/** What one car cost in one year, in minor units, by kind. */
export interface YearCost {
  readonly year: number;
  readonly totalMinor: number;
  readonly byKind: Readonly<Record<string, number>>;
}

/**
 * Cost of a car for each year, latest year first: the cost lines of its records and what was paid for its obligations.
 * A record with a printed total and no lines counts its total as `other`; where both stand, the difference counts as
 * `rounding`, for the printed total is kept and never mended.
 *
 * @example costByYear([record], [renewal])[0] //=> { year: 2026, totalMinor: 8990, byKind: { parts: 3990, fee: 5000 } }
 */
export function costByYear(records: readonly WorkRecord[], renewals: readonly Renewal[]): readonly YearCost[] {
  const years = new Map<number, Map<string, number>>();
  const add = (date: LocalDate, kind: string, amount: number) => {
    const kinds = years.get(yearOf(date)) ?? new Map<string, number>();
    years.set(yearOf(date), kinds);
    kinds.set(kind, (kinds.get(kind) ?? 0) + amount);
  };
  for (const record of records) for (const [kind, amount] of amountsOf(record)) add(record.date, kind, amount);
  for (const renewal of renewals) if (renewal.paidMinor !== null) add(renewal.on, 'obligation', renewal.paidMinor);
  return [...years]
    .sort(([a], [b]) => b - a)
    .map(([year, kinds]) => ({ year, totalMinor: [...kinds.values()].reduce((sum, amount) => sum + amount, 0), byKind: Object.fromEntries(kinds) }));
}

/** What a record cost: its printed total where there is one, else the sum of its lines. */
export function totalOf(record: WorkRecord): number {
  return record.printedTotalMinor ?? record.costs.reduce((sum, line) => sum + line.amountMinor, 0);
}

function amountsOf(record: WorkRecord): readonly (readonly [string, number])[] {
  const lines = record.costs.map((line) => [line.kind, line.amountMinor] as const);
  if (record.printedTotalMinor === null) return lines;
  const sum = lines.reduce((total, [, amount]) => total + amount, 0);
  const rest = record.printedTotalMinor - sum;
  if (rest === 0) return lines;
  return [...lines, [lines.length === 0 ? 'other' : 'rounding', rest] as const];
}
