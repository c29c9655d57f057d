import { dayNumber } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { must } from '../result/assert.ts';
import { fromTyped, toKilometres, type DistanceAsTyped } from '../units/distance.ts';
import type { Car } from './car.ts';
import { HOUSEHOLD_ID, households } from './household.ts';
import { layUps, type LayUp } from './lay-up.ts';
import { useChanges, type UseChange } from './use-change.ts';
import type { UsageInput } from './usage-rate.ts';
import { makeSeason, type Hemisphere } from './usage-season.ts';

/** What the keeper told of a car's use, beside its readings. */
export interface ToldUse {
  readonly hemisphere: Hemisphere;
  readonly declaredAYear: DistanceAsTyped | null;
  readonly laidUpMonths: readonly number[];
  readonly layUps: readonly LayUp[];
  readonly changes: readonly UseChange[];
}

/** What was told of a car's use, from what stands now. */
export function toldUse(facts: Facts, car: Car): ToldUse {
  const { hemisphere } = must(facts.get(households, HOUSEHOLD_ID), 'household');
  const { declaredAYear, laidUpMonths } = car;
  return { hemisphere, declaredAYear, laidUpMonths, layUps: facts.ofCar(layUps, car.id), changes: facts.ofCar(useChanges, car.id) };
}

/** What was told, as the forecaster takes it: all but the readings. */
export type UsageTold = Required<Omit<UsageInput, 'readings'>>;

/** What was told, for the forecaster. */
export function usageTold(told: ToldUse): UsageTold {
  const asleep = told.layUps.map(({ from, to }) => ({ from: dayNumber(from), to: to === null ? null : dayNumber(to) }));
  return {
    season: makeSeason(told.hemisphere, told.laidUpMonths, asleep),
    declaredKmAYear: declaredKilometres(told.declaredAYear),
    changes: told.changes.map((change) => ({ day: dayNumber(change.date), declaredKmAYear: declaredKilometres(change.declaredAYear) })),
  };
}

/** The declared distance a year in km; null where none is declared, and none is less than a metre. */
function declaredKilometres(declared: DistanceAsTyped | null): number | null {
  const distance = declared === null ? null : fromTyped(declared);
  return distance === null || !distance.ok || distance.value === 0 ? null : toKilometres(distance.value);
}
