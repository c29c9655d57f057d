import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { obligations } from '../care/obligation.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { ownRecordsOf } from '../records/earlier-things.ts';
import { say } from '../result/words/say.ts';
import { accessGroups } from '../sessions/access-group.ts';
import { minutesTogether } from '../sessions/minutes-together.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned, sessions, sessionStateSchema, type Session } from '../sessions/session.ts';
import { taskRefSchema, type TaskRef } from '../sessions/task-ref.ts';
import { ownMinutes } from './own-minutes.ts';
import { doneSince } from './plan-input.ts';

/** A session that stands, with all that a post on the yard shows. */
export const sessionViewSchema = z.object({
  id: z.string(),
  day: dateSchema,
  place: z.string(),
  placeName: z.string(),
  placeKind: z.enum(['home', 'garage']),
  state: sessionStateSchema,
  movedFrom: z.object({ day: dateSchema, place: z.string() }).nullable(),
  note: z.string(),
  /** Its day has gone by, and nobody has said how it went. */
  passed: z.boolean(),
  cars: z.array(z.string()),
  tasks: z.array(z.object({ task: taskRefSchema, car: z.string(), carName: z.string(), name: z.string(), done: z.boolean() })),
  /** Minutes of what is still to be done, each access once; and of how many tasks nobody has said how long they take. */
  minutes: z.int(),
  withoutMinutes: z.int(),
});
export type SessionView = z.infer<typeof sessionViewSchema>;

/** The sessions that stand, by day: proposed ones of today or later, and all that are kept and not ended. */
export function sessionViews(facts: Facts, today: LocalDate): SessionView[] {
  const standing = facts.all(sessions).filter((one) => isPinned(one) || (one.state === 'proposed' && one.day >= today));
  return standing.map((one) => sessionView(facts, one, today)).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.place < b.place ? -1 : a.place > b.place ? 1 : a.id < b.id ? -1 : 1));
}

/** A session of any state, with all that a post on the yard shows. */
export function sessionView(facts: Facts, session: Session, today: LocalDate): SessionView {
  const place = standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  const tasks = session.tasks.flatMap((task) => taskOf(facts, task, session) ?? []);
  const open = tasks.filter((one) => !one.done);
  const { id, day, state, movedFrom, note } = session;
  return {
    id, day, state, movedFrom, note,
    place: session.place,
    placeName: place?.name ?? session.place,
    placeKind: place?.kind ?? 'garage',
    passed: day < today,
    cars: [...new Set(tasks.map((one) => one.car))].sort(),
    tasks,
    minutes: minutesOf(facts, open.map((one) => one.task)),
    withoutMinutes: open.filter(({ task }) => isWithoutMinutes(facts, task)).length,
  };
}

function taskOf(facts: Facts, task: TaskRef, session: Session): SessionView['tasks'][number] | null {
  const found = task.kind === 'item' ? facts.get(serviceItems, task.id) : facts.get(obligations, task.id);
  if (found === null) return null;
  const name = found.name ?? ('kind' in found ? say({ key: `obligation-${found.kind}`, values: {} }) : task.id);
  return { task, car: found.car, carName: facts.get(cars, found.car)?.name ?? found.car, name, done: doneSince(facts, task, session) };
}

function isWithoutMinutes(facts: Facts, task: TaskRef): boolean {
  const item = task.kind === 'item' ? facts.get(serviceItems, task.id) : null;
  return item === null || minutesOfItem(facts, item) === null;
}

function minutesOfItem(facts: Facts, item: ServiceItem): number | null {
  return ownMinutes(item, ownRecordsOf(facts, item.car))?.minutes ?? null;
}

function minutesOf(facts: Facts, tasks: readonly TaskRef[]): number {
  const items = tasks.flatMap((task) => (task.kind === 'item' ? (facts.get(serviceItems, task.id) ?? []) : []));
  return minutesTogether(facts.all(accessGroups), items.map((item) => ({ car: item.car, minutes: minutesOfItem(facts, item) ?? 0, access: item.access })));
}
