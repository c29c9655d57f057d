import { addMonths } from '../calendar/add-months.ts';
import { addDays, monthOf, type LocalDate } from '../calendar/local-date.ts';
import type { ToldUse } from '../fleet/told-use.ts';

/** Days in which a car rests: from the first to the last, both included. */
export interface RestingStretch {
  readonly from: LocalDate;
  readonly to: LocalDate;
}

/**
 * When a car rests between two days: its laid-up months and its dated lay-ups, what touches made one.
 *
 * @example restingStretches({ laidUpMonths: [1], layUps: [] }, '2026-01-15', '2026-03-01') //=> [{ from: '2026-01-15', to: '2026-01-31' }]
 */
export function restingStretches(told: Pick<ToldUse, 'laidUpMonths' | 'layUps'>, from: LocalDate, to: LocalDate): RestingStretch[] {
  const dated = told.layUps.map((one) => ({ from: one.from, to: one.to ?? to }));
  const all = [...monthStretches(told.laidUpMonths, from, to), ...dated]
    .map((one) => ({ from: one.from < from ? from : one.from, to: one.to > to ? to : one.to }))
    .filter((one) => one.from <= one.to)
    .sort((a, b) => (a.from < b.from ? -1 : 1));
  const apart: { from: LocalDate; to: LocalDate }[] = [];
  for (const one of all) {
    const last = apart.at(-1);
    if (last === undefined || addDays(last.to, 1) < one.from) apart.push(one);
    else if (one.to > last.to) last.to = one.to;
  }
  return apart;
}

function monthStretches(months: readonly number[], from: LocalDate, to: LocalDate): RestingStretch[] {
  const stretches: RestingStretch[] = [];
  if (months.length === 0) return stretches;
  for (let first = addDays(from, 1 - Number(from.slice(8))); first <= to; first = addMonths(first, 1)) {
    if (months.includes(monthOf(first))) stretches.push({ from: first, to: addDays(addMonths(first, 1), -1) });
  }
  return stretches;
}
