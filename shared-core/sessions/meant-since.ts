import type { LocalDate } from '../calendar/local-date.ts';
import type { Session } from './session.ts';
import { taskKey, type TaskRef } from './task-ref.ts';

/** Since when a task is meant to be done in a session: the day, and the instant where it is known. */
export interface MeantSince {
  readonly on: LocalDate;
  readonly at: string | null;
}

/** Since when a session has meant to do a task: as long as itself, or as long as the session from which the task came. */
export function meantSince(session: Pick<Session, 'madeOn' | 'madeAt' | 'joined'>, task: TaskRef): MeantSince {
  const joined = session.joined?.find((one) => taskKey(one.task) === taskKey(task));
  return joined === undefined ? { on: session.madeOn, at: session.madeAt ?? null } : { on: joined.on, at: joined.at ?? null };
}

/** A session with these tasks in place of its own, each meant since when it was; what is said of others is gone with them. */
export function withTasks(session: Session, tasks: Session['tasks'], since: (task: TaskRef) => MeantSince = (task) => meantSince(session, task)): Session {
  const { joined: _before, ...rest } = session;
  const own = { on: session.madeOn, at: session.madeAt ?? null };
  const joined = tasks.flatMap((task) => {
    const { on, at } = since(task);
    return on === own.on && at === own.at ? [] : [{ task, on, ...(at === null ? {} : { at }) }];
  });
  return { ...rest, tasks: [...tasks], ...(joined.length === 0 ? {} : { joined }) };
}
