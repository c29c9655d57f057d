import { z } from 'zod';
import type { WorkRecord } from '../records/work-record.ts';

/**
 * What a keeper may keep back from a pack, by the names of the journal's fields: `why` is the reason of an amendment, `text`
 * what was seen. Papers are chosen apart. The lines of a record, with the notes on them, are what was done and always shown.
 */
export const WITHHOLDABLE = [
  'costs', 'printedTotalMinor', 'paidMinor', 'price', 'garagePrice', 'lotsUsed',
  'doneBy', 'approvedBy', 'placeName', 'reference', 'method', 'note', 'why', 'text', 'vin', 'registration', 'declaredAYear',
] as const;

/** What of a sale is never in a pack: to whom the car went and what it brought is no part of its history. */
export const OF_THE_SALE = ['buyer', 'priceMinor'] as const;

export const withholdSchema = z.array(z.enum(WITHHOLDABLE)).max(WITHHOLDABLE.length);
export type Withheld = (typeof WITHHOLDABLE)[number];

/** A record as the receiver may read it: what is withheld is as if it had never been entered. */
export function withoutWithheld(record: WorkRecord, withheld: ReadonlySet<string>): WorkRecord {
  const empty: Partial<WorkRecord> = { costs: [], printedTotalMinor: null, lotsUsed: [], doneBy: null, approvedBy: null, placeName: null, reference: null, method: null, note: '' };
  const blanked = Object.entries(empty).filter(([name]) => withheld.has(name));
  return { ...record, ...Object.fromEntries(blanked) };
}

/** The names of fields that a record has and the pack keeps back. */
export function withheldOf(record: WorkRecord, withheld: ReadonlySet<string>): readonly string[] {
  return Object.keys(record).filter((name) => withheld.has(name)).sort();
}
