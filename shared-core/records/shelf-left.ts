import { addDays, earliest, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { StockOnShelf } from '../parts/compose-instance.ts';
import { lots, type Lot } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { shelfTakings } from '../parts/shelf-taking.ts';
import { goneOf, lotMovements, thousandths, type LotMovements } from './lot-movements.ts';
import { workRecords, type WorkRecord } from './work-record.ts';

const NOTHING: LotMovements = { uses: [], counts: [] };

/** A lot as it stands: what is left of it, when it was opened, and until when it is good. */
export interface StandingLot {
  readonly lot: Lot;
  readonly left: number;
  /** As entered, else the day on which something was first taken of it; null while it is whole. */
  readonly openedOn: LocalDate | null;
  /** The date printed on it, or the end of its life once opened, whichever comes first; null where it keeps. */
  readonly goodUntil: LocalDate | null;
}

/** What has gone of each lot by the end of a day (without one: by now), in whole thousandths: by these records, by hand, and by what counting found. */
export function goneOfLots(facts: Facts, records: readonly Pick<WorkRecord, 'date' | 'lotsUsed'>[], by: LocalDate | null = null): ReadonlyMap<string, number> {
  const moved = lotMovements(facts, records);
  return new Map(facts.all(lots).map((lot) => [lot.id, goneOf(thousandths(lot.quantity), moved.get(lot.id) ?? NOTHING, by)]));
}

/** How much is left of each lot, by the end of a day (without one: by now), in the specification's unit. @example leftOfLots(facts).get('can') //=> 1 */
export function leftOfLots(facts: Facts, by: LocalDate | null = null): ReadonlyMap<string, number> {
  const gone = goneOfLots(facts, facts.all(workRecords), by);
  return new Map(facts.all(lots).map((lot) => [lot.id, Math.max(0, thousandths(lot.quantity) - (gone.get(lot.id) ?? 0)) / 1000]));
}

/** Every lot as it stands, those that are used up as well. */
export function standingLots(facts: Facts): readonly StandingLot[] {
  const left = leftOfLots(facts);
  const first = firstTaken(facts);
  return facts.all(lots).map((lot) => {
    const openedOn = lot.openedOn ?? first.get(lot.id) ?? null;
    const keeps = lot.keepsOpenedDays ?? facts.get(parts, lot.part)?.keepsOpenedDays ?? null;
    const opened = openedOn === null || keeps === null ? null : addDays(openedOn, keeps);
    return { lot, left: left.get(lot.id) ?? 0, openedOn, goodUntil: earliest(lot.expires, opened) };
  });
}

/** The day on which something was first used of each lot. */
function firstTaken(facts: Facts): ReadonlyMap<string, LocalDate> {
  const first = new Map<string, LocalDate>();
  const see = (lot: string, on: LocalDate) => first.set(lot, earliest(first.get(lot) ?? null, on) ?? on);
  for (const record of facts.all(workRecords)) for (const use of record.lotsUsed) see(use.lot, record.date);
  for (const taking of facts.all(shelfTakings)) if (taking.why === 'used' || taking.why === 'lost') see(taking.lot, taking.on);
  return first;
}

/** What is left on the shelf, as a proposal reckons with it. */
export function stockOnShelf(facts: Facts): readonly StockOnShelf[] {
  return standingLots(facts).map(({ lot, left, goodUntil }) => ({ part: lot.part, quantity: left, expires: goodUntil }));
}

/** What is left and still good on a day, what is to be used first at the head: oldest expiry, then opened ones, then the oldest. */
export function goodStock(shelf: readonly StandingLot[], on: LocalDate): readonly StandingLot[] {
  return shelf.filter((one) => one.left > 0 && (one.goodUntil === null || one.goodUntil >= on)).sort(useFirst);
}

function useFirst(a: StandingLot, b: StandingLot): number {
  const keys = ({ goodUntil, openedOn, lot }: StandingLot) => [goodUntil ?? '9999', openedOn === null ? '1' : '0', lot.receivedOn, lot.id] as const;
  const [one, other] = [keys(a), keys(b)];
  const at = one.findIndex((key, i) => key !== other[i]);
  return at < 0 ? 0 : (one[at] ?? '') < (other[at] ?? '') ? -1 : 1;
}
