import type { Facts } from '../journal/facts.ts';
import { previousPacks, type PreviousPack } from './previous-pack.ts';
import { workRecords, type WorkRecord } from './work-record.ts';

/** What is told of a thing that came with the pack of an earlier keeper. */
export interface EarlierThing {
  /** When its keeper wrote it down; null of what is no record. */
  readonly entered: string | null;
  /** When its keeper amended it, in order. */
  readonly amended: readonly string[];
  /** The SHA-256 of the pack of the keeper whose it is, as far as the packs tell. */
  readonly pack: string;
  /** The currency of its amounts; null where the pack did not say. */
  readonly currency: string | null;
  /** The journal's fields that its keeper withheld. */
  readonly withheld: readonly string[];
}

/** What of a car is an earlier keeper's and not the household's own words, by its id. */
export type EarlierThings = ReadonlyMap<string, EarlierThing>;

/** What the packs of earlier keepers brought of a car; the car itself is among it for what was withheld of it. */
export function earlierThings(facts: Facts, car: string): EarlierThings {
  return new Map(facts.ofCar(previousPacks, car).flatMap(thingsOf));
}

function thingsOf(pack: PreviousPack): readonly (readonly [string, EarlierThing])[] {
  const currencies = new Map(pack.currencies?.map(({ id, currency }) => [id, currency]));
  const withheld = new Map(pack.withheld?.map(({ id, fields }) => [id, fields]));
  const thing = (id: string, entered: string | null, amended: readonly string[], of = pack.pack): [string, EarlierThing] => {
    const own = currencies.get(id);
    return [id, { entered, amended, pack: of, currency: own === undefined ? (pack.currency ?? null) : own, withheld: withheld.get(id) ?? [] }];
  };
  return [...pack.records.map((one) => thing(one.id, one.entered, one.amended ?? [], one.of)), ...[pack.car, ...pack.others].map((id) => thing(id, null, []))];
}

/** Records that the household itself wrote: what it paid and how long it took is its own. */
export function ownRecords<Record extends Pick<WorkRecord, 'id'>>(records: readonly Record[], earlier: EarlierThings): readonly Record[] {
  return earlier.size === 0 ? records : records.filter((record) => !earlier.has(record.id));
}

/** A car's records as they were entered, without those of earlier keepers. */
export function ownRecordsOf(facts: Facts, car: string): readonly WorkRecord[] {
  return ownRecords(facts.ofCar(workRecords, car), earlierThings(facts, car));
}

/** Whether the amounts of a record or a renewal can stand beside the household's: its own, or of an earlier keeper who counted in the same currency. */
export function countsIn(currency: string, record: Pick<WorkRecord, 'id'>, earlier: EarlierThings): boolean {
  const thing = earlier.get(record.id);
  return thing === undefined || thing.currency === currency;
}
