import type { LocalDate } from '../calendar/local-date.ts';

/** What money went for. Delivery is within the parts it brought. */
export const COST_KINDS = [
  'parts', 'labour', 'consumables', 'tools', 'fee', 'deposit', 'discount', 'other', 'rounding', 'roadworthiness-test', 'road-tax', 'insurance', 'other-duty', 'fuel',
] as const;
export type CostKind = (typeof COST_KINDS)[number];

/** The fact that money is known from. */
export interface MoneySource {
  readonly kind: 'record' | 'renewal' | 'order' | 'lot' | 'tool' | 'fuel';
  readonly id: string;
}

/** Money that went out on a day, in minor units; below 0 it came back. */
export interface Payment {
  readonly on: LocalDate;
  readonly minor: number;
  readonly source: MoneySource;
}

/** Whose a cost is: a car's, a wish's, or nobody's, for what was used without saying for which car, lost, went to waste, was counted away, or was not given back. */
export type CostSide =
  | { readonly kind: 'car'; readonly car: string }
  | { readonly kind: 'wish'; readonly wish: string }
  | { readonly kind: 'gone'; readonly why: 'used' | 'lost' | 'waste' | 'counted' | 'not-given-back' };

/** What something cost on the day it was used up or paid for, in minor units. */
export interface Cost {
  readonly on: LocalDate;
  readonly minor: number;
  readonly kind: CostKind;
  readonly side: CostSide;
  readonly source: MoneySource;
  /** The part or the tool that it is for; null where the source says enough. */
  readonly of: string | null;
  /** The one item of a record that it was for, where that is said. */
  readonly item?: string | null;
}

/** Money that was paid and still stands for something, in minor units. */
export interface Balance {
  readonly kind: 'on-the-shelf' | 'for-a-wish' | 'on-the-way' | 'deposits' | 'to-come-back' | 'tools';
  readonly minor: number;
  readonly source: MoneySource;
  readonly of: string | null;
}

/** What one fact, or all of them, did with money: what was paid is what it cost and what still stands. */
export interface Account {
  readonly payments: readonly Payment[];
  readonly costs: readonly Cost[];
  readonly balances: readonly Balance[];
}

/** No money at all. */
export const NO_MONEY: Account = { payments: [], costs: [], balances: [] };

/** Several accounts as one. */
export function joined(accounts: readonly Account[]): Account {
  return {
    payments: accounts.flatMap((one) => one.payments),
    costs: accounts.flatMap((one) => one.costs),
    balances: accounts.flatMap((one) => one.balances),
  };
}

/** What amounts come to. @example sumOf([{ minor: 3 }, { minor: -1 }]) //=> 2 */
export function sumOf(rows: readonly { readonly minor: number }[]): number {
  return rows.reduce((sum, { minor }) => sum + minor, 0);
}

/** Rows by a key of theirs, in the order in which the keys first come. @example grouped([1, 2, 3], (n) => n % 2).get(1) //=> [1, 3] */
export function grouped<Row, Key>(rows: readonly Row[], keyOf: (row: Row) => Key): ReadonlyMap<Key, readonly Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group === undefined) groups.set(keyOf(row), [row]);
    else group.push(row);
  }
  return groups;
}
