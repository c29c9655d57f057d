import { assert } from '../result/assert.ts';
import { drivableIn } from './drivable-in.ts';
import { kmAtZ, likelyBetween, spreadOfLog, Z_OF_EDGE, type OdometerBand } from './odometer-forecast.ts';
import { fitUsage, type DayKm, type Usage, type UsageInput } from './usage-rate.ts';

/**
 * Why a reading is doubtful. `decrease`: lower than the reading before it. `too-high`: far more than the car's use
 * explains. `same-day`: so far under another of its day that no car drives that in a day. `above-later`: higher than a
 * reading of a later day. `later-too-high`: it would leave too much for the next.
 */
export type ReadingDoubt = 'decrease' | 'too-high' | 'same-day' | 'above-later' | 'later-too-high';

/** What the gate says of a reading: to be taken, or to be kept aside and asked about. It is never dropped or corrected. */
export type ReadingJudgement =
  | { readonly state: 'accepted' }
  | {
      readonly state: 'doubtful';
      readonly code: ReadingDoubt;
      /** The accepted reading that it does not agree with: show both, either may be wrong. */
      readonly against: DayKm;
      /** Without `against` this reading would be taken. */
      readonly fitsWithoutOther: boolean;
      /** It would be taken, and lies nearer to what the readings before both lead to: then `against` is the likelier slip. */
      readonly otherLikelier: boolean;
      /** What was expected on the day, km; null with no earlier reading. */
      readonly expected: OdometerBand | null;
    };

/** A reading to be judged, and what is known. Readings: accepted, sorted by day, never falling; distances in continuous km. */
export interface ReadingToJudge extends UsageInput {
  readonly candidate: DayKm;
}

/** Source of the limits: house measurement on raw logs (FORECAST section 6): 0.2 to 0.35 % of clean readings are asked about. */
const HIGH_Z = 3;
const HIGH_KM = 1200;
const SHORTEST_SPREAD_DAYS = 7;

/**
 * How far a distance driven between two days lies from the likely one, in standard deviations of its logarithm. A negative
 * distance answers -Infinity: an odometer cannot explain it. Source: FORECAST section 6.
 */
export function zOfDistance(usage: Usage, fromDay: number, toDay: number, km: number): number {
  if (km < 0) return -Infinity;
  const days = Math.max(1, toDay - fromDay);
  const slack = 3 * usage.ratePerSeasonDay;
  const ratio = (km + slack) / (likelyBetween(usage, fromDay, fromDay + days) + slack);
  return Math.log(ratio) / spreadOfLog(usage, Math.max(days, SHORTEST_SPREAD_DAYS));
}

/** The same for a reading on or after the last reading of the usage. */
export function zOfReading(usage: Usage, reading: DayKm): number {
  return zOfDistance(usage, usage.lastDay, reading.day, reading.km - usage.lastKm);
}

/**
 * The gate for a reading that follows the last one: a fall, or a rise far beyond the car's use. A low rise always passes: cars rest.
 *
 * Source: house method, FORECAST section 6.
 * @example gateReading(usage, { day: usage.lastDay + 7, km: usage.lastKm - 1 }) //=> 'decrease'
 */
export function gateReading(usage: Usage, reading: DayKm): 'decrease' | 'too-high' | null {
  assert(reading.day >= usage.lastDay, 'the gate looks at a reading after the last one');
  const km = reading.km - usage.lastKm;
  const days = Math.max(1, reading.day - usage.lastDay);
  if (km < 0) return 'decrease';
  const beyond = km - likelyBetween(usage, usage.lastDay, usage.lastDay + days);
  if (beyond > HIGH_KM && zOfReading(usage, reading) > HIGH_Z) return 'too-high';
  return drivableIn(days, km) ? null : 'too-high';
}

/**
 * Judges a reading by those of earlier days, then against the next later one. Of two on the same day a lower one is judged
 * by the earlier days: it is no error by itself, for the highest of a day counts, unless no car can be driven from one to
 * the other in a day. The first reading is always taken.
 */
export function judgeReading(input: ReadingToJudge): ReadingJudgement {
  const { candidate, readings } = input;
  const earlier = readings.filter((reading) => precedes(reading, candidate));
  const next = readings.find((reading) => reading.day > candidate.day);
  const usage = fitUsage({ ...input, readings: earlier });
  const code = usage === null ? null : gateReading(usage, candidate);
  const before = earlier.at(-1);
  if (code !== null && before !== undefined) return doubt(input, code, before, usage);
  const sameDay = readings.find((reading) => reading.day === candidate.day && !drivableIn(0, reading.km - candidate.km));
  if (sameDay !== undefined) return doubt(input, 'same-day', sameDay, usage);
  const laterCode = next === undefined ? null : doubtFromNext(input, next);
  return laterCode === null || next === undefined ? { state: 'accepted' } : doubt(input, laterCode, next, usage);
}

function precedes(reading: DayKm, candidate: DayKm): boolean {
  return reading.day < candidate.day || (reading.day === candidate.day && reading.km <= candidate.km);
}

/** A reading entered late must also leave the next one possible, unless that one was out of line without it. */
function doubtFromNext(input: ReadingToJudge, next: DayKm): ReadingDoubt | null {
  if (input.candidate.km > next.km) return 'above-later';
  const upToDay = input.readings.filter((reading) => reading.day <= input.candidate.day);
  const without = fitUsage({ ...input, readings: upToDay });
  if (without !== null && gateReading(without, next) === 'too-high') return null;
  const withIt = fitUsage({ ...input, readings: [...upToDay, input.candidate].sort((a, b) => a.day - b.day || a.km - b.km) });
  return withIt !== null && gateReading(withIt, next) === 'too-high' ? 'later-too-high' : null;
}

function doubt(input: ReadingToJudge, code: ReadingDoubt, against: DayKm, usage: Usage | null): ReadingJudgement {
  const without = { ...input, readings: input.readings.filter((reading) => reading !== against) };
  const fitsWithoutOther = judgedAlone(without);
  const otherLikelier = fitsWithoutOther && farFromLikely(without, input.candidate) < farFromLikely(without, against);
  return { state: 'doubtful', code, against, fitsWithoutOther, otherLikelier, expected: usage === null ? null : expectedOn(usage, input.candidate.day) };
}

/** |z| by the readings before it; 0 with none, for nothing then speaks against it. A low one is taken too, but is not as likely. */
function farFromLikely(input: UsageInput, reading: DayKm): number {
  const usage = fitUsage({ ...input, readings: input.readings.filter((earlier) => precedes(earlier, reading)) });
  return usage === null ? 0 : Math.abs(zOfReading(usage, reading));
}

/** With no other reading left nothing speaks for either, so that does not count as fitting. */
function judgedAlone(input: ReadingToJudge): boolean {
  return input.readings.length > 0 && judgeReading(input).state === 'accepted';
}

function expectedOn(usage: Usage, day: number): OdometerBand {
  const days = Math.max(1, day - usage.lastDay);
  const at = (z: number) => usage.lastKm + kmAtZ(usage, days, z);
  return { low: at(-Z_OF_EDGE), likely: at(0), high: at(Z_OF_EDGE) };
}
