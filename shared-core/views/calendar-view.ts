import { addMonths } from '../calendar/add-months.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { observations } from '../records/observation.ts';
import { ok } from '../result/result.ts';
import { say, sayDate } from '../result/words/say.ts';
import { isPinned } from '../sessions/session.ts';
import { calendarRequestSchema, calendarViewSchema, type CalendarEvent, type CalendarRequest, type CalendarView } from './calendar-schema.ts';
import type { FollowUpView } from './follow-ups.ts';
import { showDue, type CarDue, type WindowView } from './due-view.ts';
import { sayLateBy, shownSpan } from './say-window.ts';
import type { SessionView } from './session-view.ts';

/** What a calendar would hold: due windows, obligations, recalls, second looks, follow-ups and kept sessions, by day. */
export const showCalendar = ask({
  request: calendarRequestSchema,
  reply: calendarViewSchema,
  answer: (facts, request, moment) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const due = showDue.answer(facts, {}, moment);
    if (!due.ok) return due;
    const events = [...due.value.cars.flatMap((car) => eventsOf(facts, car, moment.today)), ...due.value.sessions.filter(isPinned).map((one) => ofSession(one, moment.today))];
    return ok<CalendarView>({ name: say({ key: 'calendar-name', values: { household: household.value.name } }), events: wanted(events, request, moment.today) });
  },
});

/** By day; what lies past the horizon is left out. */
function wanted(events: readonly CalendarEvent[], { months, omit }: CalendarRequest, today: LocalDate): CalendarEvent[] {
  const end = addMonths(today, months);
  const key = (event: CalendarEvent) => `${event.from} ${event.kind} ${event.id}`;
  return events.filter((event) => event.from <= end && !omit.includes(event.kind)).sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

function eventsOf(facts: Facts, car: CarDue, today: LocalDate): CalendarEvent[] {
  return [
    ...car.windows.flatMap((window) => ofWindow(car, window, today)),
    ...car.obligations.map((one): CalendarEvent => ({
      kind: 'obligation', id: one.id, from: one.on, to: one.on, busy: false, remindOn: ahead(one.from, today),
      title: said('calendar-obligation', { car: car.name, name: one.name }),
      text: lines(one.opens === null ? null : said('calendar-obligation-opens', { date: sayDate(one.opens) }), said('calendar-arrange', { date: sayDate(one.from) })),
    })),
    ...car.recalls.flatMap(({ recall, arrangeFrom, text }): CalendarEvent[] => (recall.nextOn === null ? [] : [{
      kind: 'recall', id: recall.id, from: recall.nextOn, to: recall.nextOn, busy: false, remindOn: ahead(arrangeFrom, today),
      title: said('calendar-recall', { car: car.name, number: recall.number }), text: lines(recall.what, text),
    }])),
    ...facts.ofCar(observations, car.id).flatMap(({ id, text, recheckOn, closedOn }): CalendarEvent[] => (recheckOn === null || closedOn !== null ? [] : [{
      kind: 'recheck', id, from: recheckOn, to: recheckOn, busy: false, remindOn: ahead(recheckOn, today),
      title: said('calendar-recheck', { car: car.name, text }), text: '',
    }])),
    ...car.followUps.flatMap((one) => ofFollowUp(car, one, today)),
  ];
}

/** A due window as fine as it may be shown: an exact date as a day, a narrow one as its week, a wide one as its month; what is late, today. */
function ofWindow(car: CarDue, window: WindowView, today: LocalDate): CalendarEvent[] {
  const { earliest, latest, arrangeFrom, lateBy } = window;
  const span = lateBy === null ? shownSpan(window) : { from: today, to: today };
  if (span === null) return [];
  const isForecast = lateBy === null && span.from !== span.to;
  return [{
    kind: 'item', id: window.item, ...span, busy: false, remindOn: ahead(arrangeFrom, today),
    title: lateBy === null ? said('calendar-item', { car: car.name, name: window.name }) : said('calendar-item-late', { car: car.name, name: window.name, late: sayLateBy(lateBy) }),
    text: lines(
      window.reason.text,
      !isForecast || earliest === null ? null : latest === null ? said('calendar-item-open-end', { earliest: sayDate(earliest) }) : said('calendar-item-window', { earliest: sayDate(earliest), latest: sayDate(latest) }),
      arrangeFrom === null || arrangeFrom < today ? null : said('calendar-arrange', { date: sayDate(arrangeFrom) }),
    ),
  }];
}

/** On its day, or on the week or month in which its distance is foreseen; what is late, today. */
function ofFollowUp(car: CarDue, one: FollowUpView, today: LocalDate): CalendarEvent[] {
  const span = one.lateBy === null ? shownSpan(one) : { from: today, to: today };
  if (span === null) return [];
  return [{
    kind: 'follow-up', id: one.followUp.id, ...span, busy: false, remindOn: ahead(one.from, today),
    title: said(one.lateBy === null ? 'calendar-follow-up' : 'calendar-follow-up-late', { car: car.name, text: one.followUp.text, late: one.lateBy === null ? '' : sayLateBy(one.lateBy) }),
    text: lines(one.itemName === null ? null : said('calendar-follow-up-of', { name: one.itemName }), one.text, one.followUp.note === '' ? null : one.followUp.note),
  }];
}

/** The day before, when the parts are laid out. */
function ofSession(session: SessionView, today: LocalDate): CalendarEvent {
  const cars = [...new Set(session.tasks.map((task) => task.carName))].join(', ');
  return {
    kind: 'session', id: session.id, from: session.day, to: session.day, busy: true, remindOn: ahead(addDays(session.day, -1), today),
    title: said(`calendar-session-${session.placeKind}`, { cars, place: session.placeName }),
    text: lines(
      ...session.tasks.map((task) => said(task.done ? 'calendar-session-task-done' : 'calendar-session-task', { car: task.carName, name: task.name })),
      session.minutes === 0 ? null : said('calendar-session-minutes', { minutes: session.minutes }),
      session.note === '' ? null : session.note,
    ),
  };
}

/** A reminder of a day gone by would ring at once, at each new file. */
function ahead(day: LocalDate | null, today: LocalDate): LocalDate | null {
  return day === null || day < today ? null : day;
}

function lines(...parts: readonly (string | null)[]): string {
  return parts.filter((part) => part !== null).join('\n');
}

function said(key: string, values: Readonly<Record<string, string | number>>): string {
  return say({ key, values });
}
