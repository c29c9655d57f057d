import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sessions } from '../sessions/session.ts';
import { followUpRemoved, followUps, followUpSchema, followUpSet, type FollowUp } from './follow-up.ts';

/** Ticks a follow-up: it was looked at, on a day. A note goes below the one that stands. */
export const doFollowUp = change({
  request: z.strictObject({ followUp: idSchema, on: dateSchema.optional(), note: longText(400).default('') }),
  reply: z.object({ followUp: followUpSchema }),
  decide: (facts, request, moment) => {
    const found = findFollowUp(facts, request.followUp);
    if (!found.ok) return found;
    const now = found.value;
    const on = request.on ?? moment.today;
    if (now.doneOn !== null) return refuse('follow-up-done', { text: now.text, on: now.doneOn }, ['followUp']);
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (on < now.madeOn) return refuse('follow-up-before-work', { on, made: now.madeOn }, ['on']);
    const followUp: FollowUp = { ...now, session: standingSession(facts, now), doneOn: on, note: [now.note, request.note].filter((text) => text !== '').join('\n') };
    return ok({ entries: [newEntry(followUpSet, followUp)], reply: { followUp } });
  },
});

/** Takes a follow-up away that was entered by mistake, or is not wanted any more. */
export const dropFollowUp = change({
  request: z.strictObject({ followUp: idSchema }),
  reply: z.object({ followUp: followUpSchema }),
  decide: (facts, request) => {
    const found = findFollowUp(facts, request.followUp);
    if (!found.ok) return found;
    return ok({ entries: [newEntry(followUpRemoved, { id: found.value.id, car: found.value.car })], reply: { followUp: found.value } });
  },
});

/** A follow-up that stands. */
export function findFollowUp(facts: Facts, id: string): Result<FollowUp> {
  const found = facts.get(followUps, id);
  return found === null ? refuse('unknown-follow-up', { followUp: id }, ['followUp']) : ok(found);
}

/** A session may have been laid anew since: then nothing is referred to any more. */
export function standingSession(facts: Facts, { session }: FollowUp): string | null {
  return session !== null && facts.get(sessions, session) === null ? null : session;
}
