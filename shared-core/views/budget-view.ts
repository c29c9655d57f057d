import { findCar, findHousehold } from '../fleet/find-car.ts';
import type { Car } from '../fleet/car.ts';
import { carsHere } from '../fleet/departure.ts';
import { ask } from '../journal/operation.ts';
import { budgetAhead, reckonsGrowth, type Budget, type BudgetLine } from '../ledger/budget.ts';
import { ok, refuse, type Message, type Result } from '../result/result.ts';
import { amountText } from '../units/money.ts';
import { wishExtras } from './budget-wishes.ts';
import { composeBudget, type ComposedBudget } from './budget-input.ts';
import { budgetRequestSchema, budgetViewSchema, type BudgetLineView, type BudgetView } from './budget-view-schema.ts';
import { said } from './plan-said.ts';

/** As many of what moves the sum most are told. */
const MOST_DRIVERS = 8;

/** What the cars that are here will cost in the months ahead, with a band that holds it 4 in 5 times. */
export const showBudget = ask({
  request: budgetRequestSchema,
  reply: budgetViewSchema,
  answer: (facts, { months, car: wanted, wishes }, { today }) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const here = carsHere(facts);
    const only = wanted === null ? ok(null) : carThatIsHere(findCar(facts, wanted), here);
    if (!only.ok) return only;
    const composed = composeBudget(facts, today, months, only.value);
    const names = new Map(here.map((car) => [car.id, car.name]));
    const without = budgetAhead(composed.input);
    const telling = { composed, names, only: only.value, currency: household.value.currency };
    if (!wishes) return ok(budgetView(without, telling));
    const extra = wishExtras(facts, today, months, new Set(composed.input.tasks.filter((task) => task.sessionOn !== null).map((task) => task.key)));
    const budget = budgetAhead({ ...composed.input, extra });
    const added = extra.filter(({ month, car }) => month < months && (only.value === null || car === only.value.id)).map(({ id, name, month, likelyMinor }) => ({ wish: id, name, month, minor: likelyMinor }));
    return ok({ ...budgetView(budget, telling), wishes: { without: without.total, added } });
  },
});

function carThatIsHere(found: Result<Car>, here: readonly Car[]): Result<Car> {
  if (!found.ok || here.some((car) => car.id === found.value.id)) return found;
  return refuse('budget-car-left', { car: found.value.name }, ['car']);
}

interface Telling {
  readonly composed: ComposedBudget;
  readonly names: ReadonlyMap<string, string>;
  readonly only: Car | null;
  readonly currency: string;
}

function budgetView(budget: Budget, telling: Telling): BudgetView {
  const { names, only, currency } = telling;
  const nameOf = (car: string | null) => (car === null ? null : (names.get(car) ?? car));
  return {
    today: budget.from,
    to: budget.to,
    currency,
    car: only === null ? null : { id: only.id, name: only.name },
    total: budget.total,
    summary: said(summaryOf(budget, currency)),
    months: [...budget.months],
    quarters: [...budget.quarters],
    cars: budget.cars.map((one) => ({ ...one, name: nameOf(one.car) })),
    kinds: [...budget.kinds],
    lines: budget.lines.map((line) => lineView(line, nameOf(line.car), budget, currency)),
    drivers: budget.drivers.filter(({ share }) => share > 0).slice(0, MOST_DRIVERS).map((one) => ({ ...one, carName: nameOf(one.car) })),
    missing: budget.missing.map((one) => ({ ...one, carName: names.get(one.car) ?? one.car, said: said({ key: `budget-missing-${one.why}`, values: {} }) })),
    wishes: null,
    notes: notesOf(budget, telling.composed).map(said),
  };
}

function summaryOf({ total, from, to }: Budget, currency: string): Message {
  if (total.highMinor === 0) return { key: 'budget-nothing', values: { from, to } };
  const money = (minor: number) => `${amountText(minor, currency)} ${currency}`;
  return { key: 'budget-band', values: { from, to, low: money(total.lowMinor), likely: money(total.likelyMinor), high: money(total.highMinor) } };
}

function lineView({ known, ...line }: BudgetLine, carName: string | null, { likelyLagDays }: Budget, currency: string): BudgetLineView {
  const money = (minor: number) => `${amountText(Math.abs(minor), currency)} ${currency}`;
  const shelf = line.offShelfMinor === 0 ? [] : [{ key: 'budget-off-shelf', values: { amount: money(line.offShelfMinor) } }];
  const grown = line.grownMinor === 0 ? [] : [line.grownMinor > 0 ? { key: 'budget-grown', values: { amount: money(line.grownMinor) } } : { key: 'budget-fallen', values: { amount: money(line.grownMinor) } }];
  const reasons = [whenOf(line, likelyLagDays), priceReason(line.source, known), ...shelf, ...grown].map(said);
  return { ...line, carName, why: { text: reasons.map(({ text }) => text).join(' '), reasons } };
}

function whenOf({ late, inSession, due, on }: Omit<BudgetLine, 'known'>, likelyLagDays: number): Message {
  if (inSession) return { key: 'budget-when-session', values: { on } };
  if (late) return { key: 'budget-when-late', values: { due } };
  return due !== on && likelyLagDays !== 0 ? { key: 'budget-when-habit', values: { due } } : { key: 'budget-when-due', values: { due } };
}

function priceReason(source: BudgetLine['source'], known: number): Message {
  if (source === 'as-last-times') return known === 1 ? { key: 'budget-why-as-last-time', values: {} } : { key: 'budget-why-as-last-times', values: { known } };
  return { key: `budget-why-${source}`, values: {} };
}

function notesOf(budget: Budget, { deliveryShare, onOrder, input }: ComposedBudget): readonly Message[] {
  const { missing, likelyLagDays, lines } = budget;
  return [
    ...(missing.length === 0 ? [] : [missing.length === 1 ? { key: 'budget-missing-one', values: {} } : { key: 'budget-missing', values: { count: missing.length } }]),
    unplannedNote(budget),
    growthNote(budget),
    ...(likelyLagDays === 0 ? [] : [likelyLagDays > 0 ? { key: 'budget-habit', values: { days: likelyLagDays } } : { key: 'budget-habit-early', values: { days: -likelyLagDays } }]),
    ...(lines.some(({ source }) => source === 'offers') || input.stock.length > 0 ? [deliveryNote(deliveryShare)] : []),
    ...(onOrder ? [{ key: 'budget-on-order', values: {} }] : []),
    { key: 'budget-not-in-it', values: {} },
  ];
}

function unplannedNote({ unplanned }: Budget): Message {
  if (unplanned === null) return { key: 'budget-unplanned-too-little', values: {} };
  const years = Math.round(unplanned.years * 10) / 10;
  return unplanned.count === 0 ? { key: 'budget-unplanned-none', values: { years } } : { key: 'budget-unplanned', values: { years, count: unplanned.count } };
}

function growthNote({ prices }: Budget): Message {
  if (!reckonsGrowth(prices)) return { key: 'budget-no-growth', values: {} };
  return { key: 'budget-growth', values: { percent: Math.round((Math.exp(prices.growth) - 1) * 1000) / 10, pairs: prices.pairs } };
}

function deliveryNote(share: number | null): Message {
  return share === null ? { key: 'budget-no-delivery', values: {} } : { key: 'budget-delivery', values: { percent: Math.round(share * 1000) / 10 } };
}
