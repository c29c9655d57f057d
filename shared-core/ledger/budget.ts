import { addMonths } from '../calendar/add-months.ts';
import { addDays, dayNumber, fromDayNumber, type DayNumber, type LocalDate } from '../calendar/local-date.ts';
import { Z_OF_EDGE } from '../fleet/odometer-forecast.ts';
import { largestRemainder } from '../parts/largest-remainder.ts';
import { CASES, drawBudget, isAsked, type BudgetKind, type BudgetSetting, type Drawn, type DrawnCost } from './budget-draws.ts';
import type { BudgetExtra, BudgetInput, BudgetMissing, BudgetPrice, BudgetTask } from './budget-input.ts';
import { timesOf } from './budget-days.ts';
import { distancePath, monthsAfter } from './budget-path.ts';
import { LEAST_PAIRS, yearsBetween, type PriceHabits } from './budget-prices.ts';

/** A sum: 1 in 10 cases below `lowMinor`, as many below as above `likelyMinor`, 1 in 10 above `highMinor`. */
export interface BudgetBand {
  readonly lowMinor: number;
  readonly likelyMinor: number;
  readonly highMinor: number;
  /** The mean of all cases: these add up, where likely sums do not. */
  readonly expectedMinor: number;
  /** What is listed of it: the lines at their likely days and prices, added up. */
  readonly plannedMinor: number;
}

/** One payment that is likely to come. */
export interface BudgetLine {
  readonly key: string;
  readonly kind: BudgetKind;
  readonly car: string | null;
  readonly name: string;
  readonly due: LocalDate;
  readonly on: LocalDate;
  /** Which of the months ahead, 0 the first. */
  readonly month: number;
  readonly amountMinor: number;
  readonly source: BudgetPrice['source'] | 'wished';
  /** How many prices of its own stand behind it. */
  readonly known: number;
  /** What the shelf takes off it, and what of it is growth of prices until then. */
  readonly offShelfMinor: number;
  readonly grownMinor: number;
  /** In a session that is kept. */
  readonly inSession: boolean;
  readonly late: boolean;
}

/** One thing that moves the sum. */
export interface BudgetDriver {
  readonly key: string;
  readonly kind: BudgetKind;
  readonly car: string | null;
  readonly name: string;
  readonly expectedMinor: number;
  /** Its share in how far the sum may lie off, of 1; all shares add up to 1. */
  readonly share: number;
}

/** A budget ahead. */
export interface Budget {
  readonly from: LocalDate;
  /** The last day in it. */
  readonly to: LocalDate;
  readonly total: BudgetBand;
  readonly months: readonly (BudgetBand & { readonly from: LocalDate; readonly to: LocalDate })[];
  readonly quarters: readonly (BudgetBand & { readonly from: LocalDate; readonly to: LocalDate })[];
  /** Null: the household's. */
  readonly cars: readonly (BudgetBand & { readonly car: string | null })[];
  readonly kinds: readonly (BudgetBand & { readonly kind: BudgetKind })[];
  /** By day. */
  readonly lines: readonly BudgetLine[];
  /** The largest share first. */
  readonly drivers: readonly BudgetDriver[];
  /** What is in no sum. */
  readonly missing: readonly BudgetMissing[];
  readonly prices: PriceHabits;
  /** Null: too little to look back on, and nothing is in the sums for it. */
  readonly unplanned: { readonly count: number; readonly years: number } | null;
  readonly likelyLagDays: number;
}

const MONTHS_A_QUARTER = 3;

/**
 * What keeping the cars will cost in the months ahead: drawn many times over from when things fall due, what they cost and what happens
 * unforeseen, always the same for the same input. Nothing is assumed of what has no price; it is named.
 *
 * @example budgetAhead(input).total //=> { lowMinor: 190000, likelyMinor: 214500, highMinor: 262000, ... }
 */
