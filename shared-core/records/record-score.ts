import type { WorkRecord } from './work-record.ts';

/** Which of the four elements of a maintenance entry a record holds. */
export interface RecordScore {
  readonly what: boolean;
  readonly when: boolean;
  readonly who: boolean;
  readonly approved: boolean;
  /** Held, of four. */
  readonly held: number;
}

/**
 * Scores a record against what an aircraft's maintenance entry must hold, by analogy only: what was done or by what data,
 * the date it was completed, who did it, and who approved it (a stamp, certificate or reference).
 *
 * Source: 14 CFR 43.9(a)(1) to (4) (seen in paraphrase; reference section 10). No partial credit.
 * @example recordScore(record).held //=> 3 for a home record without an approver
 */
export function recordScore(record: WorkRecord): RecordScore {
  const elements = {
    what: record.lines.some((line) => line.outcome !== 'not-done'),
    when: !record.reconstructed,
    who: record.doneBy !== null || record.placeName !== null,
    approved: record.approvedBy !== null || record.reference !== null,
  };
  return { ...elements, held: Object.values(elements).filter(Boolean).length };
}
