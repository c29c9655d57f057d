import type { LocalDate } from '../../calendar/local-date.ts';
import { readings, type Reading } from '../../fleet/reading.ts';
import type { Put } from '../../journal/entry-kind.ts';
import type { Facts } from '../../journal/facts.ts';
import type { Family } from '../../journal/family.ts';
import { overlayFacts, type OverlaidFacts } from '../../journal/overlay-facts.ts';

/**
 * A reading is judged by this many accepted ones before its day, some after it, and before those one a month for ten years: by
 * then evidence has decayed to a millionth, and within a month nearly nothing is lost of what two readings say together.
 */
const READINGS_BEFORE = 100;
const READINGS_AFTER = 40;
const MONTHS_BEFORE = 120;

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
 * of at most 100 readings is judged by all of them.
 */
export function importFacts(below: Facts): ImportFacts {
  const kept = keptFacts(below);
  const over = overlayFacts(kept);
  const byCar = new Map<string, SortedReadings>();
  let day: LocalDate | null = null;
  const accepted = (car: string) => {
    const known = byCar.get(car) ?? sortedReadings(kept.ofCar(readings, car).filter(({ standing }) => standing === 'accepted'));
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

/** Accepted readings of a car in order of date, and the last one of each month. */
interface SortedReadings {
  readonly all: Reading[];
  readonly monthly: Reading[];
}

function sortedReadings(readings: readonly Reading[]): SortedReadings {
  const sorted: SortedReadings = { all: [], monthly: [] };
  for (const reading of [...readings].sort(inOrder)) insert(sorted, reading);
  return sorted;
}

function insert({ all, monthly }: SortedReadings, reading: Reading): void {
  all.splice(placeAfter(all, reading.date), 0, reading);
  const at = placeAfter(monthly, reading.date);
  const sameMonth = [at - 1, at].find((place) => monthOf(monthly[place]) === monthOf(reading));
  if (sameMonth === undefined) monthly.splice(at, 0, reading);
  else if (sameMonth === at - 1) monthly[sameMonth] = reading;
}

function around({ all, monthly }: SortedReadings, day: LocalDate | null): readonly Reading[] {
  if (day === null) return all;
  const end = placeAfter(all, day);
  const start = Math.max(0, end - READINGS_BEFORE);
  const near = all.slice(start, end + READINGS_AFTER);
  if (start === 0) return near;
  const before = placeAfter(monthly, all[start - 1]?.date ?? day);
  return [...monthly.slice(Math.max(0, before - MONTHS_BEFORE), before), ...near];
}

function monthOf(reading: Reading | undefined): string {
  return reading?.date.slice(0, 7) ?? '';
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

function inOrder(a: Reading, b: Reading): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
