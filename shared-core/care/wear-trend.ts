import type { LocalDate } from '../calendar/local-date.ts';
import { Z_OF_EDGE } from '../fleet/odometer-forecast.ts';
import { assert, must } from '../result/assert.ts';
import { jointIntercept, pairSlopes, robustLine, slopeBand, slopesWith, type LinePoint, type PairSlopes, type RobustLine, type SlopeBand } from './robust-line.ts';

/** One value that counts: `along` is what it wears with, metres of distance or day number; never falling with the date. */
export interface WearPoint {
  readonly date: LocalDate;
  readonly along: number;
  /** In the canonical unit. */
  readonly value: number;
}

/** How a thing is measured: whether its value rises towards the limit, and how far ordinary gauges differ (standard deviation). */
export interface WearScale {
  readonly rises: boolean;
  readonly error: number;
}

/**
 * What measurements come to. `too-few`: fewer than two days between which it could have worn. `contradictory`: it gets
 * better, beyond what gauges differ, from one measurement to a later one. `flat`: no wear yet beyond what gauges differ.
 * `wears`: a line.
 * The band holds four fifths of the slopes; lines as value over `along`.
 */
export type WearTrend =
  | { readonly state: 'too-few'; readonly have: number }
  | { readonly state: 'contradictory'; readonly from: WearPoint; readonly to: WearPoint }
  | SeenWear;

/** A line through measurements, and the band of its slope. */
export interface SeenWear {
  readonly state: 'flat' | 'wears';
  readonly line: RobustLine;
  readonly band: SlopeBand;
}

/** Sen's band is of no use below this many points: it cannot reach 80 %. */
const ENOUGH_FOR_RANKS = 3;
/** A lasting step the wrong way counts from twice the gauges' difference: ours, no source. */
const ERRORS_IN_A_STEP = 2;

/** How something wears by its measurements, in order of date. @example wearTrend(points, { rises: false, error: 0.2 }).state //=> 'wears' */
export function wearTrend(points: readonly WearPoint[], scale: WearScale): WearTrend {
  const falling = points.map((point) => asFalling(point, scale));
  const step = wrongStep(falling, scale.error);
  if (step !== null) return { state: 'contradictory', from: must(points[step - 1], 'point before'), to: must(points[step], 'point') };
  const fitted = fallingLine(falling, scale.error);
  if (fitted === null) return { state: 'too-few', have: new Set(points.map((point) => point.along)).size };
  if (fitted.band.low > 0) return { state: 'contradictory', from: must(points[0], 'first point'), to: must(points.at(-1), 'last point') };
  const { line, band } = fitted;
  return { state: isSeen(falling, scale.error) ? 'wears' : 'flat', ...(scale.rises ? turned(line, band) : { line, band }) };
}

/** Where the limit is reached, as `along`: 1 in 10 before `earliest`, 1 in 10 after `latest`; null where the line does not lead there. */
export interface LimitReached {
  readonly earliest: number | null;
  readonly likely: number | null;
  readonly latest: number | null;
}

/**
 * Where measurements lead to a limit: the steepest line of the band, the line itself, the flattest one, each through the
 * middle of the points. A measurement that falls on the line found before it, within what gauges differ, confirms the
 * window found before: it can only narrow it. Null unless there is a line.
 *
 * Source: our own construction; its coverage is measured in the test.
 */
export function limitReached(points: readonly WearPoint[], limit: number, scale: WearScale): LimitReached | null {
  // From the first point on, so that where it began to wear changes nothing, not even the last digit.
  const origin = points[0]?.along ?? 0;
  const falling = points.map((point) => asFalling({ ...point, along: point.along - origin }, scale));
  const target = scale.rises ? -limit : limit;
  let last: Window | null = null;
  let slopes: PairSlopes = [];
  for (const [at, point] of falling.entries()) {
    slopes = slopesWith(slopes, falling.slice(0, at), point);
    last = windowOf(falling.slice(0, at + 1), slopes, target, scale.error, last);
  }
  return last === null ? null : { earliest: placed(last.earliest, origin), likely: placed(last.likely, origin), latest: placed(last.latest, origin) };
}

interface Window {
  readonly line: RobustLine;
  readonly earliest: number;
  readonly likely: number;
  readonly latest: number;
}

