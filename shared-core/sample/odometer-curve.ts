import { addMonths } from '../calendar/add-months.ts';
import { dayNumber, fromDayNumber, monthOf, type LocalDate } from '../calendar/local-date.ts';
import { makeSeason } from '../fleet/usage-season.ts';
import { assert, must } from '../result/assert.ts';
import { sampleRandom } from './sample-random.ts';

/** How a car of the sample was driven, in the unit of its instrument. */
export interface OdometerStory {
  readonly from: LocalDate;
  readonly start: number;
  /** Distance in each year counted from the first day: exact, whatever today is. */
  readonly perYear: readonly number[];
  readonly seed: number;
  readonly laidUpMonths: readonly number[];
}

/** The whole distance of a sample car at the start of a day, in whole units. */
export type OdometerCurve = (date: LocalDate) => number;

/** Months differ by as much as this from their usual distance. */
const SCATTER = 0.3;
/** Sums of floating numbers may fall a hair short of a whole one. */
const HAIR = 1e-6;

/**
 * The distance of a car by day: each year's distance spread over its days by the season (next to nothing while the car
 * sleeps) and by a scatter from month to month that is always the same for the seed.
 *
 * @example odometerCurve({ from: '2022-11-25', start: 6, perYear: [8000], seed: 3, laidUpMonths: [] })('2023-11-25') //=> 8006
 */
export function odometerCurve(story: OdometerStory): OdometerCurve {
  const first = dayNumber(story.from);
  const driven = drivenByDay(story);
  return (date) => {
    const day = dayNumber(date) - first;
    assert(day >= 0, `the sample knows no distance before ${story.from}`);
    return Math.floor(story.start + must(driven[day], `distance of the sample on ${date}`) + HAIR);
  };
}

/** Distance driven before each day, counted from the first. */
function drivenByDay(story: OdometerStory): readonly number[] {
  const driven = [0];
  const scatter = sampleRandom(story.seed);
  for (const [year, distance] of story.perYear.entries()) {
    const weights = weightsOfYear(story, year, scatter);
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    for (const weight of weights) driven.push((driven.at(-1) ?? 0) + (distance * weight) / total);
  }
  return driven;
}

function weightsOfYear(story: OdometerStory, year: number, scatter: () => number): readonly number[] {
  const { multipliers } = makeSeason('north', story.laidUpMonths);
  return Array.from({ length: 12 }, (_, month) => 12 * year + month).flatMap((month) => {
    const factor = 1 + SCATTER * (2 * scatter() - 1);
    const [start, end] = [dayNumber(addMonths(story.from, month)), dayNumber(addMonths(story.from, month + 1))];
    return Array.from({ length: end - start }, (_, day) => factor * (multipliers[monthOf(fromDayNumber(start + day)) - 1] ?? 1));
  });
}
