import { z } from 'zod';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { endSession } from '../sessions/move-session.ts';
import { releaseTasks } from '../sessions/release-tasks.ts';
import { endedOfPart, partOfTasks, wholeOf } from '../work/part-of-work.ts';
import { endedSpans } from '../work/take-time.ts';
import { photosOf } from '../work/take-photo.ts';
import { photosToCars } from './photos-to-cars.ts';
import { workInHand } from './work-in-hand.ts';

/** The keeper was told that work in hand would come into no record, and is sure. */
const sure = z.boolean().default(false);

/**
 * Ends a session without a record of it; with work in hand it is refused, unless one is sure, for the record would lack it. What was found
 * stays on its car, photographs among the papers of theirs.
 */
export const endWithWork = change({
  request: endSession.request.extend({ sure }),
  reply: endSession.reply,
  decide: (facts, { sure: isSure, ...request }, moment) => {
    const ended = endSession.decide(facts, request, moment);
    if (!ended.ok) return ended;
    const asked = isSure ? ok(null) : nothingOf(workInHand(facts, request.session, wholeOf(facts, request.session), moment.now), 'work-in-hand');
    if (!asked.ok) return asked;
    const { entries, reply } = ended.value;
    return ok({ entries: [...endedSpans(facts, request.session, moment), ...photosToCars(facts, photosOf(facts, request.session), moment), ...entries], reply });
  },
});

/**
 * Takes tasks out of a session; with work in hand on them it is refused, unless one is sure. Their time ends, and with the last task of a car
 * its photographs go among its papers.
 */
export const releaseWithWork = change({
  request: releaseTasks.request.extend({ sure }),
  reply: releaseTasks.reply,
  decide: (facts, { sure: isSure, ...request }, moment) => {
    const released = releaseTasks.decide(facts, request, moment);
    if (!released.ok) return released;
    const { entries, reply } = released.value;
    const part = partOfTasks(facts, request.tasks, reply.session.tasks);
    const asked = isSure ? ok(null) : nothingOf(workInHand(facts, request.session, part, moment.now), 'work-in-hand-on-task');
    if (!asked.ok) return asked;
    const photos = photosOf(facts, request.session).filter((one) => part.car(one.car));
    return ok({ entries: [...entries, ...endedOfPart(facts, request.session, part, moment), ...photosToCars(facts, photos, moment)], reply });
  },
});

function nothingOf(what: string | null, code: string): Result<null> {
  return what === null ? ok(null) : refuse(code, { what }, ['sure']);
}
