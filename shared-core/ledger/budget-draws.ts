import { addMonths } from '../calendar/add-months.ts';
import { dayNumber, type DayNumber } from '../calendar/local-date.ts';
import { chanceOf, normalDraw, normalSlices, shuffle, type Chance } from './budget-chance.ts';
import { timesOf, type DueCase, type DueTime } from './budget-days.ts';
import type { BudgetExtra, BudgetInput, BudgetTask, BudgetVisit } from './budget-input.ts';
import { distancePath, monthsAfter } from './budget-path.ts';
import { priceHabits, QUOTE_SPREAD, yearsBetween, type PriceHabits } from './budget-prices.ts';
import { offShelf, type OffShelf } from './budget-shelf.ts';
import { amountDrawn, compoundDrawn, ratesDrawn, unplannedModel, weightsDrawn, type UnplannedModel } from './budget-unplanned.ts';
import { Z_OF_EDGE } from '../fleet/odometer-forecast.ts';

/** Each car's use is drawn from so many equally likely slices, each so many times: even answers from few cases. */
const SLICES = 100;
const ROUNDS = 30;
/** Cases that a budget is made of. */
export const CASES = SLICES * ROUNDS;
const DAYS_A_YEAR = 365.25;

/** What a cost belongs to. */
export type BudgetKind = 'item' | 'obligation' | 'visit' | 'unplanned' | 'extra';

/** What one thing costs in each case, in parts of minor units. */
export interface DrawnCost {
  readonly key: string;
  readonly kind: BudgetKind;
  readonly name: string;
  /** Null: the household's. */
  readonly car: string | null;
  readonly cases: Float64Array;
}

/** Everything that was drawn. */
export interface Drawn {
  readonly costs: readonly DrawnCost[];
  /** By month from today, the first first: what all things cost in it in each case. */
  readonly months: readonly Float64Array[];
  readonly prices: PriceHabits;
  readonly model: UnplannedModel | null;
  readonly setting: BudgetSetting;
}

/** The days and the likely times that all parts of a budget share. */
export interface BudgetSetting {
  readonly input: BudgetInput;
  readonly today: DayNumber;
  /** The first day of each month ahead, and the first day after the last. */
  readonly starts: readonly DayNumber[];
  readonly end: DayNumber;
  /** The times at the likely use, by task. */
  readonly likely: readonly { readonly task: BudgetTask; readonly times: readonly DueTime[] }[];
  readonly off: OffShelf;
  /** Days from due to done, as they were, in order; and the middle one, 0 where nothing is known. */
  readonly lags: readonly number[];
  readonly likelyLag: number;
}

/** What the months ahead are, and when each task likely falls due in them. */
export function budgetSetting(input: BudgetInput): BudgetSetting {
  const today = dayNumber(input.today);
  const starts = Array.from({ length: input.months + 1 }, (_, at) => dayNumber(addMonths(input.today, at)));
  const end = starts.at(-1) ?? today;
  const lags = [...input.habits.lagDays].sort((a, b) => a - b);
  const likelyLag = lags[lags.length >> 1] ?? 0;
  const after = monthsAfter();
  const cases = new Map(input.cars.map(({ id, usage }) => [id, { today, end, z: 0, path: usage === null ? null : distancePath(usage, 0, end), monthsAfter: after, lag: () => likelyLag }]));
  const here = input.tasks.filter((task) => cases.has(task.car));
  const likely = [...here].sort((a, b) => (a.key < b.key ? -1 : 1)).map((task) => ({ task, times: timesOf(task, cases.get(task.car) ?? NO_CASE) }));
  return { input, today, starts, end, likely, off: offShelf(likely, input.stock), lags, likelyLag };
}

const NO_CASE: DueCase = { today: 0, end: 0, z: 0, path: null, monthsAfter: () => 0, lag: () => 0 };

/** Where the costs of one thing are put as they are drawn. */
interface Sheet {
  readonly setting: BudgetSetting;
  readonly prices: PriceHabits;
  readonly months: readonly Float64Array[];
  /** Growth of prices in a year, in each case. */
  readonly growth: Float64Array;
}

