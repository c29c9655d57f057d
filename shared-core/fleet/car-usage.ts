import { dayNumber } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import type { Facts } from '../journal/facts.ts';
import { fromTyped, toKilometres, type DistanceAsTyped } from '../units/distance.ts';
import type { Car } from './car.ts';
import { distancePoints, type DistancePoint } from './continuous-distance.ts';
import { HOUSEHOLD_ID, households } from './household.ts';
import { instruments, type Instrument } from './instrument.ts';
import { readings, type Reading } from './reading.ts';
import { fitUsage, type DayKm, type Usage } from './usage-rate.ts';
import { makeSeason, type Season } from './usage-season.ts';

/** What a car's readings come to: the accepted ones on one whole distance, and how the car is used. */
export interface CarUse {
  readonly points: readonly DistancePoint[];
  readonly instruments: readonly Instrument[];
  /** Null while there is no accepted reading. */
  readonly usage: Usage | null;
  readonly doubtful: readonly Reading[];
}

/** How a car is used, from what stands now. */
export function carUse(facts: Facts, car: Car): CarUse {
  return carUseOf(car, facts.ofCar(readings, car.id), facts.ofCar(instruments, car.id), seasonOf(facts, car));
}

/** How a car is used, from readings given. @example carUseOf(car, readings, [], season).usage?.ratePerSeasonDay */
export function carUseOf(car: Car, all: readonly Reading[], replaced: readonly Instrument[], season: Season): CarUse {
  const points = distancePoints(all, replaced);
  return {
    points,
    instruments: replaced,
    usage: fitUsage({ readings: points.map(dayKm), declaredKmAYear: declaredKilometres(car.declaredAYear), season }),
    doubtful: all.filter((reading) => reading.standing === 'set-aside'),
  };
}

/** The season of a car: the household's half of the world and the months in which the car sleeps. */
export function seasonOf(facts: Facts, car: Pick<Car, 'laidUpMonths'>): Season {
  const household = must(facts.get(households, HOUSEHOLD_ID), 'household');
  return makeSeason(household.hemisphere, car.laidUpMonths);
}

/** A point as the forecaster takes it. */
export function dayKm(point: Pick<DistancePoint, 'date' | 'metres'>): DayKm {
  return { day: dayNumber(point.date), km: toKilometres(point.metres) };
}

/** The declared distance a year in km; null where none is declared. */
export function declaredKilometres(declared: DistanceAsTyped | null): number | null {
  if (declared === null || declared.value <= 0) return null;
  const distance = fromTyped(declared);
  return distance.ok ? toKilometres(distance.value) : null;
}
