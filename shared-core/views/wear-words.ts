import type { MeasurementSeries } from '../care/measurement-series.ts';
import type { SeenWear, WearPoint } from '../care/wear-trend.ts';
import { assertNever, must } from '../result/assert.ts';
import type { Message, MessageValues } from '../result/result.ts';
import { sayKind, sayNumber, sayOf } from '../result/words/say.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';
import { canonicalPerUnit, canonicalUnit, type MeasuredUnit, type TypedValue } from '../units/measured-value.ts';
import type { SeriesVerdict } from './measured-wear.ts';

const SYMBOLS: Readonly<Record<MeasuredUnit, string>> = { mm: 'mm', in: 'in', '32nds': '/32 in', V: 'V', '%': '%', C: '°C', F: '°F', grade: '', 1: '' };
/** Rates of distance are said for this many km or miles. */
const RATE_DISTANCE = 10_000;
const DAYS_A_YEAR = 365.25;
const RATE_DIGITS = 2;

/** The sign of a unit. @example unitSign('C') //=> '°C' */
export function unitSign(unit: MeasuredUnit): string {
  return unit === 'grade' ? sayOf('unit-grade') : SYMBOLS[unit];
}

/** How fast something wears, in the unit in which it was last read: so much every so many km, miles or years. */
export interface WearRate {
  readonly rate: number;
  readonly low: number;
  readonly high: number;
  readonly unit: MeasuredUnit;
  readonly every: number;
  readonly everyUnit: DistanceUnit | 'year';
}

/** The rate of a line, for a series that has one. */
export function wearRate(series: MeasurementSeries, { line, band }: SeenWear, unit: DistanceUnit): WearRate {
  const read = newestUnit(series);
  const { every, everyUnit, along } = series.way?.by === 'time'
    ? { every: 1, everyUnit: 'year' as const, along: DAYS_A_YEAR }
    : { every: RATE_DISTANCE, everyUnit: unit, along: RATE_DISTANCE * METRES_IN[unit] };
  const said = (slope: number) => Number(((slope * along) / canonicalPerUnit(read)).toPrecision(RATE_DIGITS));
  return { rate: said(line.slope), low: said(band.low), high: said(band.high), unit: read, every, everyUnit };
}

/** What is measured, where, in plain words. @example subjectWords(series, 'A') //=> 'tread, A, front left' */
export function subjectWords({ subject }: MeasurementSeries, wheel: string | null): string {
  const parts = [subject.name ?? sayKind('measured', subject.what), wheel, subject.place === null ? null : sayKind('at', subject.place)].filter((part) => part !== null);
  // A wheel may be called by its place: the spare.
  return [...new Set(parts)].join(', ');
}

/** Why an item is due by wear: what was measured, how fast it wears and its limit. `alone`: its interval does not count. */
export function wearReason({ series, limit, forecast }: SeriesVerdict, wheel: string | null, unit: DistanceUnit, alone: boolean): Message {
  const values = { subject: subjectWords(series, wheel), ...newestValues(series), ...typedValues(limit.typed, 'limit') };
  const first = { ...values, subject: atStart(values.subject) };
  if (forecast.verdict === 'past-limit') return { key: 'reason-worn-out', values: first };
  const rate = forecast.verdict === 'wears' ? rateValues(wearRate(series, forecast.trend, unit)) : {};
  return alone ? { key: 'reason-wear-alone', values: { ...first, ...rate } } : { key: 'reason-wear', values: { ...values, ...rate } };
}

/** As it stands at the start of a sentence. */
function atStart(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is said of a series held against a limit. */
export function verdictWords({ series, limit, forecast }: SeriesVerdict, unit: DistanceUnit): Message {
  const limitSaid = typedValues(limit.typed, 'limit');
  switch (forecast.verdict) {
    case 'too-few':
      return { key: forecast.have === 0 ? 'wear-none' : 'wear-too-few', values: {} };
    case 'contradictory':
      return { key: 'wear-contradictory', values: { ...pointValues(forecast.from, 'from'), ...pointValues(forecast.to, 'to'), unit: unitSign(canonicalUnit(series.dimension)) } };
    case 'past-limit':
      return { key: 'wear-past-limit', values: { ...newestValues(series), ...limitSaid } };
    case 'wears':
      return { key: forecast.span.likely === null ? 'wear-far' : 'wear-wears', values: { ...rateValues(wearRate(series, forecast.trend, unit)), ...limitSaid } };
    case 'flat':
    case 'off-the-road':
    case 'no-reading':
      return { key: `wear-${forecast.verdict}`, values: {} };
    default:
      return assertNever(forecast);
  }
}

function rateValues({ rate, unit, every, everyUnit }: WearRate): MessageValues {
  return { ...typedValues({ value: Math.abs(rate), unit }, 'rate'), per: everyUnit === 'year' ? sayOf('per-year') : `${sayNumber(every)} ${everyUnit}` };
}

function newestValues(series: MeasurementSeries): MessageValues {
  const newest = must(newestOf(series), 'newest measurement').measurement;
  return { on: newest.date, ...typedValues(newest.typed, 'value') };
}

function newestUnit(series: MeasurementSeries): MeasuredUnit {
  return newestOf(series)?.measurement.typed.unit ?? canonicalUnit(series.dimension);
}

function newestOf(series: MeasurementSeries) {
  return series.all.findLast((point) => point.part === 'counts');
}

/** A value and its unit as two words of a sentence; 32nds of an inch are said as the fraction they are. */
function typedValues({ value, unit }: TypedValue, name: string): MessageValues {
  return unit === '32nds' ? { [name]: `${value}/32`, [`${name}Unit`]: 'in' } : { [name]: value, [`${name}Unit`]: unitSign(unit) };
}

/** A value with the sign of its unit, as it was read. @example typedSaid({ value: 4, unit: '32nds' }) //=> '4/32 in' */
export function typedSaid({ value, unit }: TypedValue): string {
  return (unit === '32nds' ? `${value}/32 in` : `${value} ${unitSign(unit)}`).trim();
}

function pointValues(point: WearPoint, name: string): MessageValues {
  return { [name]: point.value, [`${name}Date`]: point.date };
}
