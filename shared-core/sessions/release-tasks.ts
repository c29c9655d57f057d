import { z } from 'zod';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { openSession } from './move-session.ts';
import { boardEntries, takeOut } from './session-board.ts';
import { sessionSchema } from './session.ts';
import { taskKey, taskRefSchema } from './task-ref.ts';

/** Takes tasks out of a session without giving them another day: they are free again. Refuses to take out all of them, for that is to cancel it. */
export const releaseTasks = change({
  request: z.strictObject({ session: idSchema, tasks: z.array(taskRefSchema).min(1).max(100) }),
  reply: z.object({ session: sessionSchema }),
  decide: (facts, request) => {
    const found = openSession(facts, request.session);
    if (!found.ok) return found;
    const strange = request.tasks.find((task) => !found.value.tasks.some((one) => taskKey(one) === taskKey(task)));
    if (strange !== undefined) return refuse('task-not-in-session', {}, ['tasks']);
    const before = new Map([[found.value.id, found.value]]);
    const after = takeOut(before, request.tasks, () => true);
    const session = after.get(found.value.id);
    return session === undefined ? refuse('session-emptied', { day: found.value.day }, ['tasks']) : ok({ entries: boardEntries(before, after), reply: { session } });
  },
});
