import type { LocalDate } from '../calendar/local-date.ts';
import type { Metres } from '../units/distance.ts';
import { metresFromKilometres } from '../units/distance.ts';
import { drivableIn } from './drivable-in.ts';
import type { Instrument } from './instrument.ts';
import type { Reading } from './reading.ts';

/** A reading on the car's whole distance, replaced instruments added up. */
export interface DistancePoint {
  readonly date: LocalDate;
  readonly metres: Metres;
  readonly reading: Reading;
}

/**
 * What to add to a value of an instrument to have the car's whole distance, in metres (it may be negative).
 *
 * @example offsetOf(instruments, null) //=> 0
 */
export function offsetOf(instruments: readonly Instrument[], instrument: string | null): number {
  const one = instruments.find((candidate) => candidate.id === instrument);
  return one === undefined ? 0 : one.distance - one.firstShown;
}

/** The instrument in the car on a date: the last one replaced on or before it (there is one a day at most); null where it is still the first. */
export function instrumentOn(instruments: readonly Instrument[], date: LocalDate): Instrument | null {
  return instruments.filter((one) => one.date <= date).sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0))[0] ?? null;
}

/**
 * Accepted readings as whole distance, in order of date, at most one a day (the highest), never falling: where two
 * contradict each other, the one the keeper vouched for stands, else the earlier one; so too where no car can be driven from
 * one to the other on their one day. Doubtful readings are left out.
 */
export function distancePoints(readings: readonly Reading[], instruments: readonly Instrument[]): readonly DistancePoint[] {
  const rising: DistancePoint[] = [];
  for (const point of highestOfEachDate(readings, instruments)) {
    const above = firstAbove(rising, point.metres);
    const contradicted = rising.slice(above);
    if (contradicted.length > 0 && !(point.reading.sure && contradicted.every((earlier) => !earlier.reading.sure))) continue;
    rising.splice(above);
    rising.push(point);
  }
  return rising;
}

/** Where the points above a distance begin. */
function firstAbove(rising: readonly DistancePoint[], metres: Metres): number {
  return rising.findLastIndex((earlier) => earlier.metres <= metres) + 1;
}

function highestOfEachDate(readings: readonly Reading[], instruments: readonly Instrument[]): readonly DistancePoint[] {
  const byDate = new Map<LocalDate, DistancePoint>();
  for (const reading of readings) {
    if (reading.standing !== 'accepted') continue;
    const point = { date: reading.date, metres: wholeDistance(reading, instruments), reading };
    const other = byDate.get(reading.date);
    if (other === undefined || standsFor(point, other)) byDate.set(reading.date, point);
  }
  return [...byDate.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}

/** Of two on one day the higher stands, unless they contradict each other and only one was vouched for. */
function standsFor(point: DistancePoint, other: DistancePoint): boolean {
  const farApart = !drivableIn(0, Math.abs(point.metres - other.metres) / 1000);
  return farApart && point.reading.sure !== other.reading.sure ? point.reading.sure : point.metres > other.metres;
}

/** The car's whole distance at a reading. */
export function wholeDistance(reading: Pick<Reading, 'shown' | 'instrument'>, instruments: readonly Instrument[]): Metres {
  return metresFromKilometres((reading.shown + offsetOf(instruments, reading.instrument)) / 1000);
}
