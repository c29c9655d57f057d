import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import { METRES_IN, toKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import { dayKm, type CarUse } from './car-usage.ts';
import { offsetOf, wholeDistance } from './continuous-distance.ts';
import type { OdometerBand } from './odometer-forecast.ts';
import { judgeReading, type ReadingDoubt } from './reading-judgement.ts';
import { suggestRepairs, type ReadingRepair } from './reading-repairs.ts';
import type { Reading } from './reading.ts';
import { fitUsage, type Usage } from './usage-rate.ts';

/** A reading of a car to be judged, as typed and in metres. */
export interface CarReading {
  readonly date: LocalDate;
  readonly typed: DistanceAsTyped;
  readonly shown: Metres;
  readonly instrument: string | null;
}

/** What is to be said of it: nothing, or the doubt, the other reading it speaks against, and what may have been meant. */
export interface CarReadingVerdict {
  readonly doubt: ReadingDoubt | null;
  readonly against: ContradictedReading | null;
  /** Expected on the day, km of the car's whole distance; null with no doubt or no earlier reading. */
  readonly expected: OdometerBand | null;
  readonly repairs: readonly ReadingRepair[];
}

/** The accepted reading that a doubtful one does not agree with. */
export interface ContradictedReading {
  readonly reading: Reading;
  /** Without it the doubtful one would fit, and better than it does itself: then it is the likelier slip of the two. */
  readonly likelierSlip: boolean;
}

const NO_DOUBT: CarReadingVerdict = { doubt: null, against: null, expected: null, repairs: [] };

/**
 * Judges a reading against the car's accepted ones. Where it is doubtful, names the accepted one it contradicts, and
 * suggests at most three values that one slip of the hand would explain.
 *
 * @example judgeCarReading(use, { date, typed: { value: 20_300, unit: 'km' }, shown, instrument: null }).doubt //=> 'decrease'
 */
export function judgeCarReading(use: CarUse, reading: CarReading): CarReadingVerdict {
  const known = use.points.map(dayKm);
  const km = toKilometres(wholeDistance(reading, use.instruments));
  const judged = judgeReading({ ...use.usageTold, readings: known, candidate: { day: dayNumber(reading.date), km } });
  if (judged.state === 'accepted') return NO_DOUBT;
  const other = must(use.points[known.indexOf(judged.against)], 'contradicted reading').reading;
  return {
    doubt: judged.code,
    against: { reading: other, likelierSlip: judged.otherLikelier },
    expected: judged.expected,
    repairs: repairsOf(use, reading),
  };
}

function repairsOf(use: CarUse, reading: CarReading): readonly ReadingRepair[] {
  const usage = usageBefore(use, reading.date);
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

/** How the car was used by its readings of earlier days; null with none. */
export function usageBefore(use: Pick<CarUse, 'points' | 'usageTold'>, date: LocalDate): Usage | null {
  return fitUsage({ ...use.usageTold, readings: use.points.filter((point) => point.date < date).map(dayKm) });
}