/**
 * Draws what is to come, case by case: in each, every car is driven at one pace (so its items move together), prices grow at one rate,
 * and each thing has chances of its own that nothing else moves.
 */
export function drawBudget(input: BudgetInput): Drawn {
  const setting = budgetSetting(input);
  const prices = priceHabits(input.habits);
  const sheet: Sheet = { setting, prices, months: Array.from({ length: input.months }, () => new Float64Array(CASES)), growth: growthDrawn(prices) };
  const model = unplannedModel(input);
  const costs = [
    ...input.cars.filter(({ id }) => isAsked(input, id)).flatMap(({ id }) => carCosts(sheet, id)),
    ...[...input.visits].sort(byKey).flatMap((visit) => visitCosts(sheet, visit)),
    ...unplannedCosts(sheet, model),
    ...[...input.extra].sort((a, b) => (a.id < b.id ? -1 : 1)).filter((one) => isAsked(input, one.car) && one.month >= 0 && one.month < input.months).map((extra) => extraCost(sheet, extra)),
  ];
  return { costs: costs.sort(byKey), months: sheet.months, prices, model, setting };
}

/** Whether the costs of a car (null: the household's) are asked for. */
export function isAsked({ only, cars }: BudgetInput, car: string | null): boolean {
  if (car === null) return only === null;
  return (only === null || car === only) && cars.some(({ id }) => id === car);
}

function byKey(a: { readonly key: string }, b: { readonly key: string }): number {
  return a.key < b.key ? -1 : a.key > b.key ? 1 : 0;
}

function growthDrawn({ growth, growthSpread }: PriceHabits): Float64Array {
  const chance = chanceOf('growth of prices');
  return Float64Array.from({ length: CASES }, () => growth + growthSpread * normalDraw(chance));
}

/** All that is paid again and again for one car; each case takes one slice of its use, each slice as often as any other. */
function carCosts(sheet: Sheet, car: string): readonly DrawnCost[] {
  const { input, today, end, likely } = sheet.setting;
  const usage = input.cars.find((one) => one.id === car)?.usage ?? null;
  const after = monthsAfter();
  const slices = Array.from(normalSlices(SLICES), (z) => ({ today, end, z, path: usage === null ? null : distancePath(usage, z, end), monthsAfter: after }));
  const order = slicesDrawn(chanceOf(`use ${car}`));
  return likely.filter(({ task }) => task.car === car && task.price !== null && (task.price.minor > 0)).map(({ task }) => taskCost(sheet, task, slices, order));
}

function slicesDrawn(chance: Chance): Uint16Array {
  const all = new Uint16Array(CASES);
  const round = new Uint16Array(SLICES);
  for (let at = 0; at < ROUNDS; at += 1) {
    shuffle(chance, round);
    all.set(round, at * SLICES);
  }
  return all;
}

function taskCost(sheet: Sheet, task: BudgetTask, slices: readonly Omit<DueCase, 'lag'>[], order: Uint16Array): DrawnCost {
  const { setting, prices, growth } = sheet;
  const { lags: lagDays } = setting;
  const [chance, days] = [chanceOf(task.key), chanceOf(`days of ${task.key}`)];
  const lag = lagDays.length === 0 ? () => 0 : () => lagDays[Math.floor(days() * lagDays.length)] ?? 0;
  const known = slices.map((slice) => ({ ...slice, lag }));
  // Without a habit to draw, a slice always has the same times.
  const once = task.punctual || lagDays.length === 0 ? known.map((one) => timesOf(task, one)) : null;
  const { minor = 0, known: count = 1, pricedOn = setting.input.today } = task.price ?? {};
  const years = yearsBetween(pricedOn, setting.input.today);
  const off = setting.off.get(task.key) ?? [];
  const cases = new Float64Array(CASES);
  for (let at = 0; at < CASES; at += 1) {
    const slice = order[at] ?? 0;
    const times = once?.[slice] ?? timesOf(task, known[slice] ?? NO_CASE);
    const level = (prices.spread / Math.sqrt(count)) * normalDraw(chance);
    for (let time = task.firstInQuote ? 1 : 0; time < times.length; time += 1) {
      const day = times[time]?.day ?? 0;
      const ahead = years + (day - setting.today) / DAYS_A_YEAR;
      const cost = Math.max(0, minor - (off[time] ?? 0)) * Math.exp((growth[at] ?? 0) * ahead + level + prices.spread * normalDraw(chance));
      put(sheet, cases, at, day, cost);
    }
  }
  return { key: task.key, kind: task.kind, name: task.name, car: task.car, cases };
}

