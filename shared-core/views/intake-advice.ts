import { addMonths } from '../calendar/add-months.ts';
import { addDays, earliest, type LocalDate } from '../calendar/local-date.ts';
import type { Limit } from '../care/limit.ts';
import { limitTarget } from '../care/limit-target.ts';
import type { Measurement } from '../care/measurement.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import { dueDates, FORESEEABLE_DAYS } from '../fleet/odometer-forecast.ts';
import type { Message } from '../result/result.ts';
import { sayMonth } from '../result/words/say.ts';
import { toKilometres } from '../units/distance.ts';
import type { ItemCare } from './car-care.ts';
import { unitSign } from './wear-words.ts';

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
  /** A forecast is said by its month, never by a bare day. */
  readonly exact: boolean;
  readonly reason: Message;
}

/** A day, and whether it is exact or a forecast. */
export interface FirstDay {
  readonly date: LocalDate;
  readonly exact: boolean;
}

/** What the advice stands on. */
export interface IntakeCase {
  readonly care: ItemCare;
  readonly knowledge: IntakeKnowledge;
  /** The day of the last completion. */
  readonly doneOn: LocalDate | null;
  /** Before this day it cannot be due, however little was ever done; null where that cannot be said. */
  readonly notBefore: FirstDay | null;
  /** The newest measurement of what the item is measured by; null where there is none of the part that is in. */
  readonly measured: Measurement | null;
  readonly today: LocalDate;
}

/**
 * What to do about an item, with its reason. Unknown is never taken as done: what could be due by now is replaced or looked
 * at, but for what is only a matter of comfort, and what cannot be due yet may wait until it can. Which of them comes first
 * is ours, no source.
 */
export function intakeAdvice(one: IntakeCase): IntakeAdvice {
  const { state } = one.care.window;
  const { work } = one.care.item;
  if (one.care.wear?.wornOut === true) return { when: 'now', until: null, exact: true, reason: one.care.reason };
  if (state === 'late' || state === 'probably-due') return { when: work === 'check' ? 'look' : 'now', until: null, exact: true, reason: one.care.reason };
  if (one.knowledge === 'unknown' || state === 'unknown') return ofUnknown(one);
  return one.knowledge === 'said' ? ofSaid(one) : waits(one, 'intake-waits');
}

function ofUnknown({ care, knowledge, notBefore, measured, today }: IntakeCase): IntakeAdvice {
  const { harm, work, interval } = care.item;
  if (notBefore !== null && notBefore.date > today) return { when: 'wait', until: notBefore.date, exact: notBefore.exact, reason: said('intake-not-yet', { date: saidDay(notBefore) }) };
  if (knowledge !== 'unknown' && knowledge !== 'never-done') return { when: 'wait', until: null, exact: true, reason: care.reason };
  const lookAgain = measured === null || interval.repeat.months === null ? null : addMonths(measured.date, interval.repeat.months);
  if (work === 'check' && measured !== null && lookAgain !== null && lookAgain > today) {
    return { when: 'wait', until: lookAgain, exact: true, reason: said('intake-measured', { value: measured.typed.value, unit: unitSign(measured.typed.unit), on: measured.date, date: lookAgain }) };
  }
  if (work === 'check') return { when: 'look', until: null, exact: true, reason: said(`intake-look-${harm}`) };
  return { when: harm === 'comfort' ? 'wait' : 'now', until: null, exact: true, reason: said(`intake-replace-${harm}`) };
}

function ofSaid(one: IntakeCase): IntakeAdvice {
  if (one.care.item.harm === 'comfort') return waits(one, 'intake-said-waits');
  return { when: 'look', until: null, exact: true, reason: said('intake-said-look', { since: one.doneOn }) };
}

/** Without a day, the forecast does not reach so far. */
function waits({ care: { window }, doneOn }: IntakeCase, key: string): IntakeAdvice {
  const { likely: until, limb } = window;
  if (until === null) return { when: 'wait', until, exact: true, reason: said('intake-waits-long') };
  const exact = limb === 'time' || limb === 'printed-date';
  const date = saidDay({ date: until, exact });
  return { when: 'wait', until, exact, reason: doneOn === null ? said('intake-waits-from', { date }) : said(key, { date, since: doneOn }) };
}

function saidDay({ date, exact }: FirstDay): string {
  return exact ? date : sayMonth(date);
}

function said(key: string, values: Message['values'] = {}): Message {
  return { key, values };
}

/**
 * The first day on which an item of unknown history can be due: counted from the car's first day and from 0 by the shorter of
 * its two intervals, for it may have been done once and be due again. Null where the car's first day or a reading is missing.
 *
 * @example notDueBefore(coolant, car, use, known) //=> { date: '2027-11-01', exact: true } for 60 months from 2022-11-01
 */
export function notDueBefore(item: ServiceItem, car: Car, use: CarUse, known: KnownDistance): FirstDay | null {
  const { first, repeat } = item.interval;
  const days = [first, repeat].map((limit) => firstDay({ ...item, history: 'never-done', interval: { first: limit, repeat } }, limit, car, use, known));
  const all = days.flatMap((one) => one ?? []);
  return all.length < days.length ? null : soonestOf(all);
}

function firstDay(item: ServiceItem, limit: Limit, car: Car, use: CarUse, known: KnownDistance): FirstDay | null {
  const target = limitTarget(item, car, [], known);
  if (target === null || (limit.months !== null && target.date === null)) return null;
  const dated = earliest(target.date, item.printedDate);
  if (target.metres === null) return dated === null ? null : { date: dated, exact: true };
  const last = use.points.at(-1);
  if (use.usage === null || last === undefined) return null;
  const reached = dueDates(use.usage, toKilometres(target.metres)).earliest ?? addDays(last.date, FORESEEABLE_DAYS);
  return dated !== null && dated <= reached ? { date: dated, exact: true } : { date: reached, exact: false };
}

function soonestOf(days: readonly FirstDay[]): FirstDay | null {
  return days.reduce<FirstDay | null>((soonest, one) => (soonest === null || one.date < soonest.date ? one : soonest), null);
}
