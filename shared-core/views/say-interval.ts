import { isOnce, type Interval, type Limit } from '../care/limit.ts';
import type { HistoryGap } from '../care/history-gaps.ts';
import { sayDate, sayNumber } from '../result/words/say.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';

/**
 * An interval in words. @example sayInterval({ first: {36 months}, repeat: {24 months} }) //=> 'first 36 months, then every 24 months'
 */
export function sayInterval(interval: Interval): string {
  if (isOnce(interval)) return 'once';
  const { first, repeat } = interval;
  const again = sayLimit(repeat);
  const once = sayLimit(first);
  return once === again ? `every ${again}` : `first ${once}, then every ${again}`;
}

function sayLimit({ months, distance }: Limit): string {
  const time = months === null ? null : `${months} month${months === 1 ? '' : 's'}`;
  const way = distance === null ? null : `${sayNumber(distance.value)} ${distance.unit}`;
  return [time, way].filter((part) => part !== null).join(' or ');
}

/** A gap in words. */
export function sayGap(gap: HistoryGap, unit: DistanceUnit): string {
  switch (gap.kind) {
    case 'unknown-before':
      return gap.date === null ? 'history unknown' : `unknown before ${sayDate(gap.date)}`;
    case 'never-recorded':
      return 'never recorded since new';
    case 'months':
      return `gap of ${gap.months - gap.limit} month${gap.months - gap.limit === 1 ? '' : 's'} (${gap.months} instead of ${gap.limit}), ${sayDate(gap.from)} to ${sayDate(gap.to)}`;
    case 'distance':
      return `gap of ${sayNumber(Math.round((gap.metres - gap.limit) / METRES_IN[unit]))} ${unit} (${sayNumber(Math.round(gap.metres / METRES_IN[unit]))} instead of ${sayNumber(Math.round(gap.limit / METRES_IN[unit]))}), ${sayDate(gap.from)} to ${sayDate(gap.to)}`;
  }
}
