import { isPinned, type Session } from './session.ts';
import { taskKey, type TaskRef } from './task-ref.ts';

/** A task that a change puts into one session while another one keeps it. */
export interface PinnedTwice {
  readonly task: TaskRef;
  /** The other session: the one that kept it before, where one did. */
  readonly kept: Session;
}

/**
 * The first task that a change gives a day and place while another session keeps it, or that leaves it with two; null where there is
 * none. What stood twice before, as it still stands, is not the doing of this change.
 */
export function pinnedTwice(after: Iterable<Session>, before: Iterable<Session>): PinnedTwice | null {
  const stood = new Set(standsOf(before).map((one) => one.key));
  const stands = standsOf(after);
  for (const fresh of stands.filter((one) => !stood.has(one.key))) {
    const others = stands.filter((one) => one.session !== fresh.session && taskKey(one.task) === taskKey(fresh.task));
    const other = others.find((one) => stood.has(one.key)) ?? others[0];
    if (other !== undefined) return { task: other.task, kept: other.session };
  }
  return null;
}

function standsOf(board: Iterable<Session>): readonly { readonly key: string; readonly task: TaskRef; readonly session: Session }[] {
  return [...board].filter(isPinned).flatMap((session) => session.tasks.map((task) => ({ key: `${taskKey(task)} ${session.day} ${session.place}`, task, session })));
}
