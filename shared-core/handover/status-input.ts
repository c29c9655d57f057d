import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import type { DistanceUnit } from '../units/distance.ts';

/** What the status of a car tells of. */
export const statusElementSchema = z.enum(['whole-distance', 'limited-parts', 'since-last-done', 'inspection', 'recalls', 'changes']);
export type StatusElement = z.infer<typeof statusElementSchema>;

/** A part that does not last for ever: by a day, by what is measured of it, or a tyre by its date code. */
export type StatusPart =
  | { readonly kind: 'dated'; readonly name: string; readonly until: LocalDate }
  | { readonly kind: 'measured'; readonly name: string; readonly on: LocalDate; readonly newest: string; readonly limit: string | null; readonly verdict: string }
  | { readonly kind: 'not-measured'; readonly name: string }
  /** When it was made, in words; null where its code is not written down. */
  | { readonly kind: 'tyre'; readonly name: string; readonly made: string | null };

/** A day, and how far the car has gone since then in its unit; null where nobody knows. */
export interface StatusSince {
  readonly on: LocalDate;
  readonly distance: { readonly value: number; readonly estimated: boolean } | null;
}

/** A service item: since it was last done, or, of one that was never done, since the car was new. */
export interface StatusItem {
  readonly name: string;
  readonly last: StatusSince | null;
  readonly neverSince: StatusSince | null;
  /** Why time and distance since then cannot be told; null where they can, or there is no record. */
  readonly whyNot: string | null;
}

/** An inspection for roadworthiness: the last one that is shown, and until when it holds. */
export interface StatusInspection {
  readonly name: string;
  /** By whom, and the reference, in words, for they may be withheld; null where there is no reference. */
  readonly last: { readonly on: LocalDate; readonly by: string; readonly result: string | null; readonly reference: string | null } | null;
  readonly until: LocalDate | null;
  /** Why there is no last one; null where nobody wrote one down. */
  readonly whyNot: string | null;
}

/** A recall: its number, how and when it was settled, and what comes again. */
export interface StatusRecall {
  readonly number: string;
  readonly what: string;
  readonly how: string | null;
  readonly doneOn: LocalDate | null;
  readonly doneBy: string | null;
  readonly nextOn: LocalDate | null;
  /** Its next day has passed. */
  readonly late: boolean;
}

/** What the status of a car is told from; all of it as it may be shown. */
export interface StatusInput {
  /** Today, or the day it left. */
  readonly on: LocalDate;
  readonly unit: DistanceUnit;
  /** Elements of which things are on days that are not shown. */
  readonly hidden: readonly StatusElement[];
  /** The last reading that counts, on the car's whole distance. */
  readonly lastRead: { readonly on: LocalDate; readonly whole: number } | null;
  /** The whole distance on the day as it is reckoned. */
  readonly likely: number | null;
  /** An instrument was replaced, and how far the car had gone until then is estimated. */
  readonly instrumentGuessed: boolean;
  readonly parts: readonly StatusPart[];
  readonly items: readonly StatusItem[];
  readonly inspections: readonly StatusInspection[];
  readonly recalls: readonly StatusRecall[];
  readonly changes: readonly { readonly name: string; readonly on: LocalDate; readonly papers: number }[];
}
