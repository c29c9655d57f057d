import { z } from 'zod';
import { dateOfInstant, daysBetween } from '../calendar/local-date.ts';
import type { WorkRecord } from './work-record.ts';

/** How soon after the work it was written down. */
export const writtenWhenSchema = z.enum(['same-day', 'within-a-week', 'later', 'reconstructed']);
export type WrittenWhen = z.infer<typeof writtenWhenSchema>;

const WEEK = 7;

/**
 * How soon after the work a record was written down, from the UTC instant of its first entry.
 * East of Greenwich the UTC day of entry may be the day before the work: that counts as the same day. West of it an evening's
 * entry has the next UTC day and counts as within a week, for the journal keeps no time zone.
 *
 * @example writtenWhen({ date: '2026-11-20', reconstructed: false }, '2026-11-25T08:00:00.000Z') //=> 'within-a-week'
 */
export function writtenWhen(record: Pick<WorkRecord, 'date' | 'reconstructed'>, enteredAt: string): WrittenWhen {
  if (record.reconstructed) return 'reconstructed';
  const days = daysBetween(record.date, dateOfInstant(enteredAt));
  if (days <= 0) return 'same-day';
  return days <= WEEK ? 'within-a-week' : 'later';
}
