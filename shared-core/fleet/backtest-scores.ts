import type { BacktestMethod, Spread } from './backtest-origins.ts';

/** Errors of the distance driven some days later. `n` counts forecasts; null where no file could tell. */
export interface DistanceScore {
  readonly days: number;
  readonly n: number;
  /** Sum of absolute errors over sum of truths in each file, then the mean over files. */
  readonly wMAPE: number | null;
}

/** Errors of the day on which a further distance is reached, in days: in each file, then the mean over files. */
export interface DueScore {
  readonly addKm: number;
  readonly n: number;
  readonly medianAbsDays: number | null;
  readonly meanAbsDays: number | null;
}

/** The part of truths that fell into the range meant to hold four fifths of them. */
export interface Coverage {
  readonly coverage80: number | null;
}

/** One forecast of each method beside the truth. */
export interface Trial {
  readonly truth: number;
  readonly told: Readonly<Record<BacktestMethod, Spread>>;
}

/** Scores one horizon over the trials of each file. A file in which the car stood still has no ratio. */
export function scoreDistance(days: number, files: readonly (readonly Trial[])[], method: BacktestMethod): DistanceScore {
  const driven = files.filter((trials) => sum(trials.map(({ truth }) => truth)) > 0);
  const wMAPE = meanOver(driven, (trials) => sum(errors(trials, method)) / sum(trials.map(({ truth }) => truth)));
  return { days, n: files.flat().length, wMAPE };
}

/** Scores one distance over the trials of each file. */
export function scoreDue(addKm: number, files: readonly (readonly Trial[])[], method: BacktestMethod): DueScore {
  return {
    addKm,
    n: files.flat().length,
    medianAbsDays: meanOver(files, (trials) => median(errors(trials, method))),
    meanAbsDays: meanOver(files, (trials) => mean(errors(trials, method))),
  };
}

/** How often our own range held the truth, in each file, then the mean. */
export function coverageOf(files: readonly (readonly Trial[])[]): number | null {
  return meanOver(files, (trials) => mean(trials.map(({ truth, told }) => (isWithin(truth, told.own) ? 1 : 0))));
}

function isWithin(truth: number, { range }: Spread): boolean {
  return range !== null && truth >= range.low && truth <= range.high;
}

function errors(trials: readonly Trial[], method: BacktestMethod): readonly number[] {
  return trials.map(({ truth, told }) => Math.abs(told[method].likely - truth));
}

function meanOver<One>(files: readonly One[], of: (file: One) => number): number | null {
  return files.length === 0 ? null : Number(mean(files.map(of)).toFixed(4));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function mean(values: readonly number[]): number {
  return sum(values) / values.length;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
}
