import type { LocalDate } from '../calendar/local-date.ts';
import { obligations } from '../care/obligation.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { carDays, isAway } from './car-days.ts';
import { everydayCars } from './everyday-cars.ts';
import { whyClosed } from './open-days.ts';
import { holdsDay, placeDays } from './place-days.ts';
import { pinnedTwice } from './pinned-twice.ts';
import type { Place } from './place.ts';
import { sayTask } from './say-task.ts';
import { isPinned, LONGEST_NOTE, MOST_TASKS } from './session.ts';
import type { SessionBoard } from './session-board.ts';
import { findTask, taskKey, type TaskRef } from './task-ref.ts';

/** Where tasks are to be pinned. */
export interface WantedPin {
  readonly day: LocalDate;
  readonly place: Place;
  readonly tasks: readonly TaskRef[];
}

/** What of a place's calendar a keeper may not overrule by keeping a session there; a day off and a shorter notice are theirs to judge. */
const BINDING: ReadonlySet<string> = new Set(['day-has-passed', 'place-closed-then', 'place-closed-weekday']);

/**
 * Refuses to pin tasks on a day that has passed or on which the place is closed, a car that is needed or away then, a test after
 * its last valid day, and a task twice.
 */
export function checkPin(facts: Facts, { day, place, tasks }: WantedPin, today: LocalDate): Result<null> {
  const closed = whyClosed({ place, stretches: facts.all(placeDays).filter((one) => one.place === place.id), workWeekdays: [], today }, day);
  if (closed !== null && BINDING.has(closed.key)) return refuse(closed.key, closed.values, ['day']);
  if (new Set(tasks.map(taskKey)).size < tasks.length) return refuse('task-twice', {}, ['tasks']);
  for (const task of tasks) {
    const found = findTask(facts, task);
    if (!found.ok) return found;
    if (place.cars !== null && !place.cars.includes(found.value.car)) return refuse('car-not-taken-there', { car: facts.get(cars, found.value.car)?.name ?? found.value.car, place: place.name }, ['place']);
    const free = checkCarFree(facts, found.value.car, day);
    if (!free.ok) return free;
    const duty = task.kind === 'obligation' ? facts.get(obligations, task.id) : null;
    if (duty !== null && day > duty.lastValidDay && duty.lastValidDay >= today) return refuse('after-legal-date', { date: duty.lastValidDay }, ['day']);
  }
  return ok(null);
}

function checkCarFree(facts: Facts, car: string, day: LocalDate): Result<null> {
  const taken = facts.ofCar(carDays, car).find((one) => holdsDay(one, day));
  if (taken === undefined) return ok(null);
  return refuse(taken.why === 'away' ? 'car-away-then' : 'car-needed-then', { car: facts.get(cars, car)?.name ?? car, day, note: taken.note }, ['day']);
}

/** Refuses a board on which a session holds more tasks or more words than one may, on which a task comes to be pinned twice, or which leaves no everyday car to drive on a day on which the board before left one. */
export function checkBoard(facts: Facts, board: SessionBoard, before: SessionBoard): Result<null> {
  const full = [...board.values()].find((one) => one.tasks.length > MOST_TASKS);
  if (full !== undefined) return refuse('session-too-full', { day: full.day, n: full.tasks.length, most: MOST_TASKS }, ['tasks']);
  const wordy = [...board.values()].find((one) => one.note.length > LONGEST_NOTE);
  if (wordy !== undefined) return refuse('session-notes-too-long', { day: wordy.day, most: LONGEST_NOTE, over: wordy.note.length - LONGEST_NOTE }, ['note']);
  const pinned = [...board.values()].filter(isPinned);
  const twice = pinnedTwice(board.values(), before.values());
  if (twice !== null) return refuse('task-in-session', { task: sayTask(facts, twice.task), day: twice.kept.day }, ['tasks']);
  const apart = pinned.find(({ day }) => allApart(facts, board, day) && !allApart(facts, before, day));
  return apart === undefined ? ok(null) : refuse('all-cars-apart', { day: apart.day }, ['day']);
}

function allApart(facts: Facts, board: SessionBoard, day: LocalDate): boolean {
  const everyday = everydayCars(facts);
  const onThatDay = [...board.values()].filter((one) => isPinned(one) && one.day === day);
  const apart = new Set(onThatDay.flatMap((session) => session.tasks).flatMap((task) => {
    const found = findTask(facts, task);
    return found.ok ? [found.value.car] : [];
  }));
  return everyday.some((car) => apart.has(car)) && everyday.every((car) => apart.has(car) || isAway(facts.ofCar(carDays, car), car, day));
}
