import { addMonths, monthsBetween } from '../calendar/add-months.ts';
import { LAST_DATE, later, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { addMetres, fromTyped, metresFromKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import { must } from '../result/assert.ts';
import { distanceOn, type KnownDistance } from '../fleet/known-distance.ts';
import type { Completion } from './completion.ts';
import type { Limit } from './limit.ts';
import { keepsTheDate, lastValidAfter } from './keep-the-date.ts';
import type { ServiceItem } from './service-item.ts';
import { underSevereUse } from './severe-use.ts';

/** From what the limits of an item are counted now. */
export type CountedFrom = 'completion' | 'first-registration' | 'purchase' | 'first-date' | 'certificate';

/** The limits of an item: a date, a whole distance, or both; and whence they are counted. */
export interface LimitTarget {
  readonly date: LocalDate | null;
  readonly metres: Metres | null;
  readonly from: CountedFrom;
  /** Null where it is counted from a first registration that nobody has entered. */
  readonly since: LocalDate | null;
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
  if (item.anchor.kind === 'calendar' && last === null && isBeforeMine(item, car, item.anchor.firstDate)) return null;
  if (item.anchor.kind === 'calendar') return calendarTarget(item, item.anchor.firstDate, completions);
  if (item.anchor.kind === 'keep-date') return certificateTarget(item, item.anchor.lastValidDay, completions);
  if (last !== null) return counted(last, limitOf(item, car, 'repeat'), 'completion');
  if (item.history === 'unknown') return null;
  return item.history === 'never-done' ? fromNew(item, car) : fromPurchase(item, car, known);
}

/** A day of the calendar that came before the keeper had the car, of an item of which nobody knows: whether it was done then is not known either. */
function isBeforeMine(item: ServiceItem, car: Car, date: LocalDate): boolean {
  return item.history === 'unknown' && car.keptSince !== null && date < car.keptSince;
}

function limitOf(item: ServiceItem, car: Car, which: 'first' | 'repeat'): Limit {
  return underSevereUse(item.interval[which], car.severeUse);
}

/** Where limits are counted from: as a completion, but for a date that may be unknown. */
interface Start extends Omit<Completion, 'date'> {
  readonly date: LocalDate | null;
}

function counted(start: Start, limit: Limit, from: CountedFrom): LimitTarget {
  return {
    date: limit.months === null || start.date === null ? null : addMonths(start.date, limit.months),
    metres: limit.distance === null || start.metres === null ? null : addMetres(start.metres, wholeMetres(limit.distance)),
    from,
    since: start.date,
    estimated: start.estimated,
  };
}

/**
 * Never done: the first months count from first registration, the first distance from 0, which needs no date. Where the
 * registration is not entered, the months are not known: `since` is null, and the window says so.
 */
function fromNew(item: ServiceItem, car: Car): LimitTarget | null {
  const limit = limitOf(item, car, 'first');
  if (car.firstRegistered === null && limit.distance === null) return null;
  return counted({ date: car.firstRegistered, metres: metresFromKilometres(0), estimated: false }, limit, 'first-registration');
}

/** Without the day of the purchase nothing is counted: no other day stands for it. */
function fromPurchase(item: ServiceItem, car: Car, known: KnownDistance): LimitTarget | null {
  const bought = car.keptSince;
  if (bought === null) return null;
  const then = distanceOn(known, bought);
  return counted({ date: bought, metres: then?.metres ?? null, estimated: then?.estimated ?? false }, limitOf(item, car, 'repeat'), 'purchase');
}

/**
 * Whole steps from the first date; never done, it is due on the first date itself. Done early or late, next is the first
 * step after both the day it was done and the date then in force. What was done by the step before that date belongs to an
 * earlier round and moves nothing: so two records of one occasion, and a history older than the first date, do not either.
 */
function calendarTarget(item: ServiceItem, firstDate: LocalDate, completions: readonly Completion[]): LimitTarget {
  const months = must(item.interval.repeat.months, 'months of a calendar interval');
  const date = (step: number) => addMonths(firstDate, step * months);
  const days = [...new Set(completions.map((done) => done.date))];
  const due = days.reduce((step, done) => (done > date(step - 1) ? stepAfter(date, months, firstDate, later(done, date(step))) : step), 0);
  return { date: date(due), metres: null, from: 'first-date', since: firstDate, estimated: false };
}

/** The first step whose date comes after a date. */
function stepAfter(date: (step: number) => LocalDate, months: number, firstDate: LocalDate, after: LocalDate): number {
  let step = Math.max(0, Math.floor(monthsBetween(firstDate, after) / months));
  while (date(step) <= after && date(step) < LAST_DATE) step += 1;
  return step;
}

/** A test passed before the certificate in force was given never shortens it. */
function certificateTarget(item: ServiceItem, first: LocalDate, completions: readonly Completion[]): LimitTarget {
  const months = must(item.interval.repeat.months, 'months of a certificate');
  const start: CertificateDay = { anchor: first, terms: 0, valid: first };
  const date = completions.reduce((now, done) => renewed(now, done.date, months), start).valid;
  return { date, metres: null, from: 'certificate', since: completions.at(-1)?.date ?? first, estimated: false };
}

/** A last valid day as whole terms after the day it keeps, so that a day clipped by a short month comes back. */
interface CertificateDay {
  readonly anchor: LocalDate;
  readonly terms: number;
  readonly valid: LocalDate;
}

function renewed(now: CertificateDay, passed: LocalDate, months: number): CertificateDay {
  if (keepsTheDate(now.valid, passed)) return { anchor: now.anchor, terms: now.terms + 1, valid: addMonths(now.anchor, (now.terms + 1) * months) };
  const valid = lastValidAfter(now.valid, passed, months);
  return valid > now.valid ? { anchor: valid, terms: 0, valid } : now;
}

function wholeMetres(distance: DistanceAsTyped): Metres {
  const value = fromTyped(distance);
  if (!value.ok) throw new Error('Bug: an interval whose distance was not checked');
  return value.value;
}
