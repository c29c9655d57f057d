import type { Result } from '../../../shared-core/result/result.ts';
import type { SessionView } from '../../../shared-core/views/session-view.ts';
import { change } from '../change.ts';

/** `notes`: what the keeper may not have meant, though it is done. */
type Undoable = Promise<Result<{ readonly undo: readonly number[]; readonly notes?: readonly string[] }>>;
type Standing = Pick<SessionView, 'id' | 'day' | 'place' | 'state' | 'tasks'>;

/** Keeps every session that is only proposed. */
export function keepAllProposed(sessions: readonly Standing[]): Undoable {
  return change('session.keep', { sessions: sessions.filter((one) => one.state === 'proposed' && hasOpen(one)).map(wanted) });
}

/** Takes every session away that is only proposed. */
export function clearProposed(_sessions: readonly Standing[]): Undoable {
  return change('session.propose', { sessions: [] });
}

/** Keeps one that is proposed. */
export function keepSession(session: Standing): Undoable {
  return change('session.keep', { sessions: [wanted(session)] });
}

/** Takes a session away; its tasks are free again. `sure`: although work on it is in hand, here and below. */
export function dropSession({ id }: Pick<Standing, 'id'>, sure = false): Undoable {
  return change('session.end', { session: id, as: 'cancelled', sure });
}

/** Takes one task out of a session; it is free again. */
export function takeTaskOut({ id }: Pick<Standing, 'id'>, task: Standing['tasks'][number]['task'], sure = false): Undoable {
  return change('session.release', { session: id, tasks: [task], sure });
}

/** Says that a kept session was held. */
export function endSession({ id }: Pick<Standing, 'id'>, sure = false): Undoable {
  return change('session.end', { session: id, as: 'done', sure });
}

function hasOpen({ tasks }: Standing): boolean {
  return tasks.some((one) => !one.done);
}

/** What was done since it was proposed is not kept to be done once more. */
function wanted({ day, place, tasks }: Standing) {
  return { day, place, tasks: tasks.filter((one) => !one.done).map((one) => one.task) };
}
