import { z } from 'zod';
import { yearOf, type LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { findCar, findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { householdAccount } from '../ledger/household-account.ts';
import { ledgerSettings } from '../ledger/ledger-settings.ts';
import { sumOf, type Account, type Balance, type Cost } from '../ledger/posting.ts';
import { wishes } from '../ledger/wish.ts';
import { yearlyFuels } from '../ledger/yearly-fuel.ts';
import { paidFor } from '../ledger/years.ts';
import { tools } from '../parts/tool.ts';
import { ok } from '../result/result.ts';
import { carCosts } from './car-costs.ts';
import { ledgerCsv } from './ledger-csv.ts';
import { ledgerNotes } from './ledger-notes.ts';
import { ledgerLineSchema, ledgerViewSchema, type LedgerLine, type LedgerView } from './ledger-view-schema.ts';
import { carName, costText, partName, sourceName } from './money-names.ts';
import { said } from './plan-said.ts';
import { wishSpent } from './wishes-view.ts';
import { yearOfWaiting } from './year-of-waiting.ts';

/** What was paid for the cars, where it went, and what keeping each of them costs. */
export const showLedger = ask({
  request: z.strictObject({}),
  reply: ledgerViewSchema,
  answer: (standing, _request, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const account = householdAccount(facts, today);
    const settings = ledgerSettings(facts);
    return ok({
      today, currency: household.value.currency, settings,
      paid: { ...paidFor(account) },
      years: yearsOf(account),
      cars: facts.all(cars).map((car) => carCosts(facts, car, account, settings.ownHourMinor, today)).sort((a, b) => Number(a.left !== null) - Number(b.left !== null)),
      wishes: facts.all(wishes).map((wish) => ({ wish: wish.id, name: wish.name, car: wish.car, minor: wishSpent(facts, account, wish) })),
      standing: account.balances.map((one) => ({ kind: one.kind, name: balanceName(facts, one), minor: one.minor, source: { ...one.source } })),
      gone: account.costs.flatMap((one) => (one.side.kind === 'gone' ? [{ kind: one.side.why, on: one.on, name: costText(facts, one), minor: one.minor, source: { ...one.source } }] : [])).sort((a, b) => (a.on < b.on ? 1 : -1)),
      waiting: yearOfWaiting(facts, today),
      fuel: [...facts.all(yearlyFuels)].sort((a, b) => b.year - a.year),
      notes: ledgerNotes(facts, account).map(said),
    });
  },
});

/** The lines behind the sums, the latest first: of one car or of all, of one year or of all. */
export const listLedger = ask({
  request: z.strictObject({ car: z.string().min(1).max(80).nullable().default(null), year: z.int().min(1900).max(2199).nullable().default(null) }),
  reply: z.object({ currency: z.string(), lines: z.array(ledgerLineSchema), totalMinor: z.int(), /** The same as a table to be saved. */ csv: z.string() }),
  answer: (standing, { car: wanted, year }, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const found = wanted === null ? ok(null) : findCar(facts, wanted);
    if (!found.ok) return found;
    const car = found.value?.id ?? null;
    const costs = householdAccount(facts, today).costs.filter((cost) => (car === null || (cost.side.kind === 'car' && cost.side.car === car)) && (year === null || yearOf(cost.on) === year));
    const lines = ledgerLines(facts, costs);
    return ok({ currency: household.value.currency, lines, totalMinor: sumOf(costs), csv: ledgerCsv(lines, household.value.currency) });
  },
});

/** Costs in words, the latest first. */
export function ledgerLines(facts: Facts, costs: readonly Cost[]): LedgerLine[] {
  return costs
    .map((cost): LedgerLine => {
      const { side, on, kind, minor, source } = cost;
      const [car, wish] = [side.kind === 'car' ? side.car : null, side.kind === 'wish' ? side.wish : null];
      return { on, kind, minor, source: { ...source }, text: costText(facts, cost), car, carName: car === null ? null : carName(facts, car), wish, wishName: wish === null ? null : (facts.get(wishes, wish)?.name ?? wish) };
    })
    .sort((a, b) => (a.on === b.on ? (a.source.id === b.source.id ? a.kind.localeCompare(b.kind, 'en') : a.source.id < b.source.id ? -1 : 1) : a.on < b.on ? 1 : -1));
}

function balanceName(facts: Facts, one: Balance): string {
  if (one.of === null) return sourceName(facts, one.source);
  return one.source.kind === 'tool' ? (facts.get(tools, one.of)?.name ?? one.of) : partName(facts, one.of);
}

/** What stood for something at the end of a year is what stood before, and was paid, less what was used and lost. */
function yearsOf(account: Account): LedgerView['years'] {
  const days: readonly LocalDate[] = [...account.payments, ...account.costs].map((one) => one.on);
  const years = [...new Set(days.map(yearOf))].sort((a, b) => a - b);
  let stock = 0;
  return years
    .map((year) => {
      const within = (one: { readonly on: LocalDate }) => yearOf(one.on) === year;
      const of = (kind: Cost['side']['kind']) => sumOf(account.costs.filter((cost) => within(cost) && cost.side.kind === kind));
      const [paidMinor, carsMinor, wishesMinor, goneMinor, before] = [sumOf(account.payments.filter(within)), of('car'), of('wish'), of('gone'), stock];
      stock = before + paidMinor - carsMinor - wishesMinor - goneMinor;
      return { year, paidMinor, carsMinor, wishesMinor, goneMinor, stockBeforeMinor: before, stockAfterMinor: stock };
    })
    .reverse();
}