export function budgetAhead(input: BudgetInput): Budget {
  const drawn = drawBudget(input);
  const { setting, months, costs } = drawn;
  const lines = linesOf(drawn);
  const planned = (keep: (line: BudgetLine) => boolean) => lines.filter(keep).reduce((sum, line) => sum + line.amountMinor, 0);
  const total = bandOf(sumOf(costs.map((one) => one.cases)), planned(() => true));
  const cars = groups(costs, lines, total, (one) => one.car, [...input.cars.map(({ id }): string | null => id).filter((id) => isAsked(input, id)).sort(), ...(costs.some((one) => one.car === null) ? [null] : [])]);
  const kinds = groups(costs, lines, total, (one) => one.kind, KINDS.filter((kind) => costs.some((one) => one.kind === kind)));
  return {
    from: input.today,
    to: addDays(fromDayNumber(setting.end), -1),
    total,
    months: periods(setting, months, lines, total, 1),
    quarters: periods(setting, months, lines, total, MONTHS_A_QUARTER),
    cars: cars.map(({ group, band }) => ({ car: group, ...band })),
    kinds: kinds.map(({ group, band }) => ({ kind: group, ...band })),
    lines,
    drivers: driversOf(costs),
    missing: missingOf(setting),
    prices: drawn.prices,
    unplanned: drawn.model === null ? null : { count: drawn.model.count, years: drawn.model.years },
    likelyLagDays: setting.likelyLag,
  };
}

const KINDS: readonly BudgetKind[] = ['item', 'obligation', 'visit', 'unplanned', 'extra'];

/** A budget without what is thought of, and with it: the same cases, so that all that differs is the wish. */
export function budgetBeside(input: BudgetInput, extra: readonly BudgetExtra[]): { readonly without: Budget; readonly with: Budget } {
  return { without: budgetAhead(input), with: budgetAhead({ ...input, extra: [...input.extra, ...extra] }) };
}

/** Whether prices of the household's own past were enough to reckon with growth. */
export function reckonsGrowth({ pairs }: PriceHabits): boolean {
  return pairs >= LEAST_PAIRS;
}

function sumOf(lists: readonly Float64Array[]): Float64Array {
  const sums = new Float64Array(CASES);
  for (const list of lists) for (let at = 0; at < CASES; at += 1) sums[at] = (sums[at] ?? 0) + (list[at] ?? 0);
  return sums;
}

function bandOf(cases: Float64Array, plannedMinor: number): BudgetBand {
  const sorted = cases.toSorted();
  const at = (share: number) => Math.round(sorted[Math.ceil(share * CASES) - 1] ?? 0);
  return { lowMinor: at(0.1), likelyMinor: at(0.5), highMinor: at(0.9), expectedMinor: Math.round(meanOf(cases)), plannedMinor };
}

function meanOf(cases: Float64Array): number {
  return cases.reduce((sum, one) => sum + one, 0) / CASES;
}

/** Bands of parts, whose means are rounded so that they add up to that of the whole. */
function addingUp(parts: readonly { readonly cases: Float64Array; readonly plannedMinor: number }[], { expectedMinor }: BudgetBand): readonly BudgetBand[] {
  if (parts.length === 0) return [];
  const shares = largestRemainder(expectedMinor, parts.map(({ cases }) => Math.round(meanOf(cases) * 1000)));
  return parts.map(({ cases, plannedMinor }, at) => ({ ...bandOf(cases, plannedMinor), expectedMinor: shares[at] ?? 0 }));
}

function groups<Group extends string | null>(costs: readonly DrawnCost[], lines: readonly BudgetLine[], total: BudgetBand, of: (one: DrawnCost | BudgetLine) => string | null, all: readonly Group[]): readonly { readonly group: Group; readonly band: BudgetBand }[] {
  const parts = all.map((group) => ({
    cases: sumOf(costs.filter((one) => of(one) === group).map((one) => one.cases)),
    plannedMinor: lines.filter((line) => of(line) === group).reduce((sum, line) => sum + line.amountMinor, 0),
  }));
  const bands = addingUp(parts, total);
  return all.flatMap((group, at) => {
    const band = bands[at];
    return band === undefined ? [] : [{ group, band }];
  });
}

function periods({ input, starts }: BudgetSetting, months: readonly Float64Array[], lines: readonly BudgetLine[], total: BudgetBand, size: number): Budget['months'] {
  const firsts = months.flatMap((_, at) => (at % size === 0 ? [at] : []));
  const parts = firsts.map((first) => ({
    cases: sumOf(months.slice(first, first + size)),
    plannedMinor: lines.filter((line) => line.month >= first && line.month < first + size).reduce((sum, line) => sum + line.amountMinor, 0),
  }));
  const bands = addingUp(parts, total);
  return firsts.flatMap((first, at) => {
    const band = bands[at];
    const last = Math.min(first + size, starts.length - 1);
    return band === undefined ? [] : [{ from: addMonths(input.today, first), to: addDays(addMonths(input.today, last), -1), ...band }];
  });
}

