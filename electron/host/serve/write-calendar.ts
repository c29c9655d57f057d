import { asDate, daysBetween } from '../../../shared-core/calendar/local-date.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { sessionsCalledOff } from '../../../shared-core/views/calendar-called-off.ts';
import type { CalendarRequest } from '../../../shared-core/views/calendar-schema.ts';
import { showCalendar } from '../../../shared-core/views/calendar-view.ts';
import { calendarText } from '../../pack/write-calendar.ts';
import { countEntries } from '../../store/journal-table.ts';
import { sessionsEverKept } from '../../store/sessions-ever-kept.ts';
import { momentOf, type HostContext } from '../host-context.ts';

/** Before any household of this program. */
const FIRST_DAY = asDate(2020, 1, 1);

/** A calendar file of what the calendar shows; nothing is written to the disk. */
export function serveCalendar(context: HostContext, request: CalendarRequest): Result<{ name: string; text: string; events: number }> {
  const { facts, key, store } = context.household();
  const view = showCalendar.answer(facts, request, momentOf(context.world));
  if (!view.ok) return view;
  const today = context.world.today();
  const stamp = { household: key.fingerprint, now: context.world.now(), revision: countEntries(store) + daysBetween(FIRST_DAY, today) };
  const text = calendarText(view.value, stamp, sessionsCalledOff(sessionsEverKept(store), facts, request, today));
  return ok({ name: 'trunnion-calendar.ics', text, events: view.value.events.length });
}
