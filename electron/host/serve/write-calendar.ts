import { ok, type Result } from '../../../shared-core/result/result.ts';
import type { CalendarRequest } from '../../../shared-core/views/calendar-schema.ts';
import { showCalendar } from '../../../shared-core/views/calendar-view.ts';
import { calendarText } from '../../pack/write-calendar.ts';
import { countEntries } from '../../store/journal-table.ts';
import { momentOf, type HostContext } from '../host-context.ts';

/** A calendar file of what the calendar shows; nothing is written to the disk. */
export function serveCalendar(context: HostContext, request: CalendarRequest): Result<{ name: string; text: string; events: number }> {
  const { facts, key, store } = context.household();
  const view = showCalendar.answer(facts, request, momentOf(context.world));
  if (!view.ok) return view;
  const text = calendarText(view.value, { household: key.fingerprint, now: context.world.now(), revision: countEntries(store) });
  return ok({ name: 'trunnion-calendar.ics', text, events: view.value.events.length });
}