/** The listed payments: each time of each priced task at the likely use and price, visits and what is thought of. */
function linesOf({ setting, prices }: Drawn): readonly BudgetLine[] {
  const { input, likely } = setting;
  const tasks = likely.filter(({ task }) => isAsked(input, task.car)).flatMap(({ task, times }) => times.flatMap((time, at) => taskLine(setting, prices, task, time.due, time.day, at)));
  const visits = input.visits.flatMap(({ key, name, on, shares }) => shares.filter(({ car }) => isAsked(input, car)).flatMap(({ car, minor }): readonly BudgetLine[] => {
    const day = Math.max(setting.today, dayNumber(on));
    if (day >= setting.end) return [];
    return [{ key: `${key}/${car}`, kind: 'visit', car, name, due: fromDayNumber(day), on: fromDayNumber(day), month: monthOf(setting, day), amountMinor: minor, source: 'quoted', known: 1, offShelfMinor: 0, grownMinor: 0, inSession: true, late: false }];
  }));
  const extra = input.extra.filter(({ month, car }) => isAsked(input, car) && month >= 0 && month < input.months).map(({ id, name, car, month, likelyMinor }): BudgetLine => {
    const on = addMonths(input.today, month);
    return { key: `extra/${id}`, kind: 'extra', car, name, due: on, on, month, amountMinor: likelyMinor, source: 'wished', known: 1, offShelfMinor: 0, grownMinor: 0, inSession: false, late: false };
  });
  return [...tasks, ...visits, ...extra].sort((a, b) => (a.on === b.on ? (a.key < b.key ? -1 : 1) : a.on < b.on ? -1 : 1));
}

function taskLine(setting: BudgetSetting, { growth }: PriceHabits, task: BudgetTask, due: DayNumber, day: DayNumber, at: number): readonly BudgetLine[] {
  const { price } = task;
  if (price === null || price.minor === 0 || (at === 0 && task.firstInQuote)) return [];
  const on = fromDayNumber(day);
  const grown = Math.exp(growth * yearsBetween(price.pricedOn, on));
  const off = Math.min(price.minor, setting.off.get(task.key)?.[at] ?? 0);
  const amountMinor = Math.round((price.minor - off) * grown);
  return [{
    key: task.key, kind: task.kind, car: task.car, name: task.name, due: fromDayNumber(due), on, month: monthOf(setting, day),
    amountMinor, source: price.source, known: price.known, offShelfMinor: Math.round(off), grownMinor: amountMinor - Math.round(price.minor - off),
    inSession: at === 0 && task.sessionOn !== null, late: due < setting.today,
  }];
}

function monthOf({ starts, input }: BudgetSetting, day: DayNumber): number {
  return Math.max(0, Math.min(input.months - 1, starts.findLastIndex((start) => start <= day)));
}

/** Source: a variance is the sum of its parts' covariances with the whole (textbook). */
function driversOf(costs: readonly DrawnCost[]): readonly BudgetDriver[] {
  const total = sumOf(costs.map((one) => one.cases));
  const mean = meanOf(total);
  const variance = total.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  const drivers = costs.map(({ key, kind, car, name, cases }) => {
    const own = meanOf(cases);
    let together = 0;
    for (let at = 0; at < CASES; at += 1) together += ((cases[at] ?? 0) - own) * ((total[at] ?? 0) - mean);
    return { key, kind, car, name, expectedMinor: Math.round(own), share: variance === 0 ? 0 : together / variance };
  });
  return drivers.sort((a, b) => b.share - a.share || (a.key < b.key ? -1 : 1));
}

/** Items without a due day, and what may fall due in these months (1 in 10 before its early edge) and has no price. */
function missingOf({ input, today, end }: BudgetSetting): readonly BudgetMissing[] {
  const here = new Map(input.cars.map((car) => [car.id, car]));
  const after = monthsAfter();
  const unpriced = input.tasks.filter((task) => {
    const usage = here.get(task.car)?.usage ?? null;
    if (task.price !== null || !isAsked(input, task.car)) return false;
    const times = timesOf(task, { today, end, z: Z_OF_EDGE, path: usage === null ? null : distancePath(usage, Z_OF_EDGE, end), monthsAfter: after, lag: () => 0 });
    return times.length > (task.firstInQuote ? 1 : 0);
  });
  const named = unpriced.map(({ key, car, name }): BudgetMissing => ({ key, car, name, why: 'unpriced' }));
  return [...input.unknown, ...named].filter((one) => isAsked(input, one.car)).sort((a, b) => (a.key < b.key ? -1 : 1));
}
