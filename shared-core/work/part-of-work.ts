import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { sessions } from '../sessions/session.ts';
import { findTask, taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { timeTaken, type StepRef } from './doing.ts';
import { spansOf, vouchedSpans } from './take-time.ts';

/** A part of the work on a session: that of some tasks (null: what several share), and all that is of some cars. */
export interface PartOfWork {
  readonly task: (key: string | null) => boolean;
  readonly car: (id: string) => boolean;
}

/** All the work on a session; what stands on tasks that have left it is of none of it any more. */
export function wholeOf(facts: Facts, session: string): PartOfWork {
  const held = new Set((facts.get(sessions, session)?.tasks ?? []).map(taskKey));
  return { task: (key) => key === null || held.has(key), car: () => true };
}

/** The work on the tasks that go while others stay: with the last task of a car goes all that is of it. */
export function partOfTasks(facts: Facts, goes: readonly TaskRef[], stays: readonly TaskRef[]): PartOfWork {
  const [tasks, going, staying] = [new Set(goes.map(taskKey)), carsOf(facts, goes), carsOf(facts, stays)];
  return { task: (key) => key !== null && tasks.has(key), car: (id) => going.has(id) && !staying.has(id) };
}

/** Whether what stands at a step, or on a car alone, is of the part. */
export function isOfPart(part: PartOfWork, { at, car }: { readonly at: StepRef | null; readonly car: string }): boolean {
  return part.car(car) || (at !== null && part.task(at.task));
}

/** The entries that end the time of a part of the work when it was last vouched for. */
export function endedOfPart(facts: Facts, session: string, part: PartOfWork, { now, newId }: Moment): readonly NewEntry[] {
  const running = spansOf(facts, session).filter((span) => span.to === null && part.task(span.task));
  return running.flatMap((span) => vouchedSpans(facts, span, now, newId)).map((span) => newEntry(timeTaken, span));
}

function carsOf(facts: Facts, tasks: readonly TaskRef[]): ReadonlySet<string> {
  return new Set(tasks.flatMap((task) => {
    const found = findTask(facts, task);
    return found.ok ? [found.value.car] : [];
  }));
}
