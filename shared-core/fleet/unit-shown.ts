import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { DistanceUnit } from '../units/distance.ts';
import type { Car } from './car.ts';
import { instrumentOn } from './continuous-distance.ts';
import { instruments } from './instrument.ts';
import { readings } from './reading.ts';

/**
 * The unit in which a car's odometer showed its distance on a date: that of the instrument then in it. The first
 * instrument's is the car's own or, once an instrument was replaced, the one in which most of its readings were typed.
 *
 * @example unitShownOn(facts, car, date) //=> 'mi' before the instrument that shows km was put in
 */
export function unitShownOn(facts: Facts, car: Car, date: LocalDate): DistanceUnit {
  return instrumentOn(facts.ofCar(instruments, car.id), date)?.unit ?? unitOfTheFirst(facts, car);
}

/** A unit, and the day from which the odometer shows it; null: from the beginning. */
export interface UnitFrom {
  readonly from: LocalDate | null;
  readonly unit: DistanceUnit;
}

/** The units in which a car's odometer has shown its distance, one for each instrument, in order. */
export function unitsShown(facts: Facts, car: Car): readonly UnitFrom[] {
  const replaced = [...facts.ofCar(instruments, car.id)].sort((a, b) => (a.date < b.date ? -1 : 1));
  return [{ from: null, unit: unitOfTheFirst(facts, car) }, ...replaced.map(({ date, unit }) => ({ from: date, unit }))];
}

function unitOfTheFirst(facts: Facts, car: Car): DistanceUnit {
  if (facts.ofCar(instruments, car.id).length === 0) return car.unit;
  const typedIn = facts.ofCar(readings, car.id).filter((reading) => reading.instrument === null && reading.standing === 'accepted').map((reading) => reading.typed.unit);
  const miles = typedIn.filter((unit) => unit === 'mi').length;
  // As many of one as of the other say nothing: a garage may write km of an odometer that shows miles.
  if (miles * 2 === typedIn.length) return car.unit;
  return miles * 2 > typedIn.length ? 'mi' : 'km';
}
