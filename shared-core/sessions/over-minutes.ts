import { obligations } from '../care/obligation.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import type { Message } from '../result/result.ts';
import { accessGroups, type AccessGroup } from './access-group.ts';
import { minutesTogether, type TimedTask } from './minutes-together.ts';
import { standingPlaces, type Place } from './place.ts';
import { planSettings, type PlanSettings } from './plan-settings.ts';
import type { Session } from './session.ts';
import type { TaskRef } from './task-ref.ts';
import { minutesOf } from './why-not-there.ts';

interface FilledDay {
  readonly day: Session['day'];
  readonly place: Place;
  readonly tasks: readonly TimedTask[];
}

/** Says that the tasks of a session take more minutes than one likes, or has, to work at its place in a day; null where they do not. */
export function overMinutes({ settings, groups }: { readonly settings: PlanSettings; readonly groups: readonly AccessGroup[] }, { day, place, tasks }: FilledDay): Message | null {
  const [minutes, most] = [minutesTogether(groups, tasks), minutesOf({ settings }, place)];
  return minutes > most ? { key: 'session-over-minutes', values: { day, place: place.name, minutes, most } } : null;
}

/** The same of a session as it is kept. */
export function sessionOverMinutes(facts: Facts, session: Session): readonly Message[] {
  const { settings } = planSettings(facts);
  const place = standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  if (place === undefined) return [];
  const tasks = session.tasks.flatMap((task) => timedTask(facts, task, settings.unknownMinutes) ?? []);
  return [overMinutes({ settings, groups: facts.all(accessGroups) }, { day: session.day, place, tasks })].flatMap((one) => one ?? []);
}

/** What the time of a task is made of, by what was entered; null where it is no task. */
export function timedTask(facts: Facts, task: TaskRef, unknown: number): TimedTask | null {
  if (task.kind === 'item') {
    const item = facts.get(serviceItems, task.id);
    return item === null ? null : { car: item.car, minutes: item.minutes ?? unknown, access: item.access };
  }
  const duty = facts.get(obligations, task.id);
  return duty === null ? null : { car: duty.car, minutes: unknown, access: [] };
}
