/** How long a task takes: the likely minutes, and between which four times in five it will end. */
export interface LearnedMinutes {
  readonly minutes: number;
  readonly low: number;
  readonly high: number;
  /** How many of one's own times it goes by; 0: the start value alone. */
  readonly own: number;
}

/** The start value counts as one of one's own times. */
const START_COUNTS = 1;
/** Before there are times of one's own, a task takes between two thirds of the start value and half as much again: ours, no source. */
const START_SPREAD = Math.log(1.5);
/** That spread counts as so many times. */
const SPREAD_COUNTS = 4;
/** Four in five of a normal distribution lie within so many standard deviations. */
const Z_OF_FOUR_FIFTHS = 1.2816;
/** Times count in full up to the first of these distances from the middle, less and less up to the last, and beyond it not at all. */
const [IN_FULL, HELD, NOT_AT_ALL] = [2, 4, 8];
/** Distances count in standard deviations of one new time before there are times of one's own, and wider where the times themselves lie wider apart. */
const DISTANCE = (START_SPREAD / Z_OF_FOUR_FIFTHS) * Math.SQRT2;
/** The median distance from the middle times this is the standard deviation of a normal distribution. */
const MEDIAN_TO_DEVIATION = 1.4826;
/** The start value stands twice in the middle, so that a single time is held against what was said. */
const START_IN_MIDDLE = 2;
/** One gets better, or the car older: only the newest times count. */
const NEWEST = 10;

/**
 * What one's own times say of a task, together with its start value. Times are taken as log-normal: half as long and twice as
 * long are equally far off, and one that is far from the others, a slip, counts little or nothing. Null where there is neither a start value nor a time.
 *
 * Source: one step of Hampel's three-part weights with 2, 4, 8 from the median, in units of the median distance from it (F. R. Hampel, 1974; Andrews et al.,
 * Robust Estimates of Location, 1972; both from memory), then shrinkage of a mean and a variance towards prior ones (normal model with conjugate
 * prior; from memory); its coverage and the bound on what one time can move are tests.
 *
 * @param start minutes; null: nobody has said. @param own one's own times in minutes, oldest first, all above 0.
 * @example learnedMinutes(60, []) //=> { minutes: 60, low: 34, high: 106, own: 0 }
 */
export function learnedMinutes(start: number | null, own: readonly number[]): LearnedMinutes | null {
  const times = own.slice(-NEWEST).map(Math.log);
  if (start === null && times.length === 0) return null;
  const said = start === null ? [] : [Math.log(start)];
  const standing = [...times, ...Array.from({ length: START_IN_MIDDLE }, () => said).flat()];
  const middle = median(standing);
  const unit = Math.max(DISTANCE, MEDIAN_TO_DEVIATION * median(standing.map((time) => Math.abs(time - middle))));
  const weighed = (time: number) => ({ time, weight: weightAt(Math.abs(time - middle) / unit) });
  const heard = times.map(weighed);
  const all = [...heard, ...said.map(weighed).map(({ time, weight }) => ({ time, weight: START_COUNTS * weight }))];
  const count = sum(all.map((one) => one.weight));
  const mean = sum(all.map(({ time, weight }) => weight * time)) / count;
  const variance = (SPREAD_COUNTS * (START_SPREAD / Z_OF_FOUR_FIFTHS) ** 2 + sum(heard.map(({ time, weight }) => weight * (time - mean) ** 2))) / (SPREAD_COUNTS + sum(heard.map((one) => one.weight)));
  const reach = Z_OF_FOUR_FIFTHS * Math.sqrt(variance * (1 + 1 / count));
  return { minutes: whole(mean), low: whole(mean - reach), high: whole(mean + reach), own: times.length };
}

/** Hampel's weight at a distance from the middle. At least half of what makes the middle counts in full, so that there is always something to go by. */
function weightAt(far: number): number {
  if (far <= IN_FULL) return 1;
  return far <= HELD ? IN_FULL / far : Math.max(0, (IN_FULL * (NOT_AT_ALL - far)) / ((NOT_AT_ALL - HELD) * far));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)] ?? 0, sorted[Math.ceil((sorted.length - 1) / 2)] ?? 0];
  return (low + high) / 2;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function whole(log: number): number {
  return Math.max(1, Math.round(Math.exp(log)));
}