function put({ setting, months }: Sheet, cases: Float64Array, at: number, day: DayNumber, cost: number): void {
  let month = Math.min(months.length - 1, Math.max(0, Math.floor((day - setting.today) / 31)));
  while (month < months.length - 1 && day >= (setting.starts[month + 1] ?? Infinity)) month += 1;
  const list = months[month];
  if (list !== undefined) list[at] = (list[at] ?? 0) + cost;
  cases[at] = (cases[at] ?? 0) + cost;
}

function visitCosts(sheet: Sheet, visit: BudgetVisit): readonly DrawnCost[] {
  const day = Math.max(sheet.setting.today, dayNumber(visit.on));
  if (day >= sheet.setting.end) return [];
  return visit.shares.filter(({ car }) => isAsked(sheet.setting.input, car)).map(({ car, minor }) => {
    const chance = chanceOf(visit.key);
    const cases = new Float64Array(CASES);
    for (let at = 0; at < CASES; at += 1) put(sheet, cases, at, day, minor * Math.exp(QUOTE_SPREAD * normalDraw(chance)));
    return { key: `${visit.key}/${car}`, kind: 'visit', name: visit.name, car, cases };
  });
}

function unplannedCosts(sheet: Sheet, model: UnplannedModel | null): readonly DrawnCost[] {
  if (model === null || model.count === 0) return [];
  const { today, end, input } = sheet.setting;
  const cars = input.cars.map(({ id }) => id).sort();
  const [all, each] = [chanceOf('unplanned'), cars.map((car) => chanceOf(`unplanned ${car}`))];
  const cases = cars.map(() => new Float64Array(CASES));
  const years = (end - today) / DAYS_A_YEAR;
  for (let at = 0; at < CASES; at += 1) {
    const upTo = weightsDrawn(model.amounts.length, all);
    const rates = ratesDrawn(model, cars, all);
    each.forEach((chance, car) => {
      const list = cases[car];
      if (list === undefined || !isAsked(input, cars[car] ?? null)) return;
      for (const one of compoundDrawn((rates[car] ?? 0) * years, () => amountDrawn(model, upTo, chance), chance)) put(sheet, list, at, today + Math.floor(one.at * (end - today)), one.minor);
    });
  }
  return cars.flatMap((car, at) => (isAsked(input, car) ? [{ key: `unplanned/${car}`, kind: 'unplanned', name: 'unplanned', car, cases: cases[at] ?? new Float64Array(CASES) }] : []));
}

/** Straight from likely to the edge on either side, and on beyond it; never below nothing. */
function extraCost(sheet: Sheet, { id, name, car, month, lowMinor, likelyMinor, highMinor }: BudgetExtra): DrawnCost {
  const chance = chanceOf(`extra/${id}`);
  const day = sheet.setting.starts[month] ?? sheet.setting.today;
  const cases = new Float64Array(CASES);
  for (let at = 0; at < CASES; at += 1) {
    const z = normalDraw(chance) / Z_OF_EDGE;
    put(sheet, cases, at, day, Math.max(0, likelyMinor + (z >= 0 ? highMinor - likelyMinor : likelyMinor - lowMinor) * z));
  }
  return { key: `extra/${id}`, kind: 'extra', name, car, cases };
}
