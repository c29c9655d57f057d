import { z } from 'zod';
import { addDays, daysBetween, type LocalDate } from '../calendar/local-date.ts';
import type { CarDue } from './due-view.ts';

/**
 * The next 90 days: what falls due, how much of it is late, the obligations, the recalls to be seen to, the distance
 * allowances that likely run out, and the minutes known.
 */
export const aheadSchema = z.object({
  days: z.int(), items: z.int(), late: z.int(), obligations: z.int(), recalls: z.int(), allowances: z.int(), minutes: z.int(), withoutMinutes: z.int(),
});
export type Ahead = z.infer<typeof aheadSchema>;

/** What of a car may lie ahead; minutes of its items by their ids. */
type Looked = Pick<CarDue, 'windows' | 'obligations' | 'recalls' | 'allowances'> & { readonly work: Readonly<Record<string, { readonly minutes: number | null }>> };

const DAYS_AHEAD = 90;

/**
 * What lies ahead of all cars.
 *
 * @example aheadOf(lanes, today) //=> { days: 90, items: 7, late: 2, obligations: 1, recalls: 1, allowances: 0, minutes: 320, withoutMinutes: 0 }
 */
export function aheadOf(lanes: readonly Looked[], today: LocalDate): Ahead {
  const end = addDays(today, DAYS_AHEAD);
  const by = (date: LocalDate | null) => date !== null && date <= end;
  const due = lanes.flatMap((lane) => lane.windows.filter((window) => window.state === 'late' || by(window.likely)).map((window) => ({ window, work: lane.work[window.item] })));
  return {
    days: daysBetween(today, end),
    items: due.length,
    late: due.filter((one) => one.window.state === 'late').length,
    obligations: lanes.flatMap((lane) => lane.obligations).filter((one) => by(one.on)).length,
    // One that is not booked waits from today on.
    recalls: lanes.flatMap((lane) => lane.recalls).filter((one) => one.state === 'open' || by(one.recall.nextOn)).length,
    allowances: lanes.flatMap((lane) => lane.allowances).filter((one) => by(one.runsOut)).length,
    minutes: due.reduce((sum, one) => sum + (one.work?.minutes ?? 0), 0),
    withoutMinutes: due.filter((one) => one.work?.minutes == null).length,
  };
}