function windowOf(points: readonly LinePoint[], slopes: PairSlopes, target: number, error: number, before: Window | null): Window | null {
  const fitted = wrongStep(points, error) === null ? fallingLine(points, error, slopes) : null;
  if (fitted === null || fitted.band.low > 0) return null;
  const at = (slope: number) => (slope < 0 ? (target - jointIntercept(points, slope)) / slope : Infinity);
  const found = { line: fitted.line, earliest: at(fitted.band.low), likely: at(fitted.line.slope), latest: at(fitted.band.high) };
  const newest = must(points.at(-1), 'newest point');
  if (before === null || !confirms(before.line, newest, error)) return found;
  const [earliest, latest] = [Math.max(found.earliest, before.earliest), Math.min(found.latest, before.latest)];
  // Two measurements at one place can move the line out of the window that both confirm: the window stands, its edge is the likely place.
  return earliest <= latest ? { ...found, earliest, latest, likely: Math.min(Math.max(found.likely, earliest), latest) } : { ...before, line: found.line };
}

interface FallingLine {
  readonly line: RobustLine;
  readonly band: SlopeBand;
  /** By how much the gauges alone may tilt it. */
  readonly least: number;
}

/** The line and the band of its slope, never narrower than the gauges allow over so many points spread so far. */
function fallingLine(points: readonly LinePoint[], error: number, slopes: PairSlopes = pairSlopes(points)): FallingLine | null {
  const line = robustLine(points, slopes);
  if (line === null) return null;
  const least = (Z_OF_EDGE * error) / Math.sqrt(spreadOf(points.map((point) => point.x)));
  const ranks = points.length < ENOUGH_FOR_RANKS ? null : slopeBand(points, Z_OF_EDGE, slopes);
  return { line, least, band: { low: Math.min(ranks?.low ?? line.slope, line.slope - least), high: Math.max(ranks?.high ?? line.slope, line.slope + least) } };
}

/** Wear is seen where the line falls by more than the gauges may tilt it; once seen, a measurement that confirms it does not hide it. */
function isSeen(points: readonly LinePoint[], error: number): boolean {
  const fitted = fallingLine(points, error);
  const newest = points.at(-1);
  if (fitted === null || newest === undefined) return false;
  if (fitted.line.slope < -fitted.least) return true;
  const before = points.slice(0, -1);
  return fitted.line.slope < 0 && confirms(robustLine(before), newest, error) && isSeen(before, error);
}

/** The sum of the squared distances from the mean. */
function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  assert(spread > 0, 'points that differ');
  return spread;
}

/**
 * The first point at which the values go up for good: it lies above the two before it, and the one before it below the two
 * from it on. A single wrong value does not do that, unless it is the last, where nobody can tell; nor does a value that
 * the line before it foresaw. Null where there is none.
 */
function wrongStep(points: readonly LinePoint[], error: number): number | null {
  const tolerance = ERRORS_IN_A_STEP * error;
  const at = points.findIndex((point, index) => {
    if (index === 0) return false;
    const before = points.slice(Math.max(0, index - 2), index);
    const from = points.slice(index, index + 2);
    const last = must(before.at(-1), 'point before');
    const isStep = before.every((one) => point.y - one.y > tolerance) && from.every((one) => one.y - last.y > tolerance);
    return isStep && !confirms(robustLine(points.slice(0, index)), point, error);
  });
  return at < 0 ? null : at;
}

/** Whether a point lies on a line found before it, within what gauges differ. */
function confirms(line: RobustLine | null, point: LinePoint, error: number): boolean {
  return line !== null && Math.abs(point.y - line.intercept - line.slope * point.x) <= error;
}

/** All that rises is turned upside down, so that one rule serves both. */
function asFalling(point: WearPoint, { rises }: WearScale): LinePoint {
  return { x: point.along, y: rises ? -point.value : point.value };
}

function turned(line: RobustLine, band: SlopeBand): Pick<SeenWear, 'line' | 'band'> {
  return { line: { slope: -line.slope, intercept: -line.intercept }, band: { low: -band.high, high: -band.low } };
}

function placed(along: number, origin: number): number | null {
  return Number.isFinite(along) ? along + origin : null;
}
