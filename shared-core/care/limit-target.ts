import { addMonths } from '../calendar/add-months.ts';
import { later, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { addMetres, fromTyped, metresFromKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import { must } from '../result/assert.ts';
import { distanceOn, type KnownDistance } from '../fleet/known-distance.ts';
import type { Completion } from './completion.ts';
import { lastValidAfter } from './keep-the-date.ts';
import type { ServiceItem } from './service-item.ts';
import { underSevereUse } from './severe-use.ts';

/** From what the limits of an item are counted now. */
export type CountedFrom = 'completion' | 'first-registration' | 'purchase' | 'first-date' | 'certificate';

/** The limits of an item: a date, a whole distance, or both; and whence they are counted. */
export interface LimitTarget {
  readonly date: LocalDate | null;
  readonly metres: Metres | null;
  readonly from: CountedFrom;
  readonly since: LocalDate;
  /** The distance is counted from an odometer nobody read. */
  readonly estimated: boolean;
}

/**
 * The limits in force for an item, or null where its history is unknown (no limit is ever invented).
 * Completions in order of date; any completion, however early, is followed by the repeat interval.
 *
 * @example limitTarget(item, car, [{ date: '2025-11-25', ... }], known)?.date //=> '2026-11-25' for 12 months
 */
export function limitTarget(item: ServiceItem, car: Car, completions: readonly Completion[], known: KnownDistance): LimitTarget | null {
  const last = completions.at(-1) ?? null;
  if (item.anchor.kind === 'calendar') return calendarTarget(item, item.anchor.firstDate, last);
  if (item.anchor.kind === 'keep-date') return certificateTarget(item, item.anchor.lastValidDay, completions);
  if (last !== null) return counted(item, car, last, 'completion');
  if (item.history === 'unknown') return null;
  return item.history === 'never-done' ? fromNew(item, car) : fromPurchase(item, car, known);
}

function counted(item: ServiceItem, car: Car, start: Completion, from: CountedFrom, first = false): LimitTarget {
  const limit = underSevereUse(first ? item.interval.first : item.interval.repeat, car.severeUse);
  return {
    date: limit.months === null ? null : addMonths(start.date, limit.months),
    metres: limit.distance === null || start.metres === null ? null : addMetres(start.metres, wholeMetres(limit.distance)),
    from,
    since: start.date,
    estimated: start.estimated,
  };
}

function fromNew(item: ServiceItem, car: Car): LimitTarget | null {
  if (car.firstRegistered === null) return null;
  return counted(item, car, { date: car.firstRegistered, metres: metresFromKilometres(0), estimated: false }, 'first-registration', true);
}

function fromPurchase(item: ServiceItem, car: Car, known: KnownDistance): LimitTarget | null {
  const bought = car.keptSince ?? car.firstRegistered;
  if (bought === null) return null;
  const then = distanceOn(known, bought);
  return counted(item, car, { date: bought, metres: then?.metres ?? null, estimated: then?.estimated ?? false }, 'purchase');
}

/** Whole steps from the first date; never done, it is due on the first date itself. */
function calendarTarget(item: ServiceItem, firstDate: LocalDate, last: Completion | null): LimitTarget {
  const months = must(item.interval.repeat.months, 'months of a calendar interval');
  let date = firstDate;
  if (last !== null) for (let step = 1; date <= later(last.date, firstDate); step += 1) date = addMonths(firstDate, step * months);
  return { date, metres: null, from: 'first-date', since: firstDate, estimated: false };
}

function certificateTarget(item: ServiceItem, first: LocalDate, completions: readonly Completion[]): LimitTarget {
  const months = must(item.interval.repeat.months, 'months of a certificate');
  const date = completions.reduce((valid, done) => lastValidAfter(valid, done.date, months), first);
  return { date, metres: null, from: 'certificate', since: completions.at(-1)?.date ?? first, estimated: false };
}

function wholeMetres(distance: DistanceAsTyped): Metres {
  const value = fromTyped(distance);
  if (!value.ok) throw new Error('Bug: an interval whose distance was not checked');
  return value.value;
}
