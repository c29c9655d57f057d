import type { WorkRecord } from './work-record.ts';

/** Which of the five elements of an inspection entry a record holds. */
export interface InspectionScore {
  readonly extent: boolean;
  readonly dateAndDistance: boolean;
  readonly inspector: boolean;
  readonly outcome: boolean;
  readonly defects: boolean;
  /** Held, of five. */
  readonly held: number;
}

/** Whether a record is one of looking only: every line a check. */
export function isInspection({ lines }: Pick<WorkRecord, 'lines'>): boolean {
  return lines.every((line) => line.work === 'check');
}

/**
 * Scores a record of an inspection against what an aircraft's inspection entry must hold, by analogy only: what was looked at,
 * the day and the distance, who vouches for it, how each came out, and what was wrong said for each that did not pass.
 * Null for a record that is not of looking only.
 *
 * Source: 14 CFR 43.11(a)(1) to (5), (b) (seen; reference section 10). No partial credit.
 * @example inspectionScore(testRecord)?.held //=> 5
 */
export function inspectionScore(record: WorkRecord): InspectionScore | null {
  if (!isInspection(record)) return null;
  const wrong = record.lines.filter((line) => line.outcome === 'watch' || line.outcome === 'not-done');
  const elements = {
    extent: record.lines.some((line) => line.outcome !== 'not-done'),
    dateAndDistance: !record.reconstructed && record.reading !== null,
    inspector: record.approvedBy !== null || record.reference !== null,
    outcome: record.lines.every((line) => line.outcome !== 'not-done'),
    defects: wrong.every((line) => line.note !== ''),
  };
  return { ...elements, held: Object.values(elements).filter(Boolean).length };
}
