import { ok, refuse, type Result } from '../result/result.ts';
import { originsOf, thinOut, type BacktestMethod, type Origin, type Spread } from './backtest-origins.ts';
import { coverageOf, scoreDistance, scoreDue, type Coverage, type DistanceScore, type DueScore, type Trial } from './backtest-scores.ts';
import { kmOnDay, momentOfKm } from './odometer-truth.ts';
import type { LogReading } from './odometer-log.ts';
import { makeSeason } from './usage-season.ts';

/** The scores of a method that tells no range. */
export interface BaselineScores {
  readonly distance: readonly DistanceScore[];
  readonly due: readonly DueScore[];
}

/** The answer of the `backtest` command, as its JSON. */
export interface Backtest {
  readonly files: number;
  readonly origins: number;
  readonly distance: readonly (DistanceScore & Coverage)[];
  readonly due: readonly (DueScore & Coverage)[];
  readonly baselines: { readonly lastTwo: BaselineScores; readonly allHistory: BaselineScores };
}

/** A parsed log and the name to call it by. Readings in order of day, then distance, as the parser gives them. */
export interface BacktestFile {
  readonly name: string;
  readonly readings: readonly LogReading[];
}

/** Readings kept are at least so many days apart where nothing else is asked. */
export const DEFAULT_SPACING_DAYS = 60;
const HORIZONS_DAYS = [30, 90, 180, 365] as const;
const DISTANCES_KM = [2000, 5000, 10_000] as const;

/**
 * Forecasts again and again from thinned-out logs and compares with what the whole logs say came true. Northern season, no
 * declared distance. Refused: a log whose distance falls ('log-falls', there is no truth in it), a spacing under a day.
 */
export function backtest(files: readonly BacktestFile[], spacingDays: number = DEFAULT_SPACING_DAYS): Result<Backtest> {
  if (!Number.isInteger(spacingDays) || spacingDays < 1) return refuse('not-a-spacing', { value: String(spacingDays) });
  for (const file of files) {
    const fall = file.readings.find((reading, at) => reading.km < (file.readings[at - 1]?.km ?? 0));
    if (fall !== undefined) return refuse('log-falls', { file: file.name, line: fall.line });
  }
  return ok(score(files.map((file) => examine(file, spacingDays))));
}

/** Trials of one file, by target: `distance` by horizon, `due` by distance. */
interface FileTrials {
  readonly origins: number;
  readonly distance: ReadonlyMap<number, readonly Trial[]>;
  readonly due: ReadonlyMap<number, readonly Trial[]>;
}

function examine(file: BacktestFile, spacingDays: number): FileTrials {
  const whole = file.readings.filter((reading, at) => file.readings[at + 1]?.day !== reading.day);
  const origins = originsOf(thinOut(whole, spacingDays), makeSeason('north'));
  const distanceTrial = ({ reading, forecasts }: Origin, days: number) =>
    trial(kmOnDay(whole, reading.day + days), reading.km, (method) => forecasts[method].kmAfter(days));
  const dueTrial = ({ reading, forecasts }: Origin, km: number) =>
    trial(momentOfKm(whole, reading.km + km), reading.day, (method) => forecasts[method].daysUntil(km));
  return {
    origins: origins.length,
    distance: new Map(HORIZONS_DAYS.map((days) => [days, origins.flatMap((origin) => distanceTrial(origin, days))])),
    due: new Map(DISTANCES_KM.map((km) => [km, origins.flatMap((origin) => dueTrial(origin, km))])),
  };
}

/** No trial where the truth is not known. */
function trial(came: number | null, from: number, tell: (method: BacktestMethod) => Spread): readonly Trial[] {
  if (came === null) return [];
  return [{ truth: came - from, told: { own: tell('own'), lastTwo: tell('lastTwo'), allHistory: tell('allHistory') } }];
}

function score(files: readonly FileTrials[]): Backtest {
  const distance = (method: BacktestMethod) => HORIZONS_DAYS.map((days) => scoreDistance(days, trialsOf(files, 'distance', days), method));
  const due = (method: BacktestMethod) => DISTANCES_KM.map((km) => scoreDue(km, trialsOf(files, 'due', km), method));
  const baseline = (method: BacktestMethod): BaselineScores => ({ distance: distance(method), due: due(method) });
  return {
    files: files.length,
    origins: files.reduce((sum, file) => sum + file.origins, 0),
    distance: distance('own').map((one) => ({ ...one, coverage80: coverageOf(trialsOf(files, 'distance', one.days)) })),
    due: due('own').map((one) => ({ ...one, coverage80: coverageOf(trialsOf(files, 'due', one.addKm)) })),
    baselines: { lastTwo: baseline('lastTwo'), allHistory: baseline('allHistory') },
  };
}

/** The trials at one target, file by file; files without any are left out. */
function trialsOf(files: readonly FileTrials[], kind: 'distance' | 'due', target: number): readonly (readonly Trial[])[] {
  return files.map((file) => file[kind].get(target) ?? []).filter((trials) => trials.length > 0);
}
