import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LARGEST_METRES } from '../units/distance.ts';
import { dueDates, odometerOn, type DueSpan, type OdometerBand } from './odometer-forecast.ts';
import type { LogReading } from './odometer-log.ts';
import { gateReading } from './reading-judgement.ts';
import { withReading, type UsageEvidence } from './usage-evidence.ts';
import { usageOf, type Usage, type UsagePrior } from './usage-rate.ts';
import { makeSeason, type Hemisphere, type Season } from './usage-season.ts';

/** What the bare forecaster is asked. `on` is today; `addKm` counts from the last accepted reading. */
export interface BareForecastOptions {
  readonly on: LocalDate;
  readonly addKm: number;
  readonly declaredKmAYear: number | null;
  /** Months 1 to 12 in which the car is laid up. */
  readonly laidUp: readonly number[];
  readonly hemisphere: Hemisphere;
}

/** A reading kept out of the forecast and why; `after-today`: its date lies after `on`. */
export interface SetAsideReading {
  readonly date: LocalDate;
  readonly km: number;
  readonly code: 'decrease' | 'too-high' | 'after-today';
}

/** The answer of the `forecast` command, as its JSON: km, dates null beyond five years. */
export interface BareForecast {
  readonly ratePerSeasonDay: number;
  readonly exposure: number;
  readonly lastReading: { readonly date: LocalDate; readonly km: number };
  readonly odometer: OdometerBand;
  readonly due: DueSpan<LocalDate>;
  readonly setAside: readonly SetAsideReading[];
}

/**
 * Forecasts from a bare log: each reading is judged by those before it, doubtful ones are set aside and named. `prior`
 * stands beside the answer, for the keeper must hear when the declared distance was set aside. Refused: no reading by `on`
 * ('no-reading'), an impossible distance ('not-a-distance') or month ('not-a-month').
 *
 * @example bareForecast(readings, { on, addKm: 5000, declaredKmAYear: null, laidUp: [], hemisphere: 'north' })
 */
export function bareForecast(
  readings: readonly LogReading[],
  options: BareForecastOptions,
): Result<{ readonly answer: BareForecast; readonly prior: UsagePrior }> {
  const wrong = wrongOption(options);
  if (wrong !== null) return wrong;
  const judged = judgeLog(readings, options, makeSeason(options.hemisphere, options.laidUp));
  if (judged.usage === null || judged.last === null) return refuse('no-reading', { on: options.on });
  const { usage, last, setAside } = judged;
  const answer: BareForecast = {
    ratePerSeasonDay: rounded(usage.ratePerSeasonDay, 4),
    exposure: rounded(usage.exposure, 3),
    lastReading: { date: last.date, km: last.km },
    odometer: wholeBand(odometerOn(usage, dayNumber(options.on))),
    due: dueDates(usage, usage.lastKm + options.addKm),
    setAside,
  };
  return ok({ answer, prior: usage.prior });
}

function wrongOption(options: BareForecastOptions): ReturnType<typeof refuse> | null {
  if (!isDistance(options.addKm)) return refuse('not-a-distance', { value: String(options.addKm) });
  const declared = options.declaredKmAYear;
  if (declared !== null && (!isDistance(declared) || declared === 0)) return refuse('not-a-distance', { value: String(declared) });
  const month = options.laidUp.find((one) => !Number.isInteger(one) || one < 1 || one > 12);
  return month === undefined ? null : refuse('not-a-month', { value: String(month) });
}

function isDistance(km: number): boolean {
  return Number.isFinite(km) && km >= 0 && km <= LARGEST_METRES / 1000;
}

interface JudgedLog {
  readonly usage: Usage | null;
  readonly last: LogReading | null;
  readonly setAside: readonly SetAsideReading[];
}

/** Readings in order of day, then distance: of a pair on one day the higher one is left standing. */
function judgeLog(readings: readonly LogReading[], options: BareForecastOptions, season: Season): JudgedLog {
  const today = dayNumber(options.on);
  const setAside: SetAsideReading[] = [];
  let evidence: UsageEvidence | null = null;
  let usage: Usage | null = null;
  let last: LogReading | null = null;
  for (const reading of readings) {
    const code = reading.day > today ? 'after-today' : usage === null ? null : gateReading(usage, reading);
    if (code !== null) {
      setAside.push({ date: reading.date, km: reading.km, code });
      continue;
    }
    evidence = withReading(evidence, reading, season);
    usage = usageOf(evidence, options.declaredKmAYear, season);
    last = reading;
  }
  return { usage, last, setAside };
}

function wholeBand(band: OdometerBand): OdometerBand {
  return { low: Math.round(band.low), likely: Math.round(band.likely), high: Math.round(band.high) };
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
