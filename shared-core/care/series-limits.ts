import { sameName } from '../fleet/find-car.ts';
import { dimensionOf, type Dimension, type TypedValue } from '../units/measured-value.ts';
import { ruleOf, type MeasureKind, type MeasurePlace, type WearWay } from './measure-kind.ts';
import type { ServiceItem } from './service-item.ts';
import { limitValue, type ItemMeasure, type WearLimit } from './wear-limit.ts';

/** What is measured, and where: measurements of one subject are of one part after another. */
export interface MeasureSubject {
  readonly what: MeasureKind;
  readonly name: string | null;
  /** Where it is now; null of what has no place, and of a wheel away from the car. */
  readonly place: MeasurePlace | null;
  readonly wheel: string | null;
}

/** A limit that a series is held against: set for this place or wheel alone, by service items, or for all of its kind. */
export interface SeriesLimit {
  readonly typed: TypedValue;
  /** In the canonical unit. */
  readonly value: number;
  readonly way: WearWay;
  readonly from: 'series' | 'item' | 'kind';
  /** Where a limit that the keeper set comes from; of an item's limit the item tells. */
  readonly source: string | null;
  /** The items that it governs. */
  readonly items: readonly string[];
}

/** Whether two names, null of the kinds that have one, are the same. */
export function sameSubjectName(one: string | null, other: string | null): boolean {
  return one === null || other === null ? one === other : sameName(one, other);
}

/** Whether an item is measured by this: its kind, in one of its places; a wheel that does not roll only where it is named. */
export function covers(measure: ItemMeasure, subject: MeasureSubject): boolean {
  if (measure.kind !== subject.what || !sameSubjectName(measure.name, subject.name)) return false;
  if (subject.place !== null && measure.places.includes(subject.place)) return true;
  const rests = subject.wheel !== null && (subject.place === null || subject.place === 'spare');
  return measure.places.length === 0 && !rests;
}

/**
 * The limits of a series: one set for it alone goes before those of the items, and those before one for all of its kind,
 * which governs the items that are measured by it and have no limit of their own.
 * Equal limits of several items are one. Limits in a unit that cannot be compared with the measurements are left out.
 */
export function limitsOf(subject: MeasureSubject, dimension: Dimension, own: readonly WearLimit[], items: readonly ServiceItem[]): readonly SeriesLimit[] {
  const governed = items.flatMap((item) => (item.measure !== null && covers(item.measure, subject) ? [{ id: item.id, measure: item.measure }] : []));
  const mine = own.filter((one) => one.limit !== null && one.what === subject.what && sameSubjectName(one.name, subject.name));
  const special = mine.find((one) => (one.wheel !== null && one.wheel === subject.wheel) || (one.wheel === null && one.place !== null && one.place === subject.place));
  const general = mine.find((one) => one.wheel === null && one.place === null);
  const compare = (limit: TypedValue | null, way: WearWay | null, origin: Origin) => seriesLimit(subject, dimension, limit, way, origin);
  const ids = governed.map((one) => one.id);
  if (special !== undefined) return compare(special.limit, special.way, { from: 'series', items: ids, source: special.source });
  const limited = governed.filter(({ measure }) => measure.limit !== null);
  if (limited.length > 0) return merged(limited.flatMap(({ id, measure }) => compare(measure.limit, measure.way, { from: 'item', items: [id], source: null })));
  return general === undefined ? [] : compare(general.limit, general.way, { from: 'kind', items: ids, source: general.source });
}

type Origin = Pick<SeriesLimit, 'from' | 'items' | 'source'>;

function seriesLimit(subject: MeasureSubject, dimension: Dimension, typed: TypedValue | null, own: WearWay | null, origin: Origin): SeriesLimit[] {
  const way = ruleOf(subject.what)?.way ?? own;
  if (typed === null || way === null || dimensionOf(typed.unit) !== dimension) return [];
  return [{ typed, value: limitValue(typed), way, ...origin }];
}

function merged(limits: readonly SeriesLimit[]): readonly SeriesLimit[] {
  const key = (limit: SeriesLimit) => `${limit.value} ${limit.way.by} ${limit.way.rises}`;
  const groups = [...new Set(limits.map(key))].map((same) => limits.filter((limit) => key(limit) === same));
  return groups.flatMap(([first, ...rest]) => (first === undefined ? [] : [{ ...first, items: [first, ...rest].flatMap((limit) => limit.items) }]));
}
