import type { Facts } from '../journal/facts.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { thousandths } from './lot-movements.ts';
import { goneOfLots } from './shelf-left.ts';
import { workRecords, type WorkRecord } from './work-record.ts';

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
