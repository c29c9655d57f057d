import { yearOf } from '../calendar/local-date.ts';
import { grouped, sumOf, type Account, type Balance, type Cost, type CostKind } from './posting.ts';

/** Costs of one year, in minor units, by kind; each kind that has any. */
export interface YearOfCosts {
  readonly year: number;
  readonly totalMinor: number;
  readonly byKind: Readonly<Partial<Record<CostKind, number>>>;
}

/** Costs by year, the latest first. @example costsByYear(costs)[0] //=> { year: 2026, totalMinor: 8990, byKind: { parts: 3990, labour: 5000 } } */
export function costsByYear(costs: readonly Cost[]): readonly YearOfCosts[] {
  const years = grouped(costs, (cost) => yearOf(cost.on));
  return [...years].sort(([a], [b]) => b - a).map(([year, rows]) => ({ year, totalMinor: sumOf(rows), byKind: byKind(rows) }));
}

/** Costs by kind. */
export function byKind(costs: readonly Cost[]): YearOfCosts['byKind'] {
  return Object.fromEntries([...grouped(costs, (cost) => cost.kind)].map(([kind, rows]) => [kind, sumOf(rows)]));
}

/** The costs of one car. */
export function costsOfCar(account: Account, car: string): readonly Cost[] {
  return account.costs.filter(({ side }) => side.kind === 'car' && side.car === car);
}

/** What all that was paid came to: for cars, for wishes, and on the shelf, where what went for nothing is told with what lies there. */
export interface PaidFor {
  readonly paidMinor: number;
  readonly carsMinor: number;
  readonly wishesMinor: number;
  readonly shelfMinor: number;
}

/** Paid = cars + wishes + shelf, to the last minor unit. */
export function paidFor({ payments, costs, balances }: Account): PaidFor {
  const ofWish = (one: Balance) => one.kind === 'for-a-wish';
  return {
    paidMinor: sumOf(payments),
    carsMinor: sumOf(costs.filter(({ side }) => side.kind === 'car')),
    wishesMinor: sumOf(costs.filter(({ side }) => side.kind === 'wish')) + sumOf(balances.filter(ofWish)),
    shelfMinor: sumOf(costs.filter(({ side }) => side.kind === 'gone')) + sumOf(balances.filter((one) => !ofWish(one))),
  };
}
