import { z } from 'zod';
import { addMonths } from '../calendar/add-months.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { addDays, fromDayNumber, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import { instrumentOn, offsetOf, wholeDistance } from '../fleet/continuous-distance.ts';
import { odometerOnDate } from '../fleet/odometer-forecast.ts';
import type { Usage } from '../fleet/usage-rate.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { METRES_IN } from '../units/distance.ts';
import { presentInstrument } from './odometer-shown.ts';
import { restingStretches } from './resting-stretches.ts';

const pointSchema = z.object({ date: dateSchema, value: z.number() });
const bandSchema = z.object({ date: dateSchema, low: z.number(), likely: z.number(), high: z.number() });

/** How far a car has gone and is foreseen to go, to be drawn: whole distance in its unit, replaced instruments added up. */
export const odometerCurveSchema = z.object({
  unit: distanceUnitSchema,
  /** Readings that count, in order. */
  points: z.array(pointSchema),
  /** Readings in doubt, where they would lie. */
  doubtful: z.array(pointSchema),
  /** From the last reading to a year from today; 1 in 10 below `low`, 1 in 10 above `high`. */
  fan: z.array(bandSchema),
  /** Where an instrument was replaced. */
  replaced: z.array(pointSchema),
  /** Laid up, from the first day drawn to the last: both days included. */
  resting: z.array(z.object({ from: dateSchema, to: dateSchema })),
  /** What the present instrument is foreseen to show in 1, 3, 6 and 12 months, no finer than it is known. */
  foreseen: z.array(bandSchema),
});
export type OdometerCurve = z.infer<typeof odometerCurveSchema>;

const MONTHS_AHEAD = 12;
const FORESEEN_IN_MONTHS = [1, 3, 6, 12];
/** A range this many units wide is said in hundreds, a narrower one in tens. Ours, no source. */
const HUNDREDS_FROM = 400;

/** The curve of a car on a day. */
export function odometerCurve(car: Car, use: CarUse, today: LocalDate): OdometerCurve {
  const { points, instruments, doubtful, usage } = use;
  const value = (metres: number) => Math.round(metres / METRES_IN[car.unit]);
  const end = addMonths(today, MONTHS_AHEAD);
  const first = points[0]?.date ?? today;
  return {
    unit: car.unit,
    points: points.map(({ date, metres }) => ({ date, value: value(metres) })),
    doubtful: doubtful.map((one) => ({ date: one.date, value: value(wholeDistance({ ...one, instrument: instrumentOn(instruments, one.date)?.id ?? null }, instruments)) })),
    fan: usage === null ? [] : fanDates(usage, today, end).map((date) => bandOn(usage, date, value)),
    replaced: instruments.map(({ date, distance }) => ({ date, value: value(distance) })),
    resting: restingStretches(use.told, first, end),
    foreseen: usage === null ? [] : foreseenOf(car, use, usage, today),
  };
}

function bandOn(usage: Usage, date: LocalDate, value: (metres: number) => number): OdometerCurve['fan'][number] {
  const { low, likely, high } = odometerOnDate(usage, date);
  return { date, low: value(low * 1000), likely: value(likely * 1000), high: value(high * 1000) };
}

/** The last reading's day, today, and the first of each month up to the end: the fan bends only where months change. */
function fanDates({ lastDay }: Usage, today: LocalDate, end: LocalDate): readonly LocalDate[] {
  const from = fromDayNumber(lastDay);
  const dates = new Set([from, ...(today > from ? [today] : []), end]);
  const firstOfMonth = addDays(from, 1 - Number(from.slice(8)));
  for (let months = 1; addMonths(firstOfMonth, months) < end; months += 1) dates.add(addMonths(firstOfMonth, months));
  return [...dates].filter((date) => date <= end).sort();
}

function foreseenOf(car: Car, use: CarUse, usage: Usage, today: LocalDate): OdometerCurve['foreseen'] {
  const offset = offsetOf(use.instruments, presentInstrument(use));
  return FORESEEN_IN_MONTHS.map((months) => {
    const band = bandOn(usage, addMonths(today, months), (metres) => (metres - offset) / METRES_IN[car.unit]);
    const step = band.high - band.low < HUNDREDS_FROM ? 10 : 100;
    const rounded = (value: number) => Math.round(value / step) * step;
    return { date: band.date, low: rounded(band.low), likely: rounded(band.likely), high: rounded(band.high) };
  });
}
