import type { DayNumber, LocalDate } from '../calendar/local-date.ts';
import type { TaskRef } from './task-ref.ts';

/** A date that the law or a certificate sets: the work may not be later. */
export interface LegalDate {
  readonly lastDay: LocalDate;
  /** The first day on which nothing of the old term is lost; null where no early day loses anything. */
  readonly opens: LocalDate | null;
  /** Done before this day it would count for nothing. */
  readonly notBefore: LocalDate | null;
}

/** One thing to be done once, with all that its costs are made of. Money in minor units, minutes whole. */
export interface HouseholdTask {
  readonly ref: TaskRef;
  /** Its name within the plan. */
  readonly key: string;
  readonly car: string;
  readonly carName: string;
  readonly name: string;
  readonly minutes: number;
  /** Nobody has said how long it takes. */
  readonly minutesAssumed: boolean;
  /** What must be opened up to reach it, by the names the keeper gave. */
  readonly access: readonly string[];
  /** s: what a day late counts. */
  readonly lateMinorADay: number;
  /** V: parts and paid labour of doing it once, where it is cheapest. */
  readonly valueMinor: number;
  /** What it costs at each place where it can be done. */
  readonly prices: ReadonlyMap<string, number>;
  /** Places at which it could be done, were it known what they ask. */
  readonly unpriced: readonly string[];
  /** Some price is not known and counts as nothing. */
  readonly priceMissing: boolean;
  /** Nine equally likely due days, earliest first; empty where none is to be foreseen. */
  readonly dueDays: readonly DayNumber[];
  /** Day from which the interval is counted: when it was last done; null where nobody knows. */
  readonly countedFrom: DayNumber | null;
  readonly likely: LocalDate | null;
  /** It is late today. */
  readonly late: boolean;
  readonly legal: LegalDate | null;
  /** The first day on which its parts can be at home; null: at once, or it needs none. */
  readonly partsFrom: LocalDate | null;
}
