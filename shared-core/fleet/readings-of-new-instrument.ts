import type { LocalDate } from '../calendar/local-date.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { metresFromKilometres } from '../units/distance.ts';
import type { Car } from './car.ts';
import { carUse, type CarUse } from './car-usage.ts';
import { instrumentOn, offsetOf } from './continuous-distance.ts';
import { instrumentReplaced, type Instrument } from './instrument.ts';
import { judgeCarReading } from './judge-car-reading.ts';
import { lastShownAfter, nextInstrument, type DatedShown } from './last-shown.ts';
import { readingRecorded, readings, type Reading } from './reading.ts';
import { withEntries } from './release-readings.ts';

/** The accepted readings of later days that were taken from the instrument in the car on a day, in order of date. */
export function readOfOldLater(facts: Facts, car: Car, use: CarUse, date: LocalDate): readonly Reading[] {
  const old = instrumentOn(use.instruments, date)?.id ?? null;
  const later = facts.ofCar(readings, car.id).filter((reading) => reading.standing === 'accepted' && reading.instrument === old && reading.date > date);
  return later.sort((a, b) => (a.date === b.date ? a.shown - b.shown : a.date < b.date ? -1 : 1));
}

/** The first reading of the old instrument after a day, or what it last showed when the next one took its place; null where neither is. */
export function firstOfOldLater(facts: Facts, car: Car, use: CarUse, date: LocalDate): DatedShown | null {
  const [first] = readOfOldLater(facts, car, use, date);
  if (first !== undefined) return { date: first.date, ...first.typed };
  return lastShownAfter(facts, car, use.instruments, date);
}

/**
 * The entries that move to a new instrument what was taken to be of the old one: each later reading judged anew, a doubtful
 * one set aside, and the distance of instruments put in later moved by as much.
 */
export function movedToNew(facts: Facts, car: Car, instrument: Instrument, put: readonly NewEntry[]): readonly NewEntry[] {
  const before = carUse(facts, car);
  const over = withEntries(facts, [...put, ...instrumentsMoved(before, instrument)]);
  const moved = readOfOldLater(facts, car, before, instrument.date).map((reading) => {
    const read: Reading = { ...reading, instrument: instrument.id };
    const { doubt } = judgeCarReading(carUse(over, car), read);
    const settled: Reading = { ...read, doubt, standing: doubt === null || reading.sure ? 'accepted' : 'set-aside' };
    over.lay(readingRecorded.apply(settled));
    return newEntry(readingRecorded, settled);
  });
  return [...instrumentsMoved(before, instrument), ...moved];
}

function instrumentsMoved(use: CarUse, instrument: Instrument): readonly NewEntry[] {
  const next = nextInstrument(use.instruments, instrument.date);
  if (next === null || next.estimated) return [];
  const by = instrument.distance - instrument.firstShown - offsetOf(use.instruments, instrumentOn(use.instruments, instrument.date)?.id ?? null);
  const later = use.instruments.filter((one) => one.date >= next.date);
  return later.map((one) => newEntry(instrumentReplaced, { ...one, distance: metresFromKilometres((one.distance + by) / 1000) }));
}
