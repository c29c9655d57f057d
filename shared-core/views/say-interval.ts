import { isOnce, type Interval, type Limit } from '../care/limit.ts';
import type { HistoryGap } from '../care/history-gaps.ts';
import { sayOf } from '../result/words/say.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';

/**
 * An interval in words. @example sayInterval({ first: {36 months}, repeat: {24 months} }) //=> 'first 36 months, then every 24 months'
 */
export function sayInterval(interval: Interval): string {
  if (isOnce(interval)) return sayOf('interval-once');
  const { first, repeat } = interval;
  const again = sayLimit(repeat);
  const once = sayLimit(first);
  return once === again ? sayOf('interval-every', { again }) : sayOf('interval-first', { first: once, again });
}

function sayLimit({ months, distance }: Limit): string {
  const time = months === null ? null : sayOf('span-months', { n: months });
  const way = distance === null ? null : sayOf('interval-distance', { distance: distance.value, unit: distance.unit });
  return time !== null && way !== null ? sayOf('interval-either', { time, distance: way }) : (time ?? way ?? '');
}

/** A gap in words. */
export function sayGap(gap: HistoryGap, unit: DistanceUnit): string {
  const inUnit = (metres: number) => Math.round(metres / METRES_IN[unit]);
  switch (gap.kind) {
    case 'unknown-before':
      return gap.date === null ? sayOf('gap-unknown') : sayOf('gap-unknown-before', { date: gap.date });
    case 'never-recorded':
      return sayOf('gap-never-recorded');
    case 'months':
      return sayOf('gap-months', { n: gap.months - gap.limit, months: gap.months, limit: gap.limit, from: gap.from, to: gap.to });
    case 'distance':
      return sayOf('gap-distance', { gap: inUnit(gap.metres - gap.limit), unit, distance: inUnit(gap.metres), limit: inUnit(gap.limit), from: gap.from, to: gap.to });
  }
}
