import { addMonths } from '../../shared-core/calendar/add-months.ts';
import { daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { anchorX, timeScale, type Sight } from './time-scale.ts';

/** How far one looks ahead, in months: every step from one month to three years, each about a third wider than the one before. */
export const STEPS: readonly number[] = [1, 2, 3, 4, 6, 8, 12, 18, 24, 36];
/** The spans that have a button. */
export const SPANS = [1, 3, 6, 12, 36] as const;
/** The calendar ends here: nothing is foreseen further than the longest span. */
const LONGEST = 36;
/** How one meets the yard: a year from today. */
export const A_YEAR: Sight = { span: 12, shift: 0 };

/** The days by which a span can be moved ahead, so that its end stays within what is foreseen. */
export function mostShift(today: LocalDate, span: number): number {
  return Math.max(0, daysBetween(today, addMonths(today, LONGEST)) - daysBetween(today, addMonths(today, span)));
}

/** A sight moved by days, never before today nor past what is foreseen. */
export function movedSight(today: LocalDate, { span, shift }: Sight, days: number): Sight {
  return { span, shift: Math.min(mostShift(today, span), Math.max(0, shift + Math.round(days))) };
}

/** How far a press moves: a quarter of what is seen. */
export function quarterOf(today: LocalDate, { span }: Sight): number {
  return daysBetween(today, addMonths(today, span)) / 4;
}

/**
 * A sight one step nearer (-1) or wider (1). The first day stays where it is; with a place on the paper, the day under it does.
 *
 * @example steppedSight('2026-11-25', { span: 12, shift: 0 }, -1) //=> { span: 8, shift: 0 }
 */
export function steppedSight(today: LocalDate, sight: Sight, step: -1 | 1, at?: { readonly x: number; readonly width: number }): Sight {
  const span = STEPS[STEPS.indexOf(sight.span) + step];
  if (span === undefined) return sight;
  if (at === undefined) return movedSight(today, { ...sight, span }, 0);
  const beyond = at.x - anchorX(at.width);
  const [before, after] = [timeScale(today, sight, at.width), timeScale(today, { ...sight, span }, at.width)];
  return movedSight(today, { ...sight, span }, beyond / before.pixelsADay - beyond / after.pixelsADay);
}

/** The shortest span with a button, of a quarter at least, that shows a day, or the longest. @example spanHolding('2026-11-25', '2027-02-23') //=> 3 */
export function spanHolding(today: LocalDate, day: LocalDate): number {
  return SPANS.find((span) => span > 1 && addMonths(today, span) >= day) ?? LONGEST;
}
