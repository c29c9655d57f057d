import type { LocalDate } from '../calendar/local-date.ts';
import { renewals } from '../care/renewal.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import type { Family } from '../journal/family.ts';
import { meantSince, type MeantSince } from '../sessions/meant-since.ts';
import type { Session } from '../sessions/session.ts';
import type { TaskRef } from '../sessions/task-ref.ts';
import { completionsOf } from './completions-of-records.ts';
import { workRecords } from './work-record.ts';

/**
 * The last day on which a task was done, by the work records or by a renewal, since a session has meant to do it; null where it was not. What
 * was done on the very day counts where it was written down later: what stood in the records before is no news to who put the task in.
 */
export function recordedSince(facts: Facts, task: TaskRef, session: Pick<Session, 'madeOn' | 'madeAt' | 'joined'>): LocalDate | null {
  const since = meantSince(session, task);
  const days = task.kind === 'obligation' ? renewalDays(facts, task.id, since) : completionDays(facts, task.id, since);
  return days.reduce<LocalDate | null>((last, on) => (last === null || on > last ? on : last), null);
}

function renewalDays(facts: Facts, obligation: string, since: MeantSince): readonly LocalDate[] {
  return facts.all(renewals).flatMap((one) => (one.obligation === obligation && isNews(facts, { family: renewals, id: one.id, car: one.car, on: one.on }, since) ? [one.on] : []));
}

function completionDays(facts: Facts, id: string, since: MeantSince): readonly LocalDate[] {
  const item = facts.get(serviceItems, id);
  if (item === null) return [];
  const fresh = facts.ofCar(workRecords, item.car).filter((one) => isNews(facts, { family: workRecords, id: one.id, car: one.car, on: one.date }, since));
  return completionsOf(item, fresh, new Map(), { points: [], usage: null, firstRegistered: null }).map((one) => one.date);
}

function isNews(facts: Facts, { family, id, car, on }: { readonly family: Family<unknown>; readonly id: string; readonly car: string; readonly on: LocalDate }, since: MeantSince): boolean {
  if (on !== since.on || since.at === null) return on >= since.on;
  const entered = facts.stamps(family, car).get(id)?.firstAt;
  return entered === undefined || entered >= since.at;
}
