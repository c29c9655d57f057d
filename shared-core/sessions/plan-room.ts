import type { LocalDate } from '../calendar/local-date.ts';
import type { PlanInstance, PlanTask } from './plan-instance.ts';

/** How full the days are while tasks are put onto them one by one. */
export interface PlanRoom {
  /** Whether a task still fits on a day at a place: its minutes and what must be opened for it, and a car left to drive. */
  fits(task: PlanTask, day: LocalDate, place: string): boolean;
  put(task: PlanTask, day: LocalDate, place: string): void;
}

/** Empty days. */
export function emptyRoom(instance: PlanInstance): PlanRoom {
  const minutes = new Map<string, number>();
  const opened = new Set<string>();
  const apart = new Map<string, Set<string>>();
  const slot = (day: LocalDate, place: string) => `${day} ${place}`;
  const groupKey = (day: LocalDate, place: string, task: PlanTask, access: string) => `${slot(day, place)} ${task.car} ${access}`;
  const needs = (task: PlanTask, day: LocalDate, place: string) =>
    instance.access.filter((group) => group.car === task.car && task.access.includes(group.id) && !opened.has(groupKey(day, place, task, group.id))).reduce((sum, group) => sum + group.minutes, task.minutes);
  const wouldBeAll = (car: string, day: LocalDate) => {
    const others = apart.get(day) ?? new Set();
    const isAway = (one: string) => instance.cars.some(({ id, away }) => id === one && away.includes(day));
    return instance.neverAll.some((list) => list.includes(car) && list.every((one) => one === car || others.has(one) || isAway(one)));
  };
  return {
    fits: (task, day, place) => {
      const at = instance.places.find((one) => one.id === place);
      const most = at?.minutesOn[day] ?? at?.minutesADay ?? 0;
      return (minutes.get(slot(day, place)) ?? 0) + needs(task, day, place) <= most && !wouldBeAll(task.car, day);
    },
    put: (task, day, place) => {
      minutes.set(slot(day, place), (minutes.get(slot(day, place)) ?? 0) + needs(task, day, place));
      for (const access of task.access) opened.add(groupKey(day, place, task, access));
      apart.set(day, (apart.get(day) ?? new Set()).add(task.car));
    },
  };
}
