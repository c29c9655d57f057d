import type { Refusal } from '../result/result.ts';
import type { PlanAnswer, PlannedSession } from './plan-answer.ts';
import type { PlanInstance, PlanTask } from './plan-instance.ts';

/** Faults in single sessions: closed days, cars that are away, tasks that are not allowed there, minutes. */
export function sessionFaults(instance: PlanInstance, { sessions }: PlanAnswer): readonly Refusal[] {
  return sessions.flatMap((session, at) => [...dayFaults(instance, session, at), ...taskFaults(instance, session, at), ...minuteFaults(instance, session, at)]);
}

function dayFaults({ places }: PlanInstance, { day, place }: PlannedSession, at: number): readonly Refusal[] {
  const isClosed = places.some(({ id, closed }) => id === place && closed.includes(day));
  return isClosed ? [{ code: 'plan-place-closed', values: { place, date: day }, path: ['sessions', at, 'day'] }] : [];
}

function taskFaults(instance: PlanInstance, session: PlannedSession, at: number): readonly Refusal[] {
  return tasksIn(instance, session).flatMap((task): readonly Refusal[] => {
    const path = ['sessions', at, 'tasks', session.tasks.indexOf(task.id)];
    const away = instance.cars.some(({ id, closed }) => id === task.car && closed.includes(session.day));
    const cost = task.costMinor[session.place]?.[instance.days.indexOf(session.day)] ?? null;
    return [
      ...(away ? [{ code: 'plan-car-away', values: { car: task.car, date: session.day }, path }] : []),
      ...(cost === null ? [{ code: 'plan-not-allowed-then', values: { task: task.id, place: session.place, date: session.day }, path }] : []),
    ];
  });
}

function minuteFaults(instance: PlanInstance, session: PlannedSession, at: number): readonly Refusal[] {
  const is = minutesOf(instance, session);
  const place = instance.places.find(({ id }) => id === session.place);
  const most = place?.minutesOn[session.day] ?? place?.minutesADay ?? 0;
  return [
    ...(is === session.minutes ? [] : [{ code: 'plan-minutes-wrong', values: { said: session.minutes, is }, path: ['sessions', at, 'minutes'] }]),
    ...(is <= most ? [] : [{ code: 'plan-day-too-full', values: { place: session.place, date: session.day, minutes: is, most }, path: ['sessions', at, 'tasks'] }]),
  ];
}

/** The tasks of a session as the instance has them. */
export function tasksIn({ tasks }: PlanInstance, session: PlannedSession): readonly PlanTask[] {
  return tasks.filter(({ id }) => session.tasks.includes(id));
}

/** The minutes of a session: those of its tasks, and of each access once for a car. */
export function minutesOf(instance: PlanInstance, session: PlannedSession): number {
  const chosen = tasksIn(instance, session);
  const opened = instance.access.filter(({ car, id }) => chosen.some((task) => task.car === car && task.access.includes(id)));
  return [...chosen, ...opened].reduce((sum, { minutes }) => sum + minutes, 0);
}
