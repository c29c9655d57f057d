import type { Car } from '../../../shared-core/fleet/car.ts';
import type { Instrument } from '../../../shared-core/fleet/instrument.ts';
import type { Reading } from '../../../shared-core/fleet/reading.ts';
import { fromTyped, type DistanceUnit, type Metres } from '../../../shared-core/units/distance.ts';
import { day } from '../calendar/day.ts';

/** Metres written in a test. */
export function metresOf(value: number, unit: DistanceUnit = 'km'): Metres {
  const distance = fromTyped({ value, unit });
  if (!distance.ok) throw new Error(`not a distance: ${value} ${unit}`);
  return distance.value;
}

/** An invented small car, registered on 2020-03-01. */
export const pip: Car = {
  id: 'pip', name: 'Pip', description: 'small hatch', power: 'petrol', year: 2020, firstRegistered: day('2020-03-01'), keptSince: null, unit: 'km', vin: null,
  registration: null, use: 'everyday', declaredAYear: null, laidUpMonths: [], severeUse: 1,
};

/** A reading in km on a date, accepted unless said otherwise. */
export function readingOn(date: string, km: number, more: Partial<Reading> = {}): Reading {
  return {
    id: `r-${date}-${km}`, car: 'pip', date: day(date), typed: { value: km, unit: 'km' }, shown: metresOf(km), instrument: null, source: 'keeper', paper: null, note: '',
    standing: 'accepted', doubt: null, sure: false, ...more,
  };
}

/** An instrument that showed `shows` km when the car had gone `distance` km. */
export function instrumentFrom(date: string, shows: number, distance: number, id = `i-${date}`): Instrument {
  return { id, car: 'pip', date: day(date), firstShown: metresOf(shows), distance: metresOf(distance), estimated: false, unit: 'km', note: '' };
}
