import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { atMostOf } from '../fleet/binomial-tail.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import { offsetOf } from '../fleet/continuous-distance.ts';
import { FORESEEN_MONTHS, trackRecord, TRACK_STEP, type ForeseenDate, type ForeseenReading } from '../fleet/track-record.ts';
import { say } from '../result/words/say.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { inUnit, METRES_IN, type DistanceUnit } from '../units/distance.ts';

const date = dateSchema.nullable();
/** How many there were, how many came as foreseen, what that says of the forecast, and the same in words. */
const scoreSchema = z.object({ n: z.int(), inside: z.int(), verdict: z.enum(['none', 'too-few', 'as-meant', 'missed-often', 'rarely-missed']), text: z.string() });
export type TrackScore = z.infer<typeof scoreSchema>;

export const trackRecordSchema = z.object({
  unit: distanceUnitSchema,
  /** Readings against the range foreseen for their day three months before, as the instrument then showed it, latest first. */
  readings: scoreSchema.extend({
    rows: z.array(z.object({ on: dateSchema, foreseenOn: dateSchema, value: z.number(), low: z.number(), likely: z.number(), high: z.number(), inside: z.boolean() })),
  }),
  /** Days on which a further distance was reached against the dates foreseen for it, latest first; `reachedOn` null: not yet, though all are past. */
  dates: scoreSchema.extend({
    distance: z.number(),
    rows: z.array(z.object({ from: dateSchema, earliest: date, likely: date, latest: date, reachedOn: date, inside: z.boolean() })),
  }),
});
export type TrackRecordView = z.infer<typeof trackRecordSchema>;

/** What a range is meant to hold. */
const MEANT = 0.8;
/** With fewer, chance says more than the forecast. Ours, no source. */
const FEWEST = 5;
const RARE = 0.05;

/** How well the car was foreseen so far, in its unit. */
export function trackRecordView(use: CarUse, unit: DistanceUnit): TrackRecordView {
  const { readings, dates } = trackRecord(use, TRACK_STEP[unit]);
  const distance = inUnit(TRACK_STEP[unit], unit);
  return {
    unit,
    readings: { ...scoreOf(readings, 'track-readings', { months: FORESEEN_MONTHS }), rows: readings.map((one) => readingRow(use, one, unit)).reverse() },
    dates: { ...scoreOf(dates, 'track-dates', { distance, unit }), distance, rows: dates.map(dateRow).reverse() },
  };
}

function readingRow(use: CarUse, { point, foreseenOn, range, inside }: ForeseenReading, unit: DistanceUnit): TrackRecordView['readings']['rows'][number] {
  const offset = offsetOf(use.instruments, point.reading.instrument);
  const shown = (metres: number) => Math.round((metres - offset) / METRES_IN[unit]);
  return { on: point.date, foreseenOn, value: shown(point.metres), low: shown(range.low * 1000), likely: shown(range.likely * 1000), high: shown(range.high * 1000), inside };
}

function dateRow({ from, dates, reachedOn, inside }: ForeseenDate): TrackRecordView['dates']['rows'][number] {
  return { from: from.date, ...dates, reachedOn, inside };
}

function scoreOf(all: readonly { readonly inside: boolean }[], key: string, values: Readonly<Record<string, string | number>>): TrackScore {
  const [n, inside] = [all.length, all.filter((one) => one.inside).length];
  const verdict = verdictOf(n, inside);
  const counted = say({ key: n === 1 ? `${key}-one` : key, values: { ...values, n, inside } });
  return { n, inside, verdict, text: n === 0 ? say({ key: 'track-none', values: {} }) : `${counted} ${say({ key: `track-${verdict}`, values: {} })}` };
}

/** Whether so many inside would be rare, were each inside with four chances in five. They are not wholly independent: a hint, no proof. */
function verdictOf(n: number, inside: number): TrackScore['verdict'] {
  if (n < FEWEST) return n === 0 ? 'none' : 'too-few';
  if (atMostOf(n, MEANT, inside) < RARE) return 'missed-often';
  return 1 - atMostOf(n, MEANT, inside - 1) < RARE ? 'rarely-missed' : 'as-meant';
}
