import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import type { Observation } from '../records/observation.ts';
import type { RecordScore } from '../records/record-score.ts';
import type { WorkRecord } from '../records/work-record.ts';
import type { WrittenWhen } from '../records/written-when.ts';
import type { HandedPaper } from './handed-paper.ts';
import type { HistoryPrevious } from './history-part.ts';
import type { HistoryStatus } from './history-status.ts';
import type { LeftOut } from './left-out.ts';
import type { PackPeriod } from './pack-period.ts';

/** A reading as the history shows it: on the instrument it was read from. */
export interface HistoryReading {
  readonly date: LocalDate;
  readonly value: number;
  readonly unit: string;
  /** Since when the instrument that it was read from is in the car; null: the first one. */
  readonly instrumentSince: LocalDate | null;
  /** On the car's whole distance, in the car's unit; null where it is doubtful. */
  readonly whole: number | null;
  readonly source: string;
  readonly standing: 'accepted' | 'set-aside' | 'dismissed';
}

/** A service item as the history shows it. */
export interface HistoryItem {
  readonly name: string;
  readonly interval: string;
  readonly lastDone: LocalDate | null;
  readonly timesDone: number;
  /** The state's word, and when it is due in words. */
  readonly state: string;
  readonly due: string;
  readonly late: boolean;
  /** Days of which nothing is told, in words; empty where the whole history is shown. */
  readonly notShown: readonly string[];
  /** What is missing in its history, in words; empty where nothing is. */
  readonly gaps: readonly string[];
}

/** A recall as the history shows it; by whom it was done is empty where that is withheld. */
export interface HistoryRecall {
  readonly number: string;
  readonly what: string;
  readonly state: 'open' | 'booked' | 'done' | 'again';
  /** Its next day has passed. */
  readonly late: boolean;
  readonly how: string | null;
  readonly doneOn: LocalDate | null;
  readonly doneBy: string | null;
  readonly nextOn: LocalDate | null;
}

/** A warranty that ends by date or distance: what it holds for, and how it stands now. */
export interface HistoryWarranty {
  readonly name: string;
  readonly holds: string;
  readonly now: string;
}

/** A work record as the history shows it; fields that are withheld are named and their values are empty. */
export interface HistoryWork {
  readonly record: WorkRecord;
  /** The instant in UTC. */
  readonly enteredAt: string;
  readonly written: WrittenWhen;
  readonly amendments: readonly { readonly at: string; readonly why: string }[];
  /** With the day of the reading where that is another. */
  readonly odometer: string | null;
  /** It came with the pack of an earlier keeper: whether that pack goes along, and proves it. Null of the keeper's own. */
  readonly earlier: { readonly proven: boolean } | null;
  /** The currency of its amounts; null where an earlier keeper's pack did not say. */
  readonly currency: string | null;
  readonly score: RecordScore;
  readonly withheld: readonly string[];
  /** What an earlier keeper had withheld of it already. */
  readonly withheldBefore: readonly string[];
  readonly papers: readonly HandedPaper[];
}

/** What was measured of one thing, and what it comes to against its limit; where that is reckoned with measurements that are not shown, it says so. */
export interface HistoryWear {
  readonly what: string;
  readonly times: number;
  readonly from: LocalDate;
  readonly newest: string;
  readonly newestOn: LocalDate;
  readonly limit: string;
  /** A limit is entered. */
  readonly isLimited: boolean;
  readonly verdict: string;
}

/** All that the history of one car says to the next keeper. */
export interface HistoryInput {
  readonly today: LocalDate;
  readonly sample: boolean;
  readonly period: PackPeriod;
  readonly leftOut: LeftOut;
  /** In how many places of the document there are characters that the fonts of the PDF do not have. */
  readonly unprinted: number;
  /** Names of the journal's fields that are kept back, and what they are called. */
  readonly withheld: ReadonlySet<string>;
  readonly withheldFields: readonly string[];
  /** The photograph on the first page, by the digest of its file in the pack. */
  readonly cover: string | null;
  /** The packs with which the car came, and those of keepers before in them: the first one first. */
  readonly previous: readonly HistoryPrevious[];
  /** The keeper chose to put in no papers, or some only. */
  readonly papersLeftOut: boolean;
  readonly currency: string;
  readonly car: Car;
  /** What an earlier keeper withheld of the car, and nobody has entered since. */
  readonly carWithheldBefore: readonly string[];
  /** What earlier keepers withheld of anything that is told, by what it is called. */
  readonly withheldBefore: readonly string[];
  readonly odometer: string | null;
  /** How the car stands on the day. */
  readonly status: HistoryStatus;
  readonly instruments: readonly { readonly date: LocalDate; readonly estimated: boolean; readonly text: string }[];
  readonly readings: readonly HistoryReading[];
  readonly items: readonly HistoryItem[];
  readonly obligations: readonly { readonly name: string; readonly lastValidDay: LocalDate; readonly late: boolean }[];
  readonly recalls: readonly HistoryRecall[];
  readonly warranties: readonly HistoryWarranty[];
  readonly records: readonly HistoryWork[];
  readonly observations: readonly Observation[];
  /** What is still to be looked at after a work. */
  readonly followUps: readonly { readonly text: string; readonly when: string }[];
  readonly wear: readonly HistoryWear[];
  /** The car's papers; one that is not in the pack has no path. */
  readonly papers: readonly HandedPaper[];
  readonly treeSize: number;
  readonly root: string;
  readonly keyFingerprint: string;
}
