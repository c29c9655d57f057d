import type { LocalDate } from '../calendar/local-date.ts';
import { renewals } from '../care/renewal.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import type { TaskRef } from '../sessions/task-ref.ts';
import { completionsOf } from './completions-of-records.ts';
import { workRecords } from './work-record.ts';

/** The last day, on or after a given one, on which a task was done by the work records or by a renewal; null where it was not. */
export function recordedSince(facts: Facts, { kind, id }: TaskRef, day: LocalDate): LocalDate | null {
  const days = kind === 'obligation' ? facts.all(renewals).flatMap((one) => (one.obligation === id ? [one.on] : [])) : completionDays(facts, id);
  return days.reduce<LocalDate | null>((last, on) => (on >= day && (last === null || on > last) ? on : last), null);
}

function completionDays(facts: Facts, id: string): readonly LocalDate[] {
  const item = facts.get(serviceItems, id);
  const nowhere = { points: [], usage: null, firstRegistered: null };
  return item === null ? [] : completionsOf(item, facts.ofCar(workRecords, item.car), new Map(), nowhere).map((one) => one.date);
}
