import type { LocalDate } from '../calendar/local-date.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/**
 * The days on which each item was replaced, by the item's id: a new part, from which measurements begin anew. Being looked at,
 * even where something was then done, makes no new part.
 *
 * @example replacedOn(records).get('front-pads') //=> ['2026-03-04']
 */
export function replacedOn(records: readonly WorkRecord[]): ReadonlyMap<string, readonly LocalDate[]> {
  const days = new Map<string, LocalDate[]>();
  for (const { date, lines } of records) {
    for (const item of new Set(lines.filter(isNewPart).flatMap((line) => line.item ?? []))) days.set(item, [...(days.get(item) ?? []), date]);
  }
  return days;
}

function isNewPart(line: RecordLine): boolean {
  return line.work === 'replace' && (line.outcome === 'done' || line.outcome === 'acted');
}
