import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { carUse } from '../fleet/car-usage.ts';
import { cars } from '../fleet/car.ts';
import { distanceOn } from '../fleet/known-distance.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { fromTyped, type DistanceAsTyped } from '../units/distance.ts';
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
    const sound = checkPutOff(facts, now, { dueOn, after }, today);
    if (!sound.ok) return sound;
    const before = { on: today, dueOn: now.dueOn, after: now.after, countedFrom: now.countedFrom ?? now.madeOn, note };
    const followUp: FollowUp = { ...now, session: standingSession(facts, now), dueOn, after, countedFrom: today, putOff: [...(now.putOff ?? []), before] };
    return ok({ entries: [newEntry(followUpSet, followUp)], reply: { followUp } });
  },
});

function checkPutOff(facts: Facts, now: FollowUp, { dueOn, after }: Pick<FollowUp, 'dueOn' | 'after'>, today: LocalDate): Result<null> {
  if (now.doneOn !== null) return refuse('follow-up-done', { text: now.text, on: now.doneOn }, ['followUp']);
  if (dueOn === null && after === null) return refuse('follow-up-put-off-to-nothing', {}, ['dueOn']);
  if (dueOn !== null && dueOn <= today) return refuse('follow-up-put-off-back', { on: dueOn }, ['dueOn']);
  if (dueOn !== null && now.dueOn !== null && (after === null ? dueOn <= now.dueOn : dueOn < now.dueOn)) return refuse('follow-up-not-later', { on: dueOn, now: now.dueOn }, ['dueOn']);
  if (after?.value === 0) return refuse('follow-up-no-distance', {}, ['after', 'value']);
  if (after !== null && now.after !== null) {
    const further = metresFurther(facts, now, { after: now.after, to: after }, today);
    if (further !== null && (dueOn === null ? further <= 0 : further < 0)) return refuse('follow-up-not-further', { ...after, now: now.after.value, nowUnit: now.after.unit, since: now.countedFrom ?? now.madeOn }, ['after', 'value']);
  }
  return (now.putOff ?? []).length >= MOST ? refuse('follow-up-put-off-often', { n: MOST }, ['followUp']) : ok(null);
}

/** How much further the car goes until a distance from today than until the one that stands; null where no reading tells how far it went in between. */
function metresFurther(facts: Facts, { car: id, countedFrom, madeOn }: FollowUp, { after, to }: { readonly after: DistanceAsTyped; readonly to: DistanceAsTyped }, today: LocalDate): number | null {
  const car = must(facts.get(cars, id), 'car of a follow-up');
  const { points, usage } = carUse(facts, car);
  const since = countedFrom ?? madeOn;
  const [begun, here] = [since, today].map((day) => distanceOn({ points, usage, firstRegistered: car.firstRegistered }, day)?.metres ?? null);
  const [stands, asked] = [after, to].map((one) => fromTyped(one));
  if (stands?.ok !== true || asked?.ok !== true) return null;
  const gone = since === today ? 0 : begun == null || here == null ? null : here - begun;
  return gone === null ? null : gone + asked.value - stands.value;
}
