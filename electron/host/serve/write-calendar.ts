import { asDate, daysBetween } from '../../../shared-core/calendar/local-date.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { noLongerShown, sessionsCalledOff, sessionsDone, TOLD_DAYS } from '../../../shared-core/views/calendar-called-off.ts';
import type { CalendarRequest } from '../../../shared-core/views/calendar-schema.ts';
import { showCalendar } from '../../../shared-core/views/calendar-view.ts';
import { calendarText } from '../../pack/write-calendar.ts';
import { countEntries } from '../../store/journal-table.ts';
import { changedSince } from '../../store/let-go-lately.ts';
import { sessionsEverKept } from '../../store/sessions-ever-kept.ts';
import { momentOf, type HostContext } from '../host-context.ts';

/** Before any household of this program. */
const FIRST_DAY = asDate(2020, 1, 1);
const DAY_MILLISECONDS = 86_400_000;

/** A calendar file of what the calendar shows; nothing is written to the disk. */
export function serveCalendar(context: HostContext, request: CalendarRequest): Result<{ name: string; text: string; events: number }> {
  const { facts, key, store } = context.household();
  const view = showCalendar.answer(facts, request, momentOf(context.world));
  if (!view.ok) return view;
  const today = context.world.today();
  const stamp = { household: key.fingerprint, now: context.world.now(), revision: countEntries(store) + daysBetween(FIRST_DAY, today) };
  const kept = sessionsEverKept(store);
  const since = new Date(Date.parse(stamp.now) - TOLD_DAYS * DAY_MILLISECONDS).toISOString();
  const calledOff = [...sessionsCalledOff(kept, facts, request, today), ...noLongerShown(changedSince(store, since), view.value.events, request)];
  const text = calendarText({ ...view.value, events: [...view.value.events, ...sessionsDone(kept, facts, request, today)] }, stamp, calledOff);
  return ok({ name: 'trunnion-calendar.ics', text, events: view.value.events.length });
}
