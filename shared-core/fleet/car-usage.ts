import { dayNumber } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { toKilometres } from '../units/distance.ts';
import type { Car } from './car.ts';
import { distancePoints, type DistancePoint } from './continuous-distance.ts';
import { instruments, type Instrument } from './instrument.ts';
import { readings, type Reading } from './reading.ts';
import { toldUse, usageTold, type ToldUse, type UsageTold } from './told-use.ts';
import { fitUsage, type DayKm, type Usage } from './usage-rate.ts';

/** What a car's readings come to: the accepted ones on one whole distance, and how the car is used. */
export interface CarUse {
  readonly points: readonly DistancePoint[];
  readonly instruments: readonly Instrument[];
  /** What the keeper told of its use, and the same as the forecaster takes it. */
  readonly told: ToldUse;
  readonly usageTold: UsageTold;
  /** Null while there is no accepted reading. */
  readonly usage: Usage | null;
  /** Set aside and not settled, in order of id. */
  readonly doubtful: readonly Reading[];
}

/** How a car is used, from what stands now. */
export function carUse(facts: Facts, car: Car): CarUse {
  return carUseOf(facts.ofCar(readings, car.id), facts.ofCar(instruments, car.id), toldUse(facts, car));
}

/** How a car is used, from readings given. @example carUseOf(readings, [], told).usage?.ratePerSeasonDay */
export function carUseOf(all: readonly Reading[], replaced: readonly Instrument[], told: ToldUse): CarUse {
  const points = distancePoints(all, replaced);
  const given = usageTold(told);
  return {
    points,
    instruments: replaced,
    told,
    usageTold: given,
    usage: fitUsage({ ...given, readings: points.map(dayKm) }),
    doubtful: all.filter((reading) => reading.standing === 'set-aside'),
  };
}

/** A point as the forecaster takes it. */
export function dayKm(point: Pick<DistancePoint, 'date' | 'metres'>): DayKm {
  return { day: dayNumber(point.date), km: toKilometres(point.metres) };
}
