import { addDays, earliest, type LocalDate } from '../calendar/local-date.ts';
import type { Limit } from '../care/limit.ts';
import { limitTarget } from '../care/limit-target.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import { dueDates, FORESEEABLE_DAYS } from '../fleet/odometer-forecast.ts';
import type { Message } from '../result/result.ts';
import { toKilometres } from '../units/distance.ts';
import type { ItemCare } from './car-care.ts';

/**
 * How something is known of an item: a paper proves it; the keeper recorded it when it was done; someone says so; nobody
 * knows; it is counted from the purchase; it was never done; its own dates say it.
 */
export type IntakeKnowledge = 'proven' | 'recorded' | 'said' | 'unknown' | 'from-purchase' | 'never-done' | 'dated';

/** What to do about an item of a car just bought. */
export interface IntakeAdvice {
  /** Do it now to start from firm ground; only look now; or let it wait. */
  readonly when: 'now' | 'look' | 'wait';
  /** Until when it may wait; null where no day is foreseen. */
  readonly until: LocalDate | null;
  readonly reason: Message;
}

/** What the advice stands on. */
export interface IntakeCase {
  readonly care: ItemCare;
  readonly knowledge: IntakeKnowledge;
  /** The day of the last completion. */
  readonly doneOn: LocalDate | null;
  /** Before this day it cannot be due, however little was ever done; null where that cannot be said. */
  readonly notBefore: LocalDate | null;
  readonly today: LocalDate;
}

/**
 * What to do about an item, with its reason. Unknown is never taken as done: what could be due by now is replaced or looked
 * at, but for what is only a matter of comfort, and what cannot be due yet may wait until it can. Which of them comes first
 * is ours, no source.
 */
export function intakeAdvice(one: IntakeCase): IntakeAdvice {
  const { state, likely } = one.care.window;
  const { work } = one.care.item;
  if (state === 'late' || state === 'probably-due') return { when: work === 'check' ? 'look' : 'now', until: null, reason: one.care.reason };
  if (one.knowledge === 'unknown' || state === 'unknown') return ofUnknown(one);
  return one.knowledge === 'said' ? ofSaid(one) : waits(one, likely, 'intake-waits');
}

function ofUnknown({ care, knowledge, notBefore, today }: IntakeCase): IntakeAdvice {
  const { harm, work } = care.item;
  if (notBefore !== null && notBefore > today) return { when: 'wait', until: notBefore, reason: said('intake-not-yet', { date: notBefore }) };
  if (knowledge !== 'unknown' && knowledge !== 'never-done') return { when: 'wait', until: null, reason: care.reason };
  if (work === 'check') return { when: 'look', until: null, reason: said(`intake-look-${harm}`) };
  return { when: harm === 'comfort' ? 'wait' : 'now', until: null, reason: said(`intake-replace-${harm}`) };
}

function ofSaid(one: IntakeCase): IntakeAdvice {
  if (one.care.item.harm === 'comfort') return waits(one, one.care.window.likely, 'intake-said-waits');
  return { when: 'look', until: null, reason: said('intake-said-look', { since: one.doneOn }) };
}

/** Without a day, the forecast does not reach so far. */
function waits({ doneOn }: IntakeCase, until: LocalDate | null, key: string): IntakeAdvice {
  if (until === null) return { when: 'wait', until, reason: said('intake-waits-long') };
  return { when: 'wait', until, reason: doneOn === null ? said('intake-waits-from', { date: until }) : said(key, { date: until, since: doneOn }) };
}

function said(key: string, values: Message['values'] = {}): Message {
  return { key, values };
}

/**
 * The first day on which an item of unknown history can be due: counted from the car's first day and from 0 by the shorter of
 * its two intervals, for it may have been done once and be due again. Null where the car's first day or a reading is missing.
 *
 * @example notDueBefore(coolant, car, use, known) //=> '2027-11-01' for 60 months from 2022-11-01
 */
export function notDueBefore(item: ServiceItem, car: Car, use: CarUse, known: KnownDistance): LocalDate | null {
  const { first, repeat } = item.interval;
  const days = [first, repeat].map((limit) => firstDay({ ...item, history: 'never-done', interval: { first: limit, repeat } }, limit, car, use, known));
  return days.includes(null) ? null : earliest(...days);
}

function firstDay(item: ServiceItem, limit: Limit, car: Car, use: CarUse, known: KnownDistance): LocalDate | null {
  const target = limitTarget(item, car, [], known);
  if (target === null || (limit.months !== null && target.date === null)) return null;
  if (target.metres === null) return earliest(target.date, item.printedDate);
  const last = use.points.at(-1);
  if (use.usage === null || last === undefined) return null;
  const reached = dueDates(use.usage, toKilometres(target.metres)).earliest ?? addDays(last.date, FORESEEABLE_DAYS);
  return earliest(target.date, reached, item.printedDate);
}
