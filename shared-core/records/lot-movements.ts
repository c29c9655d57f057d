import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { shelfTakings } from '../parts/shelf-taking.ts';
import { stocktakes, type Stocktake } from '../parts/stocktake.ts';
import type { WorkRecord } from './work-record.ts';

/** Quantities are kept to three decimals; sums are made in whole thousandths. */
export const thousandths = (quantity: number) => Math.round(quantity * 1000);

/** Something taken of a lot on a day, in whole thousandths. */
export interface LotUse {
  readonly on: LocalDate;
  readonly amount: number;
}

/** A lot counted on a day. */
export type LotCount = Stocktake['lines'][number] & { readonly on: LocalDate };

/** What was taken of a lot, and its counts, the latest last. */
export interface LotMovements {
  readonly uses: readonly LotUse[];
  readonly counts: readonly LotCount[];
}

/** What moved of each lot, by these records, by hand and by counting. */
export function lotMovements(facts: Facts, records: readonly Pick<WorkRecord, 'date' | 'lotsUsed'>[]): ReadonlyMap<string, LotMovements> {
  const found = new Map<string, { readonly uses: LotUse[]; readonly counts: LotCount[] }>();
  const of = (lot: string) => {
    const known = found.get(lot) ?? { uses: [], counts: [] };
    found.set(lot, known);
    return known;
  };
  for (const record of records) for (const use of record.lotsUsed) of(use.lot).uses.push({ on: record.date, amount: thousandths(use.quantity) });
  for (const taking of facts.all(shelfTakings)) of(taking.lot).uses.push({ on: taking.on, amount: thousandths(taking.quantity) });
  for (const { on, lines } of facts.all(stocktakes)) for (const line of lines) of(line.lot).counts.push({ ...line, on });
  for (const { counts } of found.values()) counts.sort((a, b) => (a.on === b.on ? (a.sameDay?.counts ?? -1) - (b.sameDay?.counts ?? -1) : a.on < b.on ? -1 : 1));
  return found;
}

/**
 * What has gone of a lot by the end of a day (null: by now), in whole thousandths; more than came where the books do not fit. A count
 * leaves what was counted: what was used before is in it, what was used after it is taken from it.
 *
 * @example goneOf(5000, { uses: [{ on: '2026-06-01', amount: 1000 }], counts: [] }, null) //=> 1000
 */
export function goneOf(quantity: number, { uses, counts }: LotMovements, by: LocalDate | null): number {
  const used = uses.filter(({ on }) => by === null || on <= by);
  const counted = counts.filter(({ on }) => by === null || on <= by);
  const last = counted.at(-1);
  // Before it was written down what of its day is in a count, the difference from the books was all that stood.
  if (last?.sameDay == null) return sum(used) - counted.reduce((total, count) => total + thousandths(count.difference), 0);
  const since = sum(used.filter(({ on }) => on > last.on)) + Math.max(0, sum(used.filter(({ on }) => on === last.on)) - thousandths(last.sameDay.used));
  return quantity - thousandths(last.counted) + since;
}

/** What all of these uses together took. */
export function sum(uses: readonly LotUse[]): number {
  return uses.reduce((total, { amount }) => total + amount, 0);
}
