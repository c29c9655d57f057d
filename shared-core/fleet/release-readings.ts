import type { AnyEntryKind, NewEntry } from '../journal/entry-kind.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { overlayFacts, type OverlaidFacts } from '../journal/overlay-facts.ts';
import { must } from '../result/assert.ts';
import { carSet, cars, type Car } from './car.ts';
import { carUse } from './car-usage.ts';
import { instrumentOn } from './continuous-distance.ts';
import { instrumentReplaced } from './instrument.ts';
import { judgeCarReading } from './judge-car-reading.ts';
import { readingRecorded, type Reading } from './reading.ts';

/** Readings that are no longer in doubt, and the entries that say so. */
export interface ReleasedReadings {
  readonly entries: readonly NewEntry[];
  readonly released: readonly Reading[];
}

const KINDS: ReadonlyMap<string, AnyEntryKind> = new Map([carSet, readingRecorded, instrumentReplaced].map((kind: AnyEntryKind) => [kind.kind, kind]));

/** Facts with decided entries of the fleet laid over them. */
export function withEntries(facts: Facts, entries: readonly NewEntry[]): OverlaidFacts {
  const over = overlayFacts(facts);
  for (const entry of entries) over.lay(must(KINDS.get(entry.kind), `kind '${entry.kind}'`).apply(entry.values));
  return over;
}

/**
 * What was set aside only because of what has now been settled: each reading of the car that fits once the decided entries
 * stand, in order of date, is accepted, as read from the instrument then in the car. They are named to the keeper.
 */
export function releaseReadings(facts: Facts, car: Car, decided: readonly NewEntry[]): ReleasedReadings {
  const over = withEntries(facts, decided);
  const now = must(over.get(cars, car.id), 'car');
  const waiting = [...carUse(over, now).doubtful].sort((a, b) => (a.date === b.date ? a.shown - b.shown : a.date < b.date ? -1 : 1));
  const released: Reading[] = [];
  for (const reading of waiting) {
    const use = carUse(over, now);
    const read: Reading = { ...reading, instrument: instrumentOn(use.instruments, reading.date)?.id ?? null };
    if (judgeCarReading(use, read).doubt !== null) continue;
    const accepted: Reading = { ...read, standing: 'accepted', doubt: null };
    over.lay(readingRecorded.apply(accepted));
    released.push(accepted);
  }
  return { released, entries: released.map((reading) => newEntry(readingRecorded, reading)) };
}
