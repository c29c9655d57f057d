import type { WorkRecord } from './work-record.ts';

/** A record as one entry of the journal says it. */
export interface RecordVersion {
  readonly seq: number;
  /** The UTC instant of the entry. */
  readonly at: string;
  /** Null for the first; else why it was amended. */
  readonly why: string | null;
  readonly withdrawn: boolean;
  readonly record: WorkRecord;
}

/** The fields of a record that a keeper may amend, in the order of the form. */
export const AMENDABLE = [
  'date', 'title', 'lines', 'place', 'placeName', 'doneBy', 'approvedBy', 'vouched', 'reference', 'method', 'lotsUsed', 'costs', 'printedTotalMinor', 'papers', 'note', 'reconstructed',
] as const satisfies readonly (keyof WorkRecord)[];
export type Amendable = (typeof AMENDABLE)[number];

/** The fields in which two versions of a record differ. @example changedFields(first, { ...first, note: 'x' }) //=> ['note'] */
export function changedFields(before: WorkRecord, after: WorkRecord): readonly Amendable[] {
  return AMENDABLE.filter((field) => JSON.stringify(before[field] ?? null) !== JSON.stringify(after[field] ?? null));
}
