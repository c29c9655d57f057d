import type { Completion } from '../care/completion.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { DistancePoint } from '../fleet/continuous-distance.ts';
import { distanceOn, type KnownDistance } from '../fleet/known-distance.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/** The day and whole distance of a reading, by the reading's id; absent where the reading is not accepted. */
export type DistanceAtReading = ReadonlyMap<string, Pick<DistancePoint, 'date' | 'metres'>>;

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
  // The date of a record may have been amended after its reading was taken down.
  if (read?.date === record.date) return { date: record.date, metres: read.metres, estimated: false };
  const worked = distanceOn(known, record.date);
  return { date: record.date, metres: worked?.metres ?? null, estimated: worked?.estimated ?? true };
}
