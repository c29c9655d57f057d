import type { Facts } from '../journal/facts.ts';
import type { Put } from '../journal/entry-kind.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { pinnedTwice } from './pinned-twice.ts';
import { standingPlaces } from './place.ts';
import { sayTask } from './say-task.ts';
import { isPinned, sessions, sessionSchema, type Session } from './session.ts';

/**
 * Refuses to put sessions back as they were where a day and place, or a task of theirs, has been given to another session since.
 * `puts` is what would stand again in place of what stands.
 *
 * @example checkRestored(facts, [oilBackInTheFirstSession]) //=> refused 'undo-task-in-session' { task: 'Pip: Engine oil', day: '2026-12-09' }
 */
export function checkRestored(facts: Facts, puts: readonly Put[]): Result<null> {
  const before = new Map(facts.all(sessions).map((one) => [one.id, one]));
  const after = new Map(before);
  for (const { family, id, value } of puts) {
    if (family !== sessions.name) continue;
    if (value === null) after.delete(id);
    else after.set(id, sessionSchema.parse(value));
  }
  const pinned = [...after.values()].filter(isPinned);
  const taken = pinned.filter((one) => before.get(one.id) !== one).flatMap((one) => pinned.find((other) => isThere(before, one, other)) ?? [])[0];
  if (taken !== undefined) {
    const place = standingPlaces(facts).find((one) => one.place.id === taken.place)?.place.name ?? taken.place;
    return refuse('undo-day-taken', { day: taken.day, place }, ['entries']);
  }
  const twice = pinnedTwice(after.values(), before.values());
  return twice === null ? ok(null) : refuse('undo-task-in-session', { task: sayTask(facts, twice.task), day: twice.kept.day }, ['entries']);
}

/** Another session on the day and at the place that one comes to; one that stood there beside it before is no new matter. */
function isThere(before: ReadonlyMap<string, Session>, one: Session, other: Session): boolean {
  const was = before.get(one.id);
  const stood = was !== undefined && isPinned(was) && was.day === one.day && was.place === one.place;
  return !stood && other.id !== one.id && other.day === one.day && other.place === one.place;
}
