import type { LocalDate } from '../../calendar/local-date.ts';
import { readings, type Reading } from '../../fleet/reading.ts';
import type { Put } from '../../journal/entry-kind.ts';
import type { Facts } from '../../journal/facts.ts';
import type { Family } from '../../journal/family.ts';
import { overlayFacts, type OverlaidFacts } from '../../journal/overlay-facts.ts';

/** This many accepted readings before a day, and some after it, judge a reading of that day. Older evidence has decayed to nothing. */
const READINGS_BEFORE = 400;
const READINGS_AFTER = 40;

/** Facts for deciding on very many rows, each seeing the ones before. */
export interface ImportFacts extends OverlaidFacts {
  /** From now on the readings of a car are those around this day. */
  look(date: LocalDate): void;
  /** Every reading of a car as it stands below, whatever its standing. */
  readingsBelow(car: string): readonly Reading[];
}

/**
 * Facts laid over what stands, for a table of thousands of rows: what is asked again and again is kept, and of a car's accepted
 * readings only those around the day looked at are given, so that the work grows with the rows and not with their square. A car
 * of at most 400 readings is judged by all of them.
 */
export function importFacts(below: Facts): ImportFacts {
  const kept = keptFacts(below);
  const over = overlayFacts(kept);
  const byCar = new Map<string, Reading[]>();
  let day: LocalDate | null = null;
  const accepted = (car: string) => {
    const known = byCar.get(car) ?? kept.ofCar(readings, car).filter(({ standing }) => standing === 'accepted').sort(inOrder);
    byCar.set(car, known);
    return known;
  };
  return {
    ...over,
    ofCar: (family, car) => (family.name === readings.name ? (around(accepted(car), day) as never) : over.ofCar(family, car)),
    look: (date) => {
      day = date;
    },
    readingsBelow: (car) => kept.ofCar(readings, car),
    lay: (puts) => {
      over.lay(puts.filter((put) => put.family !== readings.name));
      for (const reading of puts.flatMap(acceptedIn)) insert(accepted(reading.car), reading);
    },
  };
}

/** What stands does not change while a table is decided on: each list is read once. */
function keptFacts(below: Facts): Facts {
  const lists = new Map<string, readonly unknown[]>();
  const keep = <Value>(key: string, read: () => readonly Value[]) => {
    const known = (lists.get(key) as readonly Value[] | undefined) ?? read();
    lists.set(key, known);
    return known;
  };
  return {
    get: <Value>(family: Family<Value>, id: string) => below.get(family, id),
    ofCar: (family, car) => keep(`${family.name}/${car}`, () => below.ofCar(family, car)),
    all: (family) => keep(`${family.name}//`, () => below.all(family)),
    stamps: (family, car) => below.stamps(family, car),
  };
}

function acceptedIn(put: Put): readonly Reading[] {
  const reading = put.family === readings.name ? (put.value as Reading | null) : null;
  return reading?.standing === 'accepted' ? [reading] : [];
}

function around(sorted: readonly Reading[], day: LocalDate | null): readonly Reading[] {
  if (day === null) return sorted;
  const end = placeAfter(sorted, day);
  return sorted.slice(Math.max(0, end - READINGS_BEFORE), end + READINGS_AFTER);
}

/** Where the first reading after a day stands. */
function placeAfter(sorted: readonly Reading[], day: LocalDate): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle]?.date ?? day) <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}

function insert(sorted: Reading[], reading: Reading): void {
  sorted.splice(placeAfter(sorted, reading.date), 0, reading);
}

function inOrder(a: Reading, b: Reading): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
