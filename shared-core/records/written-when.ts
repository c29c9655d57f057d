import { z } from 'zod';
import { dateOfInstant, daysBetween } from '../calendar/local-date.ts';
import type { WorkRecord } from './work-record.ts';

/** How soon after the work it was written down. */
export const writtenWhenSchema = z.enum(['same-day', 'within-a-week', 'later', 'reconstructed']);
export type WrittenWhen = z.infer<typeof writtenWhenSchema>;

const WEEK = 7;

/**
 * How soon after the work a record was written down, from the UTC instant of its first entry.
 * A record entered a day early by UTC (west of Greenwich) counts as the same day.
 *
 * @example writtenWhen({ date: '2026-11-20', reconstructed: false }, '2026-11-25T08:00:00.000Z') //=> 'within-a-week'
 */
export function writtenWhen(record: Pick<WorkRecord, 'date' | 'reconstructed'>, enteredAt: string): WrittenWhen {
  if (record.reconstructed) return 'reconstructed';
  const days = daysBetween(record.date, dateOfInstant(enteredAt));
  if (days <= 0) return 'same-day';
  return days <= WEEK ? 'within-a-week' : 'later';
}
