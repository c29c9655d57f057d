import type { WorkRecord } from './work-record.ts';

/** The elements of a maintenance entry. */
export type RecordElement = 'what' | 'when' | 'who' | 'approved';

/** Which of the four elements of a maintenance entry a record holds. */
export interface RecordScore extends Readonly<Record<RecordElement, boolean>> {
  /** Held, of four. */
  readonly held: number;
  /** Not held here, for an earlier keeper withheld what would tell: nobody knows whether that keeper had entered it. */
  readonly withheld: readonly RecordElement[];
}

/** The fields of which each is enough for an element. */
const TELLS: Readonly<Partial<Record<RecordElement, readonly string[]>>> = { who: ['doneBy', 'placeName'], approved: ['approvedBy', 'reference'] };

/**
 * Scores a record against what an aircraft's maintenance entry must hold, by analogy only: what was done or by what data,
 * the date it was completed, who did it, and who approved it (a stamp, certificate or reference). `withheld`: fields that an
 * earlier keeper kept back.
 *
 * Source: 14 CFR 43.9(a)(1) to (4) (seen in paraphrase; reference section 10). No partial credit.
 * @example recordScore(record).held //=> 3 for a home record without an approver
 */
export function recordScore(record: WorkRecord, withheld: readonly string[] = []): RecordScore {
  const elements = {
    what: record.lines.some((line) => line.outcome !== 'not-done'),
    when: !record.reconstructed,
    who: record.doneBy !== null || record.placeName !== null,
    approved: record.approvedBy !== null || record.reference !== null,
  };
  const kept = (Object.keys(elements) as RecordElement[]).filter((element) => !elements[element] && TELLS[element]?.some((field) => withheld.includes(field)) === true);
  return { ...elements, held: Object.values(elements).filter(Boolean).length, withheld: kept };
}
