import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { openSession } from '../sessions/move-session.ts';
import { isPinned, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { begunSchema, begunWork, workBegun, type StepRef } from './doing.ts';
import { unreadCautions } from './session-cautions.ts';

/** Begins the work of a kept session, once its cautions were read; begun before, only what was read since is noted. */
export const beginWork = change({
  /** `read`: the cautions that were read; all of them unless given. */
  request: z.strictObject({ session: idSchema, read: begunSchema.shape.read }),
  reply: z.object({ begun: begunSchema }),
  decide: (facts, { session: id, read }, { today, now }) => {
    const session = keptSession(facts, id);
    if (!session.ok) return session;
    const standing = facts.get(begunWork, id);
    const unread = unreadCautions(facts, session.value).map((one) => one.caution).filter((one) => read === undefined || read.includes(one));
    if (standing !== null && unread.length === 0) return ok({ entries: [], reply: { begun: standing } });
    const begun = { ...(standing ?? { id, on: today, at: now }), read: [...(standing?.read ?? []), ...unread] };
    return ok({ entries: [newEntry(workBegun, begun)], reply: { begun } });
  },
});

/** A session that is kept and not ended; what is only proposed may be laid anew, and ticks on it would be lost. */
export function keptSession(facts: Facts, id: string): Result<Session> {
  const session = openSession(facts, id);
  if (!session.ok) return session;
  return isPinned(session.value) ? session : refuse('session-not-kept', { day: session.value.day }, ['session']);
}

/** A session on which work has begun and whose cautions were all read, refused where the steps named are of no task in it. */
export function begunSession(facts: Facts, id: string, of: readonly StepRef[] = []): Result<Session> {
  const session = keptSession(facts, id);
  if (!session.ok) return session;
  if (facts.get(begunWork, id) === null) return refuse('work-not-begun', {}, ['session']);
  if (unreadCautions(facts, session.value).length > 0) return refuse('cautions-unread', {}, ['session']);
  const tasks = new Set(session.value.tasks.map(taskKey));
  return of.every(({ task }) => tasks.has(task)) ? session : refuse('task-not-in-session', {}, ['of']);
}
