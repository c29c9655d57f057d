import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { measureKindSchema, measurePlaceSchema, wearWaySchema } from '../care/measure-kind.ts';
import { measurementSchema } from '../care/measurement.ts';
import { errorOf } from '../care/series-forecast.ts';
import type { SeriesPoint } from '../care/measurement-series.ts';
import { TREAD_LAWS, treadLawSchema, treadLawsPassed } from '../care/wear-limit.ts';
import { wearTrend } from '../care/wear-trend.ts';
import { wheels } from '../fleet/wheel.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';
import { canonicalUnit, measuredUnitSchema, typedValueSchema } from '../units/measured-value.ts';
import { spanOf, type SeriesVerdict, type SeriesWear } from './measured-wear.ts';
import { verdictWords, wearRate } from './wear-words.ts';

const date = dateSchema.nullable();

/** One measurement in its series. */
export const wearPointViewSchema = z.object({
  measurement: measurementSchema,
  part: z.enum(['counts', 'worse-that-day', 'dismissed', 'earlier-part', 'no-distance']),
  /** The car's whole distance then, in the car's unit; worked out where nobody read it. */
  distance: z.number().nullable(),
  estimated: z.boolean(),
  /** What it had gone itself, in the car's unit: less than the car where a wheel was off; null of what wears with time. */
  along: z.number().nullable(),
});

/** A limit of a series, and what is said of the series by it. */
export const wearVerdictViewSchema = z.object({
  limit: typedValueSchema,
  /** The limit in the series' canonical unit. */
  value: z.number(),
  from: z.enum(['series', 'item', 'kind']),
  /** Where a limit that the keeper set comes from; null of an item's, and where nobody has said. */
  source: z.string().nullable(),
  items: z.array(z.string()),
  verdict: z.enum(['too-few', 'contradictory', 'past-limit', 'off-the-road', 'no-reading', 'flat', 'wears']),
  earliest: date,
  likely: date,
  latest: date,
  words: z.object({ code: z.string(), values: z.record(z.string(), z.union([z.string(), z.number(), z.null()])), text: z.string() }),
});

/** All measurements of one thing: points, line, limits and what they come to. */
export const wearSeriesViewSchema = z.object({
  key: z.string(),
  what: measureKindSchema,
  name: z.string().nullable(),
  place: measurePlaceSchema.nullable(),
  wheel: z.object({ id: z.string(), name: z.string() }).nullable(),
  /** The unit of all values here but those as typed. */
  unit: measuredUnitSchema,
  /** Null of something else for which no limit says how it wears. */
  way: wearWaySchema.nullable(),
  points: z.array(wearPointViewSchema),
  /** The line from the first to the last measurement that counts, and the band of its rate (four fifths); null where there is none. */
  line: z.object({
    from: z.object({ date: dateSchema, value: z.number() }),
    to: z.object({ date: dateSchema, value: z.number() }),
    rate: z.object({ rate: z.number(), low: z.number(), high: z.number(), unit: measuredUnitSchema, every: z.number(), everyUnit: z.union([distanceUnitSchema, z.literal('year')]) }),
  }).nullable(),
  limits: z.array(wearVerdictViewSchema),
  /** Of tread: each law with its limit, and whether the newest measurement passes it; null where none counts. */
  laws: z.array(z.object({ law: treadLawSchema, limit: typedValueSchema, passes: z.boolean().nullable() })).nullable(),
});
export type WearSeriesView = z.infer<typeof wearSeriesViewSchema>;

/** The measurement series of a car as the screens show them. */
export function wearViews(facts: Facts, all: readonly SeriesWear[], unit: DistanceUnit): WearSeriesView[] {
  return all.map(({ series, verdicts }): WearSeriesView => {
    const { what, name, place, wheel } = series.subject;
    const newest = series.points.at(-1);
    return {
      key: series.key, what, name, place,
      wheel: wheel === null ? null : { id: wheel, name: facts.get(wheels, wheel)?.name ?? wheel },
      unit: canonicalUnit(series.dimension),
      way: series.way === null ? null : { ...series.way },
      points: series.all.map((point) => pointView(point, series.way?.by === 'distance', unit)),
      line: lineView({ series, verdicts }, unit),
      limits: verdicts.map((one) => verdictView(one, unit)),
      laws: what === 'tread' ? lawViews(newest?.value ?? null) : null,
    };
  });
}

function lawViews(depth: number | null): WearSeriesView['laws'] {
  const passed = depth === null ? null : treadLawsPassed(depth);
  return treadLawSchema.options.map((law) => ({ law, limit: { ...TREAD_LAWS[law] }, passes: passed === null ? null : passed.includes(law) }));
}

function pointView({ measurement, along, part }: SeriesPoint, byDistance: boolean, unit: DistanceUnit): WearSeriesView['points'][number] {
  const inUnit = (metres: number) => Math.round(metres / METRES_IN[unit]);
  return {
    measurement, part,
    distance: along?.metres == null ? null : inUnit(along.metres),
    estimated: along?.estimated ?? false,
    along: along === null || !byDistance ? null : inUnit(along.along),
  };
}

function lineView({ series, verdicts }: SeriesWear, unit: DistanceUnit): WearSeriesView['line'] {
  const [first, last] = [series.points[0], series.points.at(-1)];
  if (series.way === null || first === undefined || last === undefined) return null;
  const trend = wearTrend(series.points, { rises: series.way.rises, error: errorOf(series, verdicts[0]?.limit ?? null) });
  if (trend.state !== 'flat' && trend.state !== 'wears') return null;
  const at = (along: number) => Number((trend.line.intercept + trend.line.slope * along).toPrecision(6));
  return { from: { date: first.date, value: at(first.along) }, to: { date: last.date, value: at(last.along) }, rate: { ...wearRate(series, trend, unit) } };
}

function verdictView(one: SeriesVerdict, unit: DistanceUnit): WearSeriesView['limits'][number] {
  const { limit, forecast } = one;
  const words = verdictWords(one, unit);
  const { earliest, likely, latest } = spanOf(forecast) ?? { earliest: null, likely: null, latest: null };
  return {
    limit: { ...limit.typed }, value: limit.value, from: limit.from, source: limit.source, items: [...limit.items], verdict: forecast.verdict, earliest, likely, latest,
    words: { code: words.key, values: { ...words.values }, text: say(words) },
  };
}
