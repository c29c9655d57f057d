import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { findFollowUp, standingSession } from './end-follow-up.ts';
import { followUpSchema, followUpSet, type FollowUp } from './follow-up.ts';

const shape = followUpSchema.shape;
/** More often than this nothing is put off, but forgotten. */
const MOST = 50;

const request = z.strictObject({
  followUp: idSchema,
  /** The day to which it is put off; or a distance from today on; or whichever comes first. */
  dueOn: shape.dueOn.default(null),
  after: shape.after.default(null),
  note: longText(300).default(''),
});

/** Puts a follow-up off: from now on it is due on another day, or after a distance from today. When it was to be looked at before stays with it. */
export const putOffFollowUp = change({
  request,
  reply: z.object({ followUp: followUpSchema }),
  decide: (facts, { followUp: id, dueOn, after, note }, { today }) => {
    const found = findFollowUp(facts, id);
    if (!found.ok) return found;
    const now = found.value;
    const sound = checkPutOff(now, { dueOn, after }, today);
    if (!sound.ok) return sound;
    const before = { on: today, dueOn: now.dueOn, after: now.after, countedFrom: now.countedFrom ?? now.madeOn, note };
    const followUp: FollowUp = { ...now, session: standingSession(facts, now), dueOn, after, countedFrom: today, putOff: [...(now.putOff ?? []), before] };
    return ok({ entries: [newEntry(followUpSet, followUp)], reply: { followUp } });
  },
});

function checkPutOff(now: FollowUp, { dueOn, after }: Pick<FollowUp, 'dueOn' | 'after'>, today: LocalDate): Result<null> {
  if (now.doneOn !== null) return refuse('follow-up-done', { text: now.text, on: now.doneOn }, ['followUp']);
  if (dueOn === null && after === null) return refuse('follow-up-put-off-to-nothing', {}, ['dueOn']);
  if (dueOn !== null && dueOn <= today) return refuse('follow-up-put-off-back', { on: dueOn }, ['dueOn']);
  if (dueOn !== null && now.dueOn !== null && (after === null ? dueOn <= now.dueOn : dueOn < now.dueOn)) return refuse('follow-up-not-later', { on: dueOn, now: now.dueOn }, ['dueOn']);
  if (after?.value === 0) return refuse('follow-up-no-distance', {}, ['after', 'value']);
  return (now.putOff ?? []).length >= MOST ? refuse('follow-up-put-off-often', { n: MOST }, ['followUp']) : ok(null);
}
