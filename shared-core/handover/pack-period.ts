import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { refusedBy } from '../result/refused-by.ts';
import { sayOf } from '../result/words/say.ts';

/** The days that a pack shows, both included; null: without an end on that side. */
export const packPeriodSchema = z
  .strictObject({ from: dateSchema.nullable(), to: dateSchema.nullable() })
  .refine(({ from, to }) => from === null || to === null || from <= to, refusedBy('period-ends-before-it-begins'));
export type PackPeriod = z.infer<typeof packPeriodSchema>;

export const WHOLE_HISTORY: PackPeriod = { from: null, to: null };

/** Whether all of a history is shown. */
export function isWhole({ from, to }: PackPeriod): boolean {
  return from === null && to === null;
}

/** Whether what belongs to a day is shown. @example isWithin({ from: '2024-01-01', to: null }, '2023-12-31') //=> false */
export function isWithin({ from, to }: PackPeriod, date: LocalDate): boolean {
  return (from === null || date >= from) && (to === null || date <= to);
}

/** What is said of a pack of less than the whole history; null of a whole one. @example sayPeriod(period) //=> 'This pack shows 1 Jan 2024 to 25 Nov 2026 only.' */
export function sayPeriod({ from, to }: PackPeriod, pack = sayOf('period-this-pack')): string | null {
  if (from !== null && to !== null) return sayOf('period-both', { pack, from, to });
  if (from !== null) return sayOf('period-from', { pack, from });
  return to === null ? null : sayOf('period-to', { pack, to });
}
