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
/** One gets better, or the car older: only the newest times count. */
const NEWEST = 10;

/**
 * What one's own times say of a task, together with its start value. Times are taken as log-normal: half as long and twice as
 * long are equally far off. Null where there is neither a start value nor a time.
 *
 * Source: shrinkage of a mean and a variance towards prior ones (normal model with conjugate prior; from memory); its coverage is a test.
 *
 * @param start minutes; null: nobody has said. @param own one's own times in minutes, oldest first, all above 0.
 * @example learnedMinutes(60, []) //=> { minutes: 60, low: 34, high: 106, own: 0 }
 */
export function learnedMinutes(start: number | null, own: readonly number[]): LearnedMinutes | null {
  const times = own.slice(-NEWEST).map(Math.log);
  if (start === null && times.length === 0) return null;
  const weight = start === null ? 0 : START_COUNTS;
  const count = times.length + weight;
  const mean = (sum(times) + weight * Math.log(start ?? 1)) / count;
  const variance = (SPREAD_COUNTS * (START_SPREAD / Z_OF_FOUR_FIFTHS) ** 2 + sum(times.map((time) => (time - mean) ** 2))) / (SPREAD_COUNTS + times.length);
  const reach = Z_OF_FOUR_FIFTHS * Math.sqrt(variance * (1 + 1 / count));
  return { minutes: whole(mean), low: whole(mean - reach), high: whole(mean + reach), own: times.length };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function whole(log: number): number {
  return Math.max(1, Math.round(Math.exp(log)));
}
