import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { endSession } from '../sessions/move-session.ts';
import { releaseTasks } from '../sessions/release-tasks.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { finds } from './doing.ts';
import { valuesOf } from './read-at-step.ts';
import { photosOf } from './take-photo.ts';
import { vouchedSeconds } from './take-time.ts';
import { ticksOf } from './tick-step.ts';

/** The keeper was told that work in hand would come into no record, and is sure. */
const sure = z.boolean().default(false);

/** Ends a session without a record of it; with work in hand it is refused, unless one is sure, for the record would lack it. What was found stays on its car. */
export const endWithWork = change({
  request: endSession.request.extend({ sure }),
  reply: endSession.reply,
  decide: (facts, { sure: isSure, ...request }, moment) => {
    const ended = endSession.decide(facts, request, moment);
    if (!ended.ok) return ended;
    const asked = isSure ? ok(null) : checkNoWork(facts, request.session, null, moment.now);
    return asked.ok ? ended : asked;
  },
});

/** Takes tasks out of a session; with work in hand on them it is refused, unless one is sure. */
export const releaseWithWork = change({
  request: releaseTasks.request.extend({ sure }),
  reply: releaseTasks.reply,
  decide: (facts, { sure: isSure, ...request }, moment) => {
    const released = releaseTasks.decide(facts, request, moment);
    if (!released.ok) return released;
    const asked = isSure ? ok(null) : checkNoWork(facts, request.session, new Set(request.tasks.map(taskKey)), moment.now);
    return asked.ok ? released : asked;
  },
});

/** Refused where something was ticked, timed, read, photographed or found, and says how much; `tasks` null: of all. */
function checkNoWork(facts: Facts, session: string, tasks: ReadonlySet<string> | null, now: string): Result<null> {
  const of = (task: string | null) => tasks === null || (task !== null && tasks.has(task));
  const seconds = [...vouchedSeconds(facts, session, now)].reduce((sum, [task, own]) => sum + (of(task) ? own : 0), 0);
  const counts = {
    ticked: ticksOf(facts, session).filter((tick) => tick.of.some((ref) => of(ref.task))).length,
    minutes: seconds === 0 ? 0 : Math.max(1, Math.round(seconds / 60)),
    read: valuesOf(facts, session).filter((one) => of(one.at.task)).length,
    photographed: photosOf(facts, session).filter((one) => of(one.at?.task ?? null)).length,
    found: facts.all(finds).filter((one) => one.session === session && of(one.at?.task ?? null)).length,
  };
  const said = Object.entries(counts).flatMap(([what, n]) => (n === 0 ? [] : [say({ key: `work-in-hand-${what}`, values: { n } })]));
  return said.length === 0 ? ok(null) : refuse(tasks === null ? 'work-in-hand' : 'work-in-hand-on-task', { what: said.join(', ') }, ['sure']);
}
