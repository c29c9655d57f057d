import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { checkBoard, checkPin } from './check-board.ts';
import { ensurePlace } from './ensure-place.ts';
import { withTasks } from './meant-since.ts';
import { sessionOverMinutes } from './over-minutes.ts';
import { boardEntries, putIn, standingBoard, takeOut } from './session-board.ts';
import { isPinned, sessions, sessionSchema, sessionSet, type Session } from './session.ts';
import { taskKey, taskRefSchema } from './task-ref.ts';

/**
 * Moves a session, or some of its tasks, to another day or place, and keeps it there. Where one is kept on that day at that place, the
 * tasks join it; where it stands there already, nothing changes, but that a proposed one is kept.
 */
export const moveSession = change({
  request: z.strictObject({ session: idSchema, day: dateSchema, place: idSchema.optional(), tasks: z.array(taskRefSchema).min(1).max(100).optional() }),
  /** `notes`: what the keeper may not have meant, though it is kept. */
  reply: z.object({ session: sessionSchema, notes: z.array(z.string()) }),
  decide: (facts, request, moment) => {
    const found = openSession(facts, request.session);
    if (!found.ok) return found;
    const session = found.value;
    const place = ensurePlace(facts, request.place ?? session.place);
    if (!place.ok) return place;
    const tasks = request.tasks ?? session.tasks;
    const strange = tasks.find((task) => !session.tasks.some((one) => taskKey(one) === taskKey(task)));
    if (strange !== undefined) return refuse('task-not-in-session', {}, ['tasks']);
    const stays = request.day === session.day && place.value.place.id === session.place;
    if (stays && isPinned(session) && session.day >= moment.today) return ok({ entries: [], reply: { session, notes: [] } });
    const sound = checkPin(facts, { day: request.day, place: place.value.place, tasks }, moment.today);
    if (!sound.ok) return sound;
    // A kept session whose day has passed without being done is moved on like any other.
    const before = new Map(standingBoard(facts, moment.today)).set(session.id, session);
    const whole = tasks.length === session.tasks.length;
    const moved: Session = {
      ...withTasks(session, [...tasks]), id: whole ? session.id : moment.newId(), day: request.day, place: place.value.place.id, ...(stays ? { state: 'kept', movedFrom: null } : { state: 'moved', movedFrom: { day: session.day, place: session.place } }),
    };
    const put = putIn(takeOut(before, tasks, (one) => one.id === session.id || one.state === 'proposed'), moved);
    const allowed = checkBoard(facts, put.board, before);
    if (!allowed.ok) return allowed;
    return ok({ entries: [...place.value.entries, ...boardEntries(before, put.board)], reply: { session: put.session, notes: sessionOverMinutes(facts, put.session).map(say) } });
  },
});

/** Ends a session: it was done, or it is cancelled and its tasks are free again. */
export const endSession = change({
  request: z.strictObject({ session: idSchema, as: z.enum(['done', 'cancelled']), note: longText(500).optional() }),
  reply: z.object({ session: sessionSchema }),
  decide: (facts, request, moment) => {
    const found = openSession(facts, request.session);
    if (!found.ok) return found;
    if (request.as === 'done' && found.value.day > moment.today) return refuse('session-ahead', { day: found.value.day }, ['as']);
    const session: Session = { ...found.value, state: request.as, note: request.note ?? found.value.note };
    return ok({ entries: [newEntry(sessionSet, session)], reply: { session } });
  },
});

/** A session that can still be moved or ended, or its refusal. */
export function openSession(facts: Facts, id: string): Result<Session> {
  const session = facts.get(sessions, id);
  if (session === null) return refuse('unknown-session', { session: id }, ['session']);
  if (session.state !== 'proposed' && !isPinned(session)) return refuse('session-ended', { day: session.day }, ['session']);
  return ok(session);
}
