import { monthsBetween } from '../calendar/add-months.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { fromTyped } from '../units/distance.ts';
import type { Car } from '../fleet/car.ts';
import type { Completion } from './completion.ts';
import { isOnce, type Limit } from './limit.ts';
import type { ServiceItem } from './service-item.ts';

/** Something missing in the history of an item. */
export type HistoryGap =
  | { readonly kind: 'unknown-before'; readonly date: LocalDate | null }
  | { readonly kind: 'never-recorded' }
  | { readonly kind: 'months'; readonly from: LocalDate; readonly to: LocalDate; readonly months: number; readonly limit: number }
  | { readonly kind: 'distance'; readonly from: LocalDate; readonly to: LocalDate; readonly metres: number; readonly limit: number };

/**
 * What is missing in an item's history: the time before the first record where nobody knows it, and every stretch between
 * two completions, or from the last to `now`, that is longer than the interval by a whole month or more, or by distance. What is done once misses nothing.
 *
 * @example historyGaps(item, car, completions, null) //=> [{ kind: 'months', from, to, months: 31, limit: 24 }]
 */
export function historyGaps(item: ServiceItem, car: Car, completions: readonly Completion[], now: Completion | null): readonly HistoryGap[] {
  if (isOnce(item.interval)) return [];
  const [first] = completions;
  const last = completions.at(-1);
  const before = beforeFirst(item, car, first ?? null);
  const between = completions.flatMap((done, at) => {
    const before = completions[at - 1];
    return before === undefined ? [] : stretch(before, done, item.interval.repeat);
  });
  return [...before, ...between, ...(last === undefined || now === null || now.date <= last.date ? [] : stretch(last, now, item.interval.repeat))];
}

function beforeFirst(item: ServiceItem, car: Car, first: Completion | null): readonly HistoryGap[] {
  if (item.anchor.kind !== 'completion') return [];
  if (item.history !== 'never-done') return [{ kind: 'unknown-before', date: first?.date ?? null }];
  if (first === null) return [{ kind: 'never-recorded' }];
  if (car.firstRegistered === null) return [{ kind: 'unknown-before', date: first.date }];
  return stretch({ date: car.firstRegistered, metres: null, estimated: false }, first, item.interval.first);
}

function stretch(from: Completion, to: Completion, limit: Limit): readonly HistoryGap[] {
  const months = monthsBetween(from.date, to.date);
  const late: HistoryGap[] = limit.months !== null && months > limit.months ? [{ kind: 'months', from: from.date, to: to.date, months, limit: limit.months }] : [];
  const distance = limit.distance === null ? null : fromTyped(limit.distance);
  const gone = from.metres === null || to.metres === null ? null : to.metres - from.metres;
  if (distance?.ok !== true || gone === null || gone <= distance.value) return late;
  return [...late, { kind: 'distance', from: from.date, to: to.date, metres: gone, limit: distance.value }];
}
