import { z } from 'zod';

/** An instant in UTC, as the journal writes it. */
export const instantSchema = z.iso.datetime({ offset: false });

/** Whole seconds from one instant to another; 0 where the other is earlier, for a clock can be set back. @example secondsBetween('2026-11-25T09:00:00.000Z', '2026-11-25T09:01:30.000Z') //=> 90 */
export function secondsBetween(from: string, to: string): number {
  return Math.max(0, Math.round((milliseconds(to) - milliseconds(from)) / 1000));
}

/** Whether one instant is before another, however finely each is written. @example isBefore('2026-11-25T09:00:00Z', '2026-11-25T09:00:00.000Z') //=> false */
export function isBefore(one: string, other: string): boolean {
  return milliseconds(one) < milliseconds(other);
}

function milliseconds(instant: string): number {
  return new Date(instant).getTime();
}
