import type { LocalDate } from '../calendar/local-date.ts';
import type { DistanceUnit } from '../units/distance.ts';
import { odometerCurve } from './odometer-curve.ts';
import type { SampleCar } from './sample-car.ts';

/** What the instrument of a sample car shows. */
export interface SampleInstrument {
  readonly unit: DistanceUnit;
  /** On a day: the new instrument's value from the day of its replacement on. */
  readonly shown: (date: LocalDate) => number;
  /** What the old instrument would show on that day. */
  readonly oldShown: (date: LocalDate) => number;
}

/** The instrument of a sample car, by its story. */
export function sampleInstrument(car: SampleCar): SampleInstrument {
  const { replaced } = car.odometer;
  const whole = odometerCurve({ ...car.odometer, laidUpMonths: car.car.laidUpMonths });
  const shown = (date: LocalDate) =>
    replaced === undefined || date < replaced.on ? whole(date) : whole(date) - whole(replaced.on) + replaced.shows;
  return { unit: car.car.unit, shown, oldShown: whole };
}
