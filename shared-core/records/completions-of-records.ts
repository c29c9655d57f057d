import type { Completion } from '../care/completion.ts';
import type { ServiceItem } from '../care/service-item.ts';
import { distanceOn, type KnownDistance } from '../fleet/known-distance.ts';
import type { Metres } from '../units/distance.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/** Whole distance at a reading, by the reading's id; absent where the reading is not accepted. */
export type DistanceAtReading = ReadonlyMap<string, Metres>;

/**
 * When an item was completed, by the car's records, in order of date. A thing to be replaced is completed when it was
 * replaced, a thing to be checked when it was looked at; a line not done completes nothing.
 */
export function completionsOf(item: ServiceItem, records: readonly WorkRecord[], at: DistanceAtReading, known: KnownDistance): readonly Completion[] {
  return records
    .filter((record) => record.lines.some((line) => line.item === item.id && completes(item, line)))
    .map((record) => completionOf(record, at, known))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

function completes(item: ServiceItem, line: RecordLine): boolean {
  if (line.outcome === 'not-done') return false;
  return item.work === 'check' || (line.work === 'replace' && (line.outcome === 'done' || line.outcome === 'acted'));
}

function completionOf(record: WorkRecord, at: DistanceAtReading, known: KnownDistance): Completion {
  const read = record.reading === null ? undefined : at.get(record.reading);
  if (read !== undefined) return { date: record.date, metres: read, estimated: false };
  const worked = distanceOn(known, record.date);
  return { date: record.date, metres: worked?.metres ?? null, estimated: worked?.estimated ?? true };
}
