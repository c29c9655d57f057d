import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { inUnit, metresFromKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import type { Car } from './car.ts';
import { instrumentOn, offsetOf } from './continuous-distance.ts';
import { instruments, type Instrument } from './instrument.ts';
import type { Reading } from './reading.ts';
import { unitShownOn } from './unit-shown.ts';

/** What an instrument showed on a date. */
export interface DatedShown extends DistanceAsTyped {
  readonly date: LocalDate;
}

/** The first instrument put in after a day; null where none was. */
export function nextInstrument(all: readonly Instrument[], date: LocalDate): Instrument | null {
  return all.filter((one) => one.date > date).sort((a, b) => (a.date < b.date ? -1 : 1))[0] ?? null;
}

/** What the instrument in the car on a day last showed when the next one took its place; null where none did or nobody read it. */
export function lastShownAfter(facts: Facts, car: Car, all: readonly Instrument[], date: LocalDate): DatedShown | null {
  const next = nextInstrument(all, date);
  if (next === null || next.estimated) return null;
  const unit = unitShownOn(facts, car, date);
  return { date: next.date, unit, value: inUnit(lastMetres(all, next, date), unit) };
}

/** Of an instrument that was replaced later: a reading can be no higher than what it last showed then. */
export function notAboveLastShown(facts: Facts, car: Car, reading: Pick<Reading, 'date' | 'shown'>): Result<null> {
  const all = facts.ofCar(instruments, car.id);
  const [next, last] = [nextInstrument(all, reading.date), lastShownAfter(facts, car, all, reading.date)];
  if (next === null || last === null || reading.shown <= lastMetres(all, next, reading.date)) return ok(null);
  return refuse('above-last-shown', { date: last.date, value: last.value, unit: last.unit }, ['value']);
}

function lastMetres(all: readonly Instrument[], next: Instrument, date: LocalDate): Metres {
  return metresFromKilometres((next.distance - offsetOf(all, instrumentOn(all, date)?.id ?? null)) / 1000);
}
