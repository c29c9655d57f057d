import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { weekdayOf } from '../../shared-core/calendar/weekday.ts';
import { sayDate } from '../../shared-core/result/words/say.ts';
import { amountText } from '../../shared-core/units/money.ts';
import type { PlanSession, PlanView } from '../../shared-core/views/plan-view-schema.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** A proposed plan as text: what it comes to, its sessions with their reasons, what is left, and what was assumed. */
export function planText(view: PlanView): string {
  const money = (minor: number) => `${amountText(minor, view.currency)} ${view.currency}`;
  return [
    `Sessions from ${sayDate(view.today)} to ${sayDate(view.lastDay)}`,
    ...view.summary.map((one) => `  ${one.text}`),
    ...view.sessions.flatMap((session) => [
      `${weekday(session.day)} ${sayDate(session.day)}, ${session.placeName}${session.state === 'proposed' ? '' : ' (kept)'}: ${hours(session)}, opening ${money(session.openingMinor)}${session.minutesMinor === 0 ? '' : `, minutes ${money(session.minutesMinor)}`}`,
      ...session.tasks.map((task) => `  ${task.carName}: ${task.name}, ${task.minutes} min, ${money(task.terms.totalMinor)}. ${task.why.text}`),
    ]),
    ...(view.left.length === 0 ? [] : ['Left for later']),
    ...view.left.map((task) => `  ${task.carName}: ${task.name}${task.terms.totalMinor === 0 ? '' : `, counts ${money(task.terms.totalMinor)}`}. ${task.why.text}`),
    ...view.notes.map((one) => `! ${one.text}`),
  ].join('\n');
}

function hours({ minutes, mostMinutes }: PlanSession): string {
  return `${minutes} of ${mostMinutes} min`;
}

function weekday(date: LocalDate): string {
  return WEEKDAYS[weekdayOf(date) - 1] ?? '';
}
