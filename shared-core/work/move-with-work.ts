import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { moveSession } from '../sessions/move-session.ts';
import { sessions } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { carryWork } from './carry-work.ts';
import { begunWork } from './doing.ts';

/**
 * Moves a session, or some of its tasks, as `moveSession` does; what was ticked, read, timed, photographed and found on them goes along into
 * the session that they join, in the same change.
 */
export const moveWithWork = change({
  request: moveSession.request,
  reply: moveSession.reply,
  decide: (facts, request, moment) => {
    const moved = moveSession.decide(facts, request, moment);
    if (!moved.ok) return moved;
    const { entries, reply } = moved.value;
    const before = must(facts.get(sessions, request.session), 'a session that moved');
    if (reply.session.id === before.id) return moved;
    const goes = request.tasks ?? before.tasks;
    const keys = new Set(goes.map(taskKey));
    const carried = carryWork(facts, { from: before.id, to: reply.session.id, goes, stays: before.tasks.filter((task) => !keys.has(taskKey(task))) }, moment);
    if (carried.length === 0) return moved;
    const begun = facts.get(begunWork, reply.session.id) !== null;
    return ok({ entries: [...entries, ...carried], reply: { ...reply, notes: [...reply.notes, say({ key: begun ? 'work-carried' : 'work-carried-to-begin', values: {} })] } });
  },
});
