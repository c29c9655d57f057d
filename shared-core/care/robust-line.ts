import { must } from '../result/assert.ts';

/** A point of a scatter; any units. */
export interface LinePoint {
  readonly x: number;
  readonly y: number;
}

/** y = intercept + slope * x. */
export interface RobustLine {
  readonly slope: number;
  readonly intercept: number;
}

/** The slopes between which the true one lies, at the confidence asked for. */
export interface SlopeBand {
  readonly low: number;
  readonly high: number;
}

/**
 * The line through points that a few wrong ones cannot bend: its slope is the median of the slopes of all pairs, its
 * intercept the median of what that slope leaves of each point ('joint': as many points lie above the line as below). The
 * other usual intercept ('separate': through the medians of x and of y) leaves no such balance, and with it a later point
 * on the line would move the line. Null where no two points differ in x. `slopes`: of these points, where they are known.
 *
 * Source: Theil (1950), Sen, J. Am. Stat. Assoc. 63 (1968) 1379 (from memory; both checked against published values).
 * @example robustLine([{ x: 0, y: 8 }, { x: 10, y: 6 }]) //=> { slope: -0.2, intercept: 8 }
 */
export function robustLine(points: readonly LinePoint[], slopes: PairSlopes = pairSlopes(points)): RobustLine | null {
  if (slopes.length === 0) return null;
  const slope = median(slopes);
  return { slope, intercept: jointIntercept(points, slope) };
}

/** The intercept that a slope leaves: half of the points lie above the line, half below. */
export function jointIntercept(points: readonly LinePoint[], slope: number): number {
  return median(points.map(({ x, y }) => y - slope * x).sort(ascending));
}

/**
 * The band of slopes by ranks, for `z` standard deviations of Kendall's statistic on either side (1.2816: 80 %, 1.96: 95 %).
 * Ranks past the ends are those of the steepest slopes: three points can give no more than 67 %. Null as for the line.
 *
 * Source: Sen (1968), equation 2.6 with ties (from memory; both published bands are tests).
 * @example slopeBand(points, 1.2816) //=> { low: -0.31, high: -0.18 }
 */
export function slopeBand(points: readonly LinePoint[], z: number, slopes: PairSlopes = pairSlopes(points)): SlopeBand | null {
  if (slopes.length === 0) return null;
  const reach = z * Math.sqrt(kendallVariance(points));
  const low = Math.max(Math.round((slopes.length - reach) / 2) - 1, 0);
  const high = Math.min(Math.round((slopes.length + reach) / 2), slopes.length - 1);
  return { low: must(slopes[low], 'low slope'), high: must(slopes[high], 'high slope') };
}

/** The slopes of all pairs of points that differ in x, in rising order. */
export type PairSlopes = readonly number[];

/** The slopes of all pairs of points. */
export function pairSlopes(points: readonly LinePoint[]): PairSlopes {
  return points.reduce<PairSlopes>((slopes, point, at) => slopesWith(slopes, points.slice(0, at), point), []);
}

/** The slopes of all pairs once a point has joined those that gave `slopes`: merged, so that a long series need not be sorted again. */
export function slopesWith(slopes: PairSlopes, points: readonly LinePoint[], point: LinePoint): PairSlopes {
  // + 0 makes a negative zero an ordinary one: which it is would hang on the order of the points.
  const more = points.flatMap((one) => (one.x === point.x ? [] : [(point.y - one.y) / (point.x - one.x) + 0])).sort(ascending);
  const merged: number[] = [];
  let at = 0;
  for (const slope of more) {
    while (at < slopes.length && must(slopes[at], 'slope') <= slope) merged.push(must(slopes[at++], 'slope'));
    merged.push(slope);
  }
  return merged.concat(slopes.slice(at));
}

/** The variance of the number of rising pairs less the number of falling ones, if there were no slope at all. */
function kendallVariance(points: readonly LinePoint[]): number {
  const part = (count: number) => count * (count - 1) * (2 * count + 5);
  const tied = (values: readonly number[]) => tieCounts(values).reduce((sum, count) => sum + part(count), 0);
  return (part(points.length) - tied(points.map((point) => point.x)) - tied(points.map((point) => point.y))) / 18;
}

function tieCounts(values: readonly number[]): readonly number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()];
}

/** Of sorted values, the middle one, or halfway between the two middle ones. */
function median(sorted: readonly number[]): number {
  const middle = sorted.length >> 1;
  const upper = must(sorted[middle], 'middle value');
  return sorted.length % 2 === 1 ? upper : (must(sorted[middle - 1], 'lower middle value') + upper) / 2;
}

function ascending(a: number, b: number): number {
  return a - b;
}
