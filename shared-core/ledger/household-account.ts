import { asDate, type LocalDate } from '../calendar/local-date.ts';
import { obligations, type Obligation } from '../care/obligation.ts';
import { renewals, type Renewal } from '../care/renewal.ts';
import type { Facts } from '../journal/facts.ts';
import { lots } from '../parts/lot.ts';
import { standingOrders } from '../parts/order-standing.ts';
import { taskTools, tools } from '../parts/tool.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';
import { lotAccount } from './lot-account.ts';
import { lotStories, type LotStory } from './lot-movements.ts';
import { orderAccount } from './order-account.ts';
import { ownMoney } from './own-money.ts';
import { joined, NO_MONEY, sumOf, type Account, type CostKind } from './posting.ts';
import { recordAccount } from './record-account.ts';
import { toolAccount } from './tool-account.ts';
import { lotsAside } from './wish-aside.ts';
import { recordSides } from './wish-side.ts';
import { yearlyFuels, type YearlyFuel } from './yearly-fuel.ts';

const NOTHING_WENT: LotStory = { taken: [], counted: [] };

/**
 * Every minor unit that the household is known to have paid, and where it went: to cars, to wishes, to nobody, or not used yet. What was
 * paid is always what things cost and what still stands: payments = costs + balances, to the last minor unit.
 */
export function householdAccount(facts: Facts, today: LocalDate): Account {
  const own = ownMoney(facts);
  const records = facts.all(workRecords).filter((record) => own(record, record.date));
  return joined([...recordAccounts(facts, records), ...shelfAccounts(facts), ...toolAccounts(facts, records), ...dutyAccounts(facts, own), ...facts.all(yearlyFuels).map((one) => fuelAccount(one, today))]);
}

function recordAccounts(facts: Facts, records: readonly WorkRecord[]): readonly Account[] {
  const sides = recordSides(facts);
  const known = new Set(facts.all(lots).flatMap((lot) => (lot.paidMinor === null ? [] : [lot.id])));
  return records.map((record) => recordAccount(record, record.lotsUsed.some((use) => known.has(use.lot)), sides(record).ofItem));
}

/** The shelf and the orders that filled it. */
function shelfAccounts(facts: Facts): readonly Account[] {
  const sides = recordSides(facts);
  const stories = lotStories(facts);
  const aside = lotsAside(facts);
  const ofLots = facts.all(lots).map((lot) => ({
    lot,
    account: lotAccount(lot, stories.get(lot.id) ?? NOTHING_WENT, { ofRecord: (record, part) => sides(record).ofPart(part), wish: aside.get(lot.id) ?? null }),
  }));
  const ofOrders = standingOrders(facts).map((standing) => {
    const brought = ofLots.filter(({ lot }) => lot.order === standing.order.id);
    return orderAccount(standing, brought.reduce((sum, { lot, account }) => sum + (lot.paidMinor ?? 0) - account.sentBackMinor, 0));
  });
  return [...ofLots.map(({ account }) => account), ...ofOrders];
}

function toolAccounts(facts: Facts, records: readonly WorkRecord[]): readonly Account[] {
  const taken = new Map(facts.all(taskTools).map((task) => [task.id, new Set(task.tools)]));
  const atHome = records.filter((record) => record.place === 'home');
  return facts.all(tools).map((tool) => toolAccount(tool, atHome.filter((record) => record.lines.some((line) => line.outcome !== 'not-done' && line.item !== null && taken.get(line.item)?.has(tool.id)))));
}

const DUTY_KINDS: Readonly<Record<Obligation['kind'], CostKind>> = {
  'roadworthiness-test': 'roadworthiness-test', 'road-tax': 'road-tax', insurance: 'insurance', 'warranty-end': 'other-duty', 'printed-expiry': 'other-duty', other: 'other-duty',
};

function dutyAccounts(facts: Facts, own: (of: Renewal, on: LocalDate) => boolean): readonly Account[] {
  const kinds = new Map(facts.all(obligations).map((one) => [one.id, DUTY_KINDS[one.kind]]));
  return facts.all(renewals).filter((one) => own(one, one.on)).map((one) => oneCost(one.paidMinor ?? 0, one.on, one.car, kinds.get(one.obligation) ?? 'other-duty', { kind: 'renewal', id: one.id }));
}

/** A year's figure stands on its last day, or on today while it runs. */
function fuelAccount(one: YearlyFuel, today: LocalDate): Account {
  const end = asDate(one.year, 12, 31);
  return oneCost(one.paidMinor, end < today ? end : today, one.car, 'fuel', { kind: 'fuel', id: one.id });
}

function oneCost(minor: number, on: LocalDate, car: string, kind: CostKind, source: Account['payments'][number]['source']): Account {
  if (minor === 0) return NO_MONEY;
  return { payments: [{ on, minor, source }], costs: [{ on, minor, kind, side: { kind: 'car', car }, source, of: null }], balances: [] };
}

/** What is paid beyond what was paid for: 0 always, or the ledger is wrong. */
export function unaccounted({ payments, costs, balances }: Account): number {
  return sumOf(payments) - sumOf(costs) - sumOf(balances);
}
