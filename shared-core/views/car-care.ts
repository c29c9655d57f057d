import type { LocalDate } from '../calendar/local-date.ts';
import { dueWindow, ONCE_WINDOW, UNKNOWN_WINDOW, type DueWindow } from '../care/due-window.ts';
import type { Completion } from '../care/completion.ts';
import { isOnce } from '../care/limit.ts';
import { limitTarget, type LimitTarget } from '../care/limit-target.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import { carUse, type CarUse } from '../fleet/car-usage.ts';
import { reachedOn, type KnownDistance } from '../fleet/known-distance.ts';
import { dueDates, type DueSpan } from '../fleet/odometer-forecast.ts';
import { wheels } from '../fleet/wheel.ts';
import type { Facts } from '../journal/facts.ts';
import { completionsOf, type DistanceAtReading } from '../records/completions-of-records.ts';
import { earlierThings, type EarlierThings } from '../records/earlier-things.ts';
import { recordsWithPapers } from '../records/tied-papers.ts';
import type { WorkRecord } from '../records/work-record.ts';
import { toKilometres, type Metres } from '../units/distance.ts';
import { dueReason } from './due-reason.ts';
import { measuredWear, wearOfItem, type ItemWear, type SeriesWear } from './measured-wear.ts';
import type { Message } from '../result/result.ts';
import { noticeFor, type LeadTimes } from './notice-days.ts';
import { wearReason } from './wear-words.ts';

/** A service item with all that the screens say of it. */
export interface ItemCare {
  readonly item: ServiceItem;
  readonly completions: readonly Completion[];
  readonly target: LimitTarget | null;
  readonly window: DueWindow;
  readonly reason: Message;
  /** Null where it is not measured, or its measurements give no date. */
  readonly wear: ItemWear | null;
}

/** A car with its use and its care, computed once for every screen that asks. */
export interface CarCare {
  readonly car: Car;
  readonly use: CarUse;
  readonly records: readonly WorkRecord[];
  /** What of it is an earlier keeper's. */
  readonly earlier: EarlierThings;
  readonly items: readonly ItemCare[];
  readonly wear: readonly SeriesWear[];
}

/** The care of one car on a day. */
export function careOf(facts: Facts, car: Car, today: LocalDate, leads: LeadTimes): CarCare {
  const use = carUse(facts, car);
  const records = recordsWithPapers(facts, car.id);
  const known: KnownDistance = { points: use.points, usage: use.usage, firstRegistered: car.firstRegistered };
  const at: DistanceAtReading = new Map(use.points.map((point) => [point.reading.id, point]));
  const byItem = recordsByItem(records);
  const all = facts.ofCar(serviceItems, car.id);
  const measured = measuredWear({ facts, car: car.id, today, known, items: all, records });
  const items = all.map((item): ItemCare => {
    const completions = completionsOf(item, byItem.get(item.id) ?? [], at, known);
    const target = limitTarget(item, car, completions, known);
    const wear = wearOfItem(item, measured);
    const window = windowOf(item, target, use, wear, today, noticeFor(item, leads));
    return { item, completions, target, window, wear, reason: dueReason(item, car, use, target, window, wearMessage(facts, car, wear, intervalCounts(item, target, use))) };
  });
  return { car, use, records, earlier: earlierThings(facts, car.id), items, wear: measured };
}

/** Whether there is anything but wear to give a date. */
function intervalCounts(item: ServiceItem, target: LimitTarget | null, use: CarUse): boolean {
  const byDistance = target !== null && target.metres !== null && use.usage !== null;
  return target?.date != null || item.printedDate !== null || byDistance;
}

function wearMessage(facts: Facts, car: Car, wear: ItemWear | null, intervalCounts: boolean): Message | null {
  if (wear === null) return null;
  const { wheel } = wear.governing.series.subject;
  return wearReason(wear.governing, wheel === null ? null : (facts.get(wheels, wheel)?.name ?? null), car.unit, !intervalCounts);
}

/** When a target is reached: the day it was, where a reading has passed it; else as forecast. */
function distanceDates(use: CarUse, metres: Metres): DueSpan<LocalDate> | null {
  const reached = reachedOn(use.points, metres);
  if (reached !== null) return { earliest: reached, likely: reached, latest: reached };
  return use.usage === null ? null : dueDates(use.usage, toKilometres(metres));
}

function windowOf(item: ServiceItem, target: LimitTarget | null, use: CarUse, wear: ItemWear | null, today: LocalDate, noticeDays: number): DueWindow {
  const metres = target?.metres ?? null;
  if (!intervalCounts(item, target, use) && wear?.span.earliest == null) return isOnce(item.interval) ? ONCE_WINDOW : UNKNOWN_WINDOW;
  return dueWindow({
    today,
    time: target?.date ?? null,
    printedDate: item.printedDate,
    distance: metres === null ? null : distanceDates(use, metres),
    wear: wear?.span ?? null,
    target: metres,
    driven: use.points.at(-1)?.metres ?? null,
    wornOut: wear?.wornOut ?? false,
    noticeDays,
  });
}

function recordsByItem(records: readonly WorkRecord[]): ReadonlyMap<string, readonly WorkRecord[]> {
  const byItem = new Map<string, WorkRecord[]>();
  for (const record of records) {
    for (const item of new Set(record.lines.flatMap((line) => line.item ?? []))) {
      const list = byItem.get(item) ?? [];
      byItem.set(item, list);
      list.push(record);
    }
  }
  return byItem;
}
