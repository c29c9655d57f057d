import type { LocalDate } from '../calendar/local-date.ts';
import type { HandedPaper } from '../handover/handed-paper.ts';
import type { HistoryInput } from '../handover/history-input.ts';
import type { PackPeriod } from '../handover/pack-period.ts';

/** What the history of a car is made of beside what stands. */
export interface HistoryChoice {
  readonly today: LocalDate;
  readonly sample: boolean;
  readonly currency: string;
  readonly withheld: ReadonlySet<string>;
  readonly period: PackPeriod;
  readonly cover: string | null;
  readonly previous: HistoryInput['previous'];
  readonly papersLeftOut: boolean;
  /** Amendments of each record, by its id, in order: the moment of each entry. */
  readonly amendments: ReadonlyMap<string, readonly { readonly at: string; readonly why: string }[]>;
  /** Where each chosen paper stands in the pack, by its digest. */
  readonly paperPaths: ReadonlyMap<string, string>;
  /** Papers of which parts are blacked out, as they are spoken of, by the digest of the paper itself. */
  readonly marked: ReadonlyMap<string, HandedPaper>;
  readonly treeSize: number;
  readonly root: string;
  readonly keyFingerprint: string;
}
