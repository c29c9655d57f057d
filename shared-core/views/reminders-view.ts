import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems } from '../care/service-item.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { ask, type Moment } from '../journal/operation.ts';
import { observations } from '../records/observation.ts';
import { workRecords } from '../records/work-record.ts';
import { ok, type Result } from '../result/result.ts';
import { say, sayDate } from '../result/words/say.ts';
import { isPinned } from '../sessions/session.ts';
import { showDue, type CarDue, type WindowView } from './due-view.ts';
import { sayLateBy } from './say-window.ts';
import type { SessionView } from './session-view.ts';

/** Something whose day to arrange it has come. */
export const reminderSchema = z.object({
  /** Names the occurrence: the same as long as nothing was done about it, however its forecast moves; another for the next. */
  occurrence: z.string(),
  kind: z.enum(['item', 'obligation', 'recall', 'recheck', 'follow-up', 'session']),
  late: z.boolean(),
  /** From when it is reminded of. */
  from: dateSchema,
  text: z.string(),
});
export type Reminder = z.infer<typeof reminderSchema>;

export const remindersViewSchema = z.object({ today: dateSchema, reminders: z.array(reminderSchema) });

/** All that is to be arranged by now, what is late first, then by the day from which it was to be arranged. */
export const showReminders = ask({
  request: z.strictObject({}),
  reply: remindersViewSchema,
  answer: (facts, _request, moment) => remindersOf(facts, moment),
});

/** As `showReminders`. */
export function remindersOf(facts: Facts, moment: Moment): Result<z.infer<typeof remindersViewSchema>> {
  const due = showDue.answer(facts, {}, moment);
  if (!due.ok) return due;
  const { today } = moment;
  const all = [...due.value.cars.flatMap((car) => ofCar(facts, car, today)), ...due.value.sessions.filter(isPinned).map(ofSession)];
  const key = (one: Reminder) => `${one.late ? 0 : 1} ${one.from} ${one.occurrence}`;
  return ok({ today, reminders: all.filter((one) => one.from <= today).sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0)) });
}

function ofCar(facts: Facts, car: CarDue, today: LocalDate): Reminder[] {
  return [
    ...car.windows.flatMap((window) => ofWindow(facts, car, window)),
    ...car.obligations.map((one): Reminder => ({ occurrence: `obligation ${one.id} ${one.on}`, kind: 'obligation', late: one.late, from: one.from, text: words(one.late ? 'reminder-obligation-late' : 'reminder-obligation', { car: car.name, name: one.name, date: sayDate(one.on) }) })),
    ...car.recalls.map(({ recall, arrangeFrom }): Reminder => ({ occurrence: `recall ${recall.id} ${recall.nextOn ?? ''}`, kind: 'recall', late: false, from: arrangeFrom ?? today, text: words('reminder-recall', { car: car.name, number: recall.number }) })),
    ...facts.ofCar(observations, car.id).flatMap(({ id, text, recheckOn, closedOn }): Reminder[] => (recheckOn === null || closedOn !== null ? [] : [{ occurrence: `recheck ${id} ${recheckOn}`, kind: 'recheck', late: false, from: recheckOn, text: words('reminder-recheck', { car: car.name, text }) }])),
    ...car.followUps.flatMap((one): Reminder[] => (one.from === null ? [] : [{ occurrence: `follow-up ${one.followUp.id}`, kind: 'follow-up', late: one.state === 'late', from: one.from, text: words('reminder-follow-up', { car: car.name, text: one.followUp.text }) }])),
  ];
}

/** An item of unknown history is asked about, not reminded of. Under another interval it is another occurrence: what was told held for the one before. */
function ofWindow(facts: Facts, car: CarDue, { item, name, arrangeFrom, lateBy, state }: WindowView): Reminder[] {
  if (arrangeFrom === null || state === 'unknown') return [];
  const text = lateBy === null ? words('reminder-item', { car: car.name, name }) : words('reminder-item-late', { car: car.name, name, late: sayLateBy(lateBy) });
  return [{ occurrence: `item ${item} ${lastDone(facts, car.id, item) ?? 'never'} ${intervalOf(facts, item)}`, kind: 'item', late: lateBy !== null, from: arrangeFrom, text }];
}

/** The interval in a few signs, as it was entered. */
function intervalOf(facts: Facts, item: string): string {
  const limits = facts.get(serviceItems, item)?.interval;
  return [limits?.first, limits?.repeat].map((limit) => `${limit?.months ?? '-'}/${limit?.distance == null ? '-' : `${limit.distance.value}${limit.distance.unit}`}`).join(' ');
}

/** The day on which an item was last done: what names the occurrence that comes after it. */
function lastDone(facts: Facts, car: string, item: string): LocalDate | null {
  const days = facts.ofCar(workRecords, car).filter((record) => record.lines.some((line) => line.item === item && line.outcome !== 'not-done')).map((record) => record.date);
  return days.reduce<LocalDate | null>((last, day) => (last === null || day > last ? day : last), null);
}

/** The day before, when parts and tools are laid out. */
function ofSession({ id, day, placeName, tasks }: SessionView): Reminder {
  const cars = [...new Set(tasks.map((task) => task.carName))].join(', ');
  return { occurrence: `session ${id} ${day}`, kind: 'session', late: false, from: addDays(day, -1), text: words('reminder-session', { cars, place: placeName, date: sayDate(day) }) };
}

function words(key: string, values: Readonly<Record<string, string>>): string {
  return say({ key, values });
}
