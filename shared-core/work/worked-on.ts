import type { Facts } from '../journal/facts.ts';
import { findTask, taskKey } from '../sessions/task-ref.ts';
import type { Session } from '../sessions/session.ts';
import { finds } from './doing.ts';
import { valuesOf } from './read-at-step.ts';
import { photosOf } from './take-photo.ts';
import { ticksOf } from './tick-step.ts';

/** The tasks of a session of which a step of their own was ticked as done, or something was read at one; a step that several share says nothing of any. */
export function workedTasks(facts: Facts, session: string): ReadonlySet<string> {
  const ticked = ticksOf(facts, session).flatMap(({ as, of }) => (as === 'done' && new Set(of.map((ref) => ref.task)).size === 1 ? [of[0]?.task ?? ''] : []));
  return new Set([...ticked, ...valuesOf(facts, session).map((one) => one.at.task)]);
}

/** The cars that still have a task in a session and on which something was ticked as done, read, found or photographed. */
export function workedCars(facts: Facts, session: Session): ReadonlySet<string> {
  const tasks = session.tasks.flatMap((task) => {
    const found = findTask(facts, task);
    return found.ok ? [{ key: taskKey(task), car: found.value.car }] : [];
  });
  const here = new Set(tasks.map((one) => one.car));
  const ticked = new Set(ticksOf(facts, session.id).flatMap(({ as, of }) => (as === 'done' ? of.map((ref) => ref.task) : [])));
  return new Set([
    ...tasks.filter((one) => ticked.has(one.key)).map((one) => one.car),
    ...[...valuesOf(facts, session.id), ...photosOf(facts, session.id), ...facts.all(finds).filter((one) => one.session === session.id)].map((one) => one.car).filter((car) => here.has(car)),
  ]);
}
