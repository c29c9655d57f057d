import type { LocalDate } from '../calendar/local-date.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { meantSince, withTasks } from './meant-since.ts';
import { isPinned, sessionRemoved, sessions, sessionSet, type Session } from './session.ts';
import { taskKey, type TaskRef } from './task-ref.ts';

/** The sessions that stand from a day on, by id: what keeping, moving and proposing change together. */
export type SessionBoard = ReadonlyMap<string, Session>;

/** The sessions, proposed and pinned, of today or later. */
export function standingBoard(facts: Facts, today: LocalDate): SessionBoard {
  const standing = facts.all(sessions).filter((one) => one.day >= today && (one.state === 'proposed' || isPinned(one)));
  return new Map(standing.map((one) => [one.id, one]));
}

/** The board without some tasks in the sessions of some states; a session left without any is gone. */
export function takeOut(board: SessionBoard, tasks: readonly TaskRef[], from: (session: Session) => boolean): SessionBoard {
  const out = new Set(tasks.map(taskKey));
  const left = [...board.values()].map((one) => (from(one) ? withTasks(one, one.tasks.filter((task) => !out.has(taskKey(task)))) : one));
  return new Map(left.filter((one) => one.tasks.length > 0).map((one) => [one.id, one]));
}

/** The board with a session put in; where one of its kind (pinned or proposed) stands on that day at that place, its tasks and its note join that one. */
export function putIn(board: SessionBoard, session: Session): { readonly board: SessionBoard; readonly session: Session } {
  const there = [...board.values()].find((one) => one.id !== session.id && one.day === session.day && one.place === session.place && isPinned(one) === isPinned(session));
  const joined = there === undefined ? session : joinedBy(there, session);
  const rest = new Map(board);
  if (there !== undefined) rest.delete(session.id);
  return { board: rest.set(joined.id, joined), session: joined };
}

/** Each task stays meant since when it was: what was recorded before is not done for it, what was recorded since is. */
function joinedBy(there: Session, session: Session): Session {
  const own = new Set(there.tasks.map(taskKey));
  const whole = withTasks(there, [...there.tasks, ...session.tasks], (task) => meantSince(own.has(taskKey(task)) ? there : session, task));
  return { ...whole, note: there.note === session.note ? there.note : [there.note, session.note].filter((one) => one !== '').join('\n') };
}

/** The entries that make one board of another: what has changed is stated whole, what is gone is taken away. */
export function boardEntries(before: SessionBoard, after: SessionBoard): readonly NewEntry[] {
  const gone = [...before.keys()].filter((id) => !after.has(id)).map((id) => newEntry(sessionRemoved, { id, car: null }));
  const changed = [...after.values()].filter((one) => before.get(one.id) !== one && JSON.stringify(before.get(one.id)) !== JSON.stringify(one));
  return [...gone, ...changed.map((one) => newEntry(sessionSet, one))];
}
