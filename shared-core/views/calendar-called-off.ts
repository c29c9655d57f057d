import { addDays, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import type { CalendarEvent, CalendarRequest } from './calendar-schema.ts';

/** How long what was called off is still told, in days after the day it was for. */
const TOLD_DAYS = 31;

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
