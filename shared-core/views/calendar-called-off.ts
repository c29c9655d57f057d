import { addDays, dateOfInstant, type LocalDate } from '../calendar/local-date.ts';
import { obligations } from '../care/obligation.ts';
import { recalls } from '../care/recall.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { observations } from '../records/observation.ts';
import { say } from '../result/words/say.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { followUps } from '../work/follow-up.ts';
import type { CalendarEvent, CalendarRequest } from './calendar-schema.ts';

/** How long what was called off is still told, in days after the day it was for; what is done or moved out of sight, after that was entered. */
export const TOLD_DAYS = 31;

/**
 * The events of sessions that were kept once and stand no more: dropped, undone, or joined to another one. A calendar that took an
 * earlier file strikes them.
 */
export function sessionsCalledOff(everKept: readonly Session[], facts: Facts, { omit }: CalendarRequest, today: LocalDate): CalendarEvent[] {
  if (omit.includes('session')) return [];
  const from = addDays(today, -TOLD_DAYS);
  return everKept
    .filter(({ id, day }) => day >= from && isGone(facts.get(sessions, id)))
    .map(({ id, day }) => ({ kind: 'session', id, from: day, to: day, busy: false, remindOn: null, title: say({ key: 'calendar-session-off', values: {} }), text: '' }));
}

function isGone(now: Session | null): boolean {
  return now === null || (!isPinned(now) && now.state !== 'done');
}

/** Sessions that were kept and are done: told on their day, without a reminder, as long as those called off are. */
export function sessionsDone(everKept: readonly Session[], facts: Facts, { omit }: CalendarRequest, today: LocalDate): CalendarEvent[] {
  if (omit.includes('session')) return [];
  return everKept.flatMap(({ id }): CalendarEvent[] => {
    const now = facts.get(sessions, id);
    if (now?.state !== 'done' || now.day < addDays(today, -TOLD_DAYS)) return [];
    return [{ kind: 'session', id, from: now.day, to: now.day, busy: true, remindOn: null, title: say({ key: 'calendar-session-done', values: {} }), text: now.note }];
  });
}

/** Something that a calendar may have shown and that was changed, done or taken away, and the last instant of that. */
export interface ChangedLately {
  readonly family: string;
  readonly id: string;
  readonly at: string;
}

const KINDS: ReadonlyMap<string, CalendarEvent['kind']> = new Map([
  [serviceItems.name, 'item'], [obligations.name, 'obligation'], [recalls.name, 'recall'], [observations.name, 'recheck'], [followUps.name, 'follow-up'],
]);

/** The events of what was changed lately and has no place in the calendar any more: ticked, closed, taken away, or due beyond its end. A calendar that took an earlier file strikes them. */
export function noLongerShown(changed: readonly ChangedLately[], shown: readonly CalendarEvent[], { omit }: CalendarRequest): CalendarEvent[] {
  const standing = new Set(shown.map(({ kind, id }) => `${kind}/${id}`));
  const gone = new Map<string, CalendarEvent>();
  for (const { family, id, at } of changed) {
    const kind = KINDS.get(family);
    if (kind === undefined || omit.includes(kind) || standing.has(`${kind}/${id}`)) continue;
    const on = dateOfInstant(at);
    gone.set(`${kind}/${id}`, { kind, id, from: on, to: on, busy: false, remindOn: null, title: say({ key: 'calendar-gone', values: {} }), text: '' });
  }
  return [...gone.values()];
}
