import type { LocalDate } from '../calendar/local-date.ts';
import type { Json } from '../journal/canonical-json.ts';
import { relativeDate } from './relative-date.ts';

/**
 * The same data with every relative date in it turned into a date; all else as it was.
 *
 * @example resolveDates({ on: '-1m', note: 'done' }, '2026-11-25') //=> { on: '2026-10-25', note: 'done' }
 */
export function resolveDates(data: Json, today: LocalDate): Json {
  if (typeof data === 'string') return relativeDate(data, today) ?? data;
  if (Array.isArray(data)) return data.map((one: Json) => resolveDates(one, today));
  if (data === null || typeof data !== 'object') return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, resolveDates(value, today)]));
}
