import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import { METRES_IN, toKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import type { CarUse } from './car-usage.ts';
import { dayKm } from './car-usage.ts';
import { offsetOf, wholeDistance, type DistancePoint } from './continuous-distance.ts';
import { judgeReading, type ReadingDoubt } from './reading-judgement.ts';
import { suggestRepairs, type ReadingRepair } from './reading-repairs.ts';
import { fitUsage, type Usage } from './usage-rate.ts';
import type { Season } from './usage-season.ts';

/** A reading of a car to be judged, as typed and in metres. */
export interface CarReading {
  readonly date: LocalDate;
  readonly typed: DistanceAsTyped;
  readonly shown: Metres;
  readonly instrument: string | null;
}

/** What is to be said of it: nothing, or the doubt and what may have been meant. */
export interface CarReadingVerdict {
  readonly doubt: ReadingDoubt | null;
  readonly repairs: readonly ReadingRepair[];
}

/**
 * Judges a reading against the car's accepted ones and, where it is doubtful, suggests at most three values that one
 * slip of the hand would explain.
 *
 * @example judgeCarReading(use, season, { date, typed: { value: 20_300, unit: 'km' }, shown, instrument: null }).doubt //=> 'decrease'
 */
export function judgeCarReading(use: CarUse, season: Season, reading: CarReading, declaredKmAYear: number | null): CarReadingVerdict {
  const km = toKilometres(wholeDistance(reading, use.instruments));
  const judged = judgeReading({ readings: use.points.map(dayKm), candidate: { day: dayNumber(reading.date), km }, declaredKmAYear, season });
  if (judged.state === 'accepted') return { doubt: null, repairs: [] };
  return { doubt: judged.code, repairs: repairsOf(use, season, reading, declaredKmAYear) };
}

function repairsOf(use: CarUse, season: Season, reading: CarReading, declaredKmAYear: number | null): readonly ReadingRepair[] {
  const usage = usageBefore(use.points, reading.date, season, declaredKmAYear);
  if (usage === null) return [];
  const following = use.points.find((point) => point.date > reading.date);
  return suggestRepairs({
    usage,
    day: dayNumber(reading.date),
    value: reading.typed.value,
    kmPerUnit: METRES_IN[reading.typed.unit] / 1000,
    offsetKm: offsetOf(use.instruments, reading.instrument) / 1000,
    atMostKm: following === undefined ? null : toKilometres(following.metres),
  });
}

function usageBefore(points: readonly DistancePoint[], date: LocalDate, season: Season, declaredKmAYear: number | null): Usage | null {
  const earlier = points.filter((point) => point.date < date);
  return earlier.length === 0 ? null : must(fitUsage({ readings: earlier.map(dayKm), declaredKmAYear, season }), 'usage');
}
