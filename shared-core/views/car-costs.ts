import { asDate, earliest, later, yearOf, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { carUse } from '../fleet/car-usage.ts';
import { departures, type Departure } from '../fleet/departure.ts';
import { distanceOn, type KnownDistance } from '../fleet/known-distance.ts';
import type { Facts } from '../journal/facts.ts';
import { ownMoney } from '../ledger/own-money.ts';
import { halfEven, ownTimeByYear } from '../ledger/own-time.ts';
import { sumOf, type Account } from '../ledger/posting.ts';
import { byKind, costsOfCar } from '../ledger/years.ts';
import { workRecords } from '../records/work-record.ts';
import { METRES_IN } from '../units/distance.ts';
import type { z } from 'zod';
import type { carCostsSchema, carYearSchema } from './ledger-view-schema.ts';

type CarCosts = z.infer<typeof carCostsSchema>;
type CarYear = z.infer<typeof carYearSchema>;

/** Of how many whole years the middle is taken. Ours, no source. */
const YEARS_LOOKED_AT = 5;

/** What a car cost, year by year, beside its distance. */
export function carCosts(facts: Facts, car: Car, account: Account, hourMinor: number, today: LocalDate): CarCosts {
  const costs = costsOfCar(account, car.id);
  const fuel = costs.filter((cost) => cost.kind === 'fuel');
  const keep = costs.filter((cost) => cost.kind !== 'fuel');
  const left = facts.get(departures, car.id);
  const own = ownMoney(facts);
  const time = new Map(ownTimeByYear(facts.ofCar(workRecords, car.id).filter((record) => own(record, record.date)), hourMinor).map((one) => [one.year, one]));
  const here = stayOf(car, left, today);
  const known = knownDistance(facts, car);
  const first = Math.min(yearOf(here.to), ...costs.map((cost) => yearOf(cost.on)), ...time.keys());
  const last = Math.max(yearOf(here.to), ...costs.map((cost) => yearOf(cost.on)));
  const years = Array.from({ length: last - first + 1 }, (_, back): CarYear => {
    const year = last - back;
    const rows = keep.filter((cost) => yearOf(cost.on) === year);
    const totalMinor = sumOf(rows);
    const distance = distanceOfYear(known, car, year, here);
    return {
      year, totalMinor, byKind: byKind(rows), fuelMinor: sumOf(fuel.filter((cost) => yearOf(cost.on) === year)), distance,
      perThousandMinor: distance === null || distance.value === 0 ? null : halfEven(totalMinor * 1000, distance.value),
      minutes: time.get(year)?.minutes ?? 0, timeMinor: time.get(year)?.minor ?? 0,
      whole: here.from !== null && here.from <= asDate(year, 1, 1) && here.to > asDate(year, 12, 31),
    };
  });
  return {
    car: car.id, name: car.name, unit: car.unit, power: car.power, left: left === null ? null : { on: left.on, how: left.how },
    totalMinor: sumOf(keep), fuelMinor: sumOf(fuel), byKind: byKind(keep), years, keepAYear: keepAYear(years),
  };
}

/** From when to when a car has been here; null: nobody says since when. */
interface Stay {
  readonly from: LocalDate | null;
  readonly to: LocalDate;
}

function stayOf(car: Car, left: Departure | null, today: LocalDate): Stay {
  return { from: car.keptSince ?? car.firstRegistered, to: earliest(left?.on ?? null, today) ?? today };
}

function knownDistance(facts: Facts, car: Car): KnownDistance {
  const use = carUse(facts, car);
  return { points: use.points, usage: use.usage, firstRegistered: car.firstRegistered };
}

/** From the last day of the year before, or the first here, to the last day of the year, or the last here. */
function distanceOfYear(known: KnownDistance, car: Car, year: number, { from, to }: Stay): CarYear['distance'] {
  const start = from === null ? asDate(year - 1, 12, 31) : later(asDate(year - 1, 12, 31), from);
  const end = earliest(asDate(year, 12, 31), to) ?? to;
  if (start >= end) return null;
  const [before, after] = [distanceOn(known, start), distanceOn(known, end)];
  if (before === null || after === null) return null;
  return { value: Math.max(0, Math.round((after.metres - before.metres) / METRES_IN[car.unit])), estimated: before.estimated || after.estimated };
}

/** The middle of the last whole years: one dear repair does not move it. */
function keepAYear(years: readonly CarYear[]): CarCosts['keepAYear'] {
  const whole = years.filter((one) => one.whole).slice(0, YEARS_LOOKED_AT);
  if (whole.length === 0) return null;
  const sums = whole.map((one) => one.totalMinor).sort((a, b) => a - b);
  const far = whole.flatMap((one) => one.distance?.value ?? []).sort((a, b) => a - b);
  return { minor: middle(sums), years: whole.length, lowMinor: sums[0] ?? 0, highMinor: sums.at(-1) ?? 0, distance: far.length === 0 ? null : middle(far) };
}

function middle(sorted: readonly number[]): number {
  const [low, high] = [sorted[(sorted.length - 1) >> 1] ?? 0, sorted[sorted.length >> 1] ?? 0];
  return halfEven(low + high, 2);
}
