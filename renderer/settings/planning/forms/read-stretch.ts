import type { LocalDate } from '../../../../shared-core/calendar/local-date.ts';
import { must } from '../../../../shared-core/result/assert.ts';
import { ok, type Result } from '../../../../shared-core/result/result.ts';
import { FieldsRead } from '../../../ui/form/read-fields.ts';

/** A stretch that stands as text; a new one is empty, and one day has no last day of its own. */
export function startStretch(days: { readonly from: string; readonly to: string } | null): { readonly from: string; readonly to: string } {
  return days === null ? { from: '', to: '' } : { from: days.from, to: days.to === days.from ? '' : days.to };
}

/** A stretch of days as typed: a last day left empty makes it one day. Refused where a date is none. */
export function readStretch(draft: { readonly from: string; readonly to: string }): Result<{ readonly from: LocalDate; readonly to?: LocalDate }> {
  const read = new FieldsRead();
  const whole = read.whole({ from: read.date('from', draft.from), to: read.dateOrNull('to', draft.to) });
  if (!whole.ok) return whole;
  const { from, to } = whole.value;
  return ok({ from: must(from, 'date that was read'), ...(to === null ? {} : { to }) });
}
