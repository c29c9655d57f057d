import type { Facts } from '../journal/facts.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { goneOfLots } from './shelf-left.ts';
import { workRecords, type WorkRecord } from './work-record.ts';

/** Quantities are kept to three decimals; sums are compared in whole thousandths. */
const thousandths = (quantity: number) => Math.round(quantity * 1000);

/** How much of each lot the records have used, in the specification's unit. */
export function usedOfLots(records: readonly Pick<WorkRecord, 'lotsUsed'>[]): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const use of records.flatMap((record) => record.lotsUsed)) used.set(use.lot, (used.get(use.lot) ?? 0) + thousandths(use.quantity));
  return new Map([...used].map(([lot, amount]) => [lot, amount / 1000]));
}

/** Refuses a record that takes more from a lot than is left of it by then, what was taken by hand and counted included. */
export function checkLots(facts: Facts, record: WorkRecord): Result<WorkRecord> {
  if (record.lotsUsed.length === 0) return ok(record);
  const records = [...facts.all(workRecords).filter((other) => other.id !== record.id), record];
  // Of what a later count says is left, no more can have been there on the day than came.
  const [gone, goneThen] = [goneOfLots(facts, records), goneOfLots(facts, records, record.date)];
  for (const use of record.lotsUsed) {
    const lot = facts.get(lots, use.lot);
    if (lot === null) return refuse('unknown-lot', { lot: use.lot }, ['lotsUsed']);
    if (lot.receivedOn > record.date) return refuse('lot-not-there-yet', { lot: facts.get(parts, lot.part)?.name ?? lot.id, received: lot.receivedOn, date: record.date }, ['lotsUsed']);
    if (Math.max(gone.get(use.lot) ?? 0, goneThen.get(use.lot) ?? 0) > thousandths(lot.quantity)) return refuse('lot-used-up', { lot: use.lot }, ['lotsUsed']);
  }
  return ok(record);
}
