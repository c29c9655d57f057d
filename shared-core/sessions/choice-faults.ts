import { must } from '../result/assert.ts';
import type { Message } from '../result/result.ts';
import type { PlanAccount } from './plan-account.ts';
import type { ChosenPlace } from './plan-baseline.ts';
import type { PlanProblem } from './plan-problem.ts';
import { whyNotThere } from './why-not-there.ts';

/**
 * What rules a choice of days and places breaks: tasks where they cannot be done, days over their minutes, no everyday car left to
 * drive, something that must be done left out. Only `moved` tasks are held against the calendar: the rest stands where it stands.
 */
export function choiceFaults(problem: PlanProblem, account: PlanAccount, moved: readonly ChosenPlace[]): readonly Message[] {
  return onlyOnce([...calendarFaults(problem, moved), ...minuteFaults(problem, account), ...drivingFaults(problem, account), ...leftFaults(problem, account)]);
}

function calendarFaults(problem: PlanProblem, moved: readonly ChosenPlace[]): readonly Message[] {
  return moved.flatMap(({ task, day, place }) => {
    const known = must(problem.tasks.get(task), 'task');
    const at = must(problem.input.places.find((one) => one.place.id === place), 'place').place;
    if (day > problem.lastDay) return [{ key: 'after-horizon', values: { day, last: problem.lastDay } }];
    return whyNotThere(problem.input, known, at, day) ?? [];
  });
}

function onlyOnce(faults: readonly Message[]): readonly Message[] {
  return [...new Map(faults.map((fault) => [JSON.stringify(fault), fault])).values()];
}

function minuteFaults({ input, instance }: PlanProblem, { sessions }: PlanAccount): readonly Message[] {
  return sessions.flatMap((session) => {
    const place = must(instance.places.find((one) => one.id === session.place), 'place');
    const most = place.minutesOn[session.day] ?? place.minutesADay;
    const name = input.places.find((one) => one.place.id === session.place)?.place.name ?? session.place;
    return session.minutes > most ? [{ key: 'day-too-full', values: { place: name, day: session.day, minutes: session.minutes, most } }] : [];
  });
}

function drivingFaults({ instance }: PlanProblem, { sessions }: PlanAccount): readonly Message[] {
  const carOf = new Map(instance.tasks.map((task) => [task.id, task.car]));
  return [...new Set(sessions.map((one) => one.day))].flatMap((day) => {
    const apart = new Set(sessions.filter((one) => one.day === day).flatMap((one) => one.tasks.map((task) => carOf.get(task))));
    const isGone = (car: string) => apart.has(car) || instance.cars.some(({ id, away }) => id === car && away.includes(day));
    return instance.neverAll.some((list) => list.some((car) => apart.has(car)) && list.every(isGone)) ? [{ key: 'all-cars-apart', values: { day } }] : [];
  });
}

function leftFaults({ instance, tasks }: PlanProblem, { left }: PlanAccount): readonly Message[] {
  return instance.tasks.filter((task) => task.mustDo && left.includes(task.id)).map((task) => ({ key: 'must-be-done', values: { task: tasks.get(task.id)?.name ?? task.id } }));
}
