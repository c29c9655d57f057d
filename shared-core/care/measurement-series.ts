import type { LocalDate } from '../calendar/local-date.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import { idleSpans, placeOn } from '../fleet/wheel-places.ts';
import type { WheelMove } from '../fleet/wheel.ts';
import { must } from '../result/assert.ts';
import { dimensionOf, type Dimension } from '../units/measured-value.ts';
import { ruleOf, type WearWay } from './measure-kind.ts';
import type { Measurement } from './measurement.ts';
import { alongOf, idleMetres, type Along } from './series-along.ts';
import { covers, limitsOf, type MeasureSubject, type SeriesLimit } from './series-limits.ts';
import type { ServiceItem } from './service-item.ts';
import type { WearLimit } from './wear-limit.ts';
import type { WearPoint } from './wear-trend.ts';

/**
 * What a measurement does in its series. `counts`; `worse-that-day`: a worse one of the same day counts instead; `dismissed`
 * by the keeper; `earlier-part`: of one that has been replaced; `no-distance`: nothing tells how far the car had gone, or
 * what is told falls.
 */
export type PointPart = 'counts' | 'worse-that-day' | 'dismissed' | 'earlier-part' | 'no-distance';

/** A measurement with how far along it was taken. */
export interface SeriesPoint {
  readonly measurement: Measurement;
  readonly along: Along | null;
  readonly part: PointPart;
}

/** All measurements of one subject, and those that count. */
export interface MeasurementSeries {
  readonly key: string;
  readonly subject: MeasureSubject;
  readonly dimension: Dimension;
  /** Null of something else for which no limit says how it wears. */
  readonly way: WearWay | null;
  /** How far ordinary gauges differ; null where nobody knows. */
  readonly error: number | null;
  /** In order of date. */
  readonly all: readonly SeriesPoint[];
  readonly points: readonly WearPoint[];
  readonly limits: readonly SeriesLimit[];
  /** Metres that the car has gone and this has not; null where it does not roll now. */
  readonly idleMetres: number | null;
}

/** What series are made of. */
export interface SeriesInput {
  readonly today: LocalDate;
  readonly measurements: readonly Measurement[];
  readonly moves: readonly WheelMove[];
  readonly limits: readonly WearLimit[];
  readonly items: readonly ServiceItem[];
  /** The days on which an item was replaced, by the item's id. */
  readonly replacedOn: ReadonlyMap<string, readonly LocalDate[]>;
  readonly known: KnownDistance;
}

/** A car's measurements by what was measured, in order of key. */
export function measurementSeries(input: SeriesInput): readonly MeasurementSeries[] {
  const byKey = new Map<string, Measurement[]>();
  for (const one of input.measurements) byKey.set(keyOf(one), [...(byKey.get(keyOf(one)) ?? []), one]);
  return [...byKey].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, list]) => seriesOf(key, [...list].sort(inOrder), input));
}

/** Measurements of one key are of one subject: a wheel wherever it runs, else a place. */
export function keyOf({ what, name, wheel, place }: Pick<Measurement, 'what' | 'name' | 'wheel' | 'place'>): string {
  return [what, name?.trim().normalize('NFC').toLowerCase() ?? '', wheel === null ? (place ?? '') : `wheel ${wheel}`].join('/');
}

function inOrder(a: Measurement, b: Measurement): number {
  if (a.date !== b.date) return a.date < b.date ? -1 : 1;
  return a.id < b.id ? -1 : 1;
}

function seriesOf(key: string, list: readonly Measurement[], input: SeriesInput): MeasurementSeries {
  const subject = subjectOf(must(list.at(-1), 'newest measurement'), input);
  const dimension = dimensionOf(must(list[0], 'first measurement').typed.unit);
  const found = limitsOf(subject, dimension, input.limits, input.items);
  const rule = ruleOf(subject.what);
  const way = rule?.way ?? found[0]?.way ?? null;
  const limits = found.filter((limit) => limit.way.by === way?.by && limit.way.rises === way.rises);
  const idle = subject.wheel === null ? [] : idleSpans(input.moves, subject.wheel);
  const resting = idle.some((span) => span.to === null);
  const all = way === null ? list.map((measurement): SeriesPoint => ({ measurement, along: null, part: measurement.dismissed ? 'dismissed' : 'counts' }))
    : partsOf(list.map((measurement) => ({ measurement, along: alongOf(measurement, way, idle, input.known) })), way, restartOf(list, subject, input));
  return {
    key, subject, dimension, way, limits, all,
    error: rule?.error ?? null,
    points: all.flatMap(({ measurement, along, part }) => (part === 'counts' && along !== null ? [{ date: measurement.date, along: along.along, value: measurement.value }] : [])),
    idleMetres: resting ? null : idleMetres(idle, input.today, input.known),
  };
}

/** A wheel is where its last move put it; the rest stays where it was measured. */
function subjectOf({ what, name, place, wheel }: Measurement, { moves, today }: SeriesInput): MeasureSubject {
  if (wheel === null) return { what, name, place, wheel };
  const now = placeOn(moves, wheel, today);
  return { what, name, wheel, place: now === 'off' ? null : now };
}

/**
 * The day on which the present part came: the last on which an item that is measured by this was replaced, or on which the
 * keeper said that a part is new. A wheel goes by its own identity: only the keeper's word counts.
 */
function restartOf(list: readonly Measurement[], subject: MeasureSubject, { items, replacedOn }: SeriesInput): LocalDate | null {
  const said = list.filter((one) => one.fresh && !one.dismissed).map((one) => one.date);
  const done = subject.wheel !== null ? [] : items.filter((item) => item.measure !== null && covers(item.measure, subject)).flatMap((item) => replacedOn.get(item.id) ?? []);
  return [...said, ...done].sort().at(-1) ?? null;
}

type Placed = Omit<SeriesPoint, 'part'>;

function partsOf(list: readonly Placed[], way: WearWay, restart: LocalDate | null): readonly SeriesPoint[] {
  const ofThisPart = ({ measurement }: Placed) => restart === null || measurement.date > restart || (measurement.date === restart && measurement.fresh);
  const candidates = list.filter((one) => !one.measurement.dismissed && ofThisPart(one) && one.along !== null);
  const counting = new Set(neverFalling(worstOfEachDay(candidates, way)));
  return list.map((one): SeriesPoint => {
    if (counting.has(one)) return { ...one, part: 'counts' };
    if (one.measurement.dismissed) return { ...one, part: 'dismissed' };
    if (!ofThisPart(one)) return { ...one, part: 'earlier-part' };
    const another = one.along !== null && [...counting].some((other) => other.measurement.date === one.measurement.date);
    return { ...one, part: another ? 'worse-that-day' : 'no-distance' };
  });
}

/** Of several on one day the worst counts, for it is the worst that a limit is about. */
function worstOfEachDay(list: readonly Placed[], way: WearWay): readonly Placed[] {
  const worst = new Map<LocalDate, Placed>();
  for (const one of list) {
    const other = worst.get(one.measurement.date);
    const worse = other === undefined || (way.rises ? one.measurement.value > other.measurement.value : one.measurement.value < other.measurement.value);
    if (worse) worst.set(one.measurement.date, one);
  }
  return [...worst.values()];
}

/** A distance given by hand that is lower than an earlier one cannot be right, and counts for nothing. */
function neverFalling(list: readonly Placed[]): readonly Placed[] {
  let most = -Infinity;
  return list.filter(({ along }) => {
    const rises = along !== null && along.along >= most;
    most = rises ? along.along : most;
    return rises;
  });
}
