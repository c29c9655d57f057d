import { z } from 'zod';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sessions } from '../sessions/session.ts';
import { followUps, followUpSchema, followUpSet, type FollowUp } from './follow-up.ts';

const shape = followUpSchema.shape;

/** Notes something to be looked at again: so many days later or by a date, after a distance, or whichever comes first. */
export const addFollowUp = change({
  request: z.strictObject({
    id: idSchema.optional(),
    car: z.string().min(1).max(80),
    item: shape.item.default(null),
    session: shape.session.default(null),
    text: shape.text,
    /** Today, where it is left out. */
    madeOn: shape.madeOn.optional(),
    /** Days from the day it is made; or the day itself as `dueOn`. */
    days: z.int().min(0).max(3660).nullable().default(null),
    dueOn: shape.dueOn.default(null),
    after: shape.after.default(null),
    note: longText(500).default(''),
  }),
  reply: z.object({ followUp: followUpSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const { days, ...rest } = request;
    const madeOn = request.madeOn ?? moment.today;
    if (days !== null && request.dueOn !== null) return refuse('follow-up-two-days', {}, ['days']);
    const followUp: FollowUp = { ...rest, id: request.id ?? moment.newId(), car: car.value.id, madeOn, dueOn: days === null ? request.dueOn : addDays(madeOn, days), doneOn: null };
    const sound = checkFollowUp(facts, car.value, followUp, moment.today);
    return sound.ok ? ok({ entries: [newEntry(followUpSet, followUp)], reply: { followUp } }) : sound;
  },
});

/** What must hold of a follow-up that is added. */
export function checkFollowUp(facts: Facts, car: Car, one: FollowUp, today: LocalDate): Result<null> {
  if (facts.get(followUps, one.id) !== null) return refuse('id-taken', { id: one.id }, ['id']);
  if (one.madeOn > today) return refuse('date-in-future', { date: one.madeOn }, ['madeOn']);
  if (car.firstRegistered !== null && one.madeOn < car.firstRegistered) return refuse('before-registration', { date: one.madeOn, registered: car.firstRegistered }, ['madeOn']);
  if (one.dueOn === null && one.after === null) return refuse('follow-up-without-when', {}, ['days']);
  if (one.dueOn !== null && one.dueOn < one.madeOn) return refuse('follow-up-before-work', { on: one.dueOn, made: one.madeOn }, ['dueOn']);
  if (one.after !== null && one.after.value === 0) return refuse('follow-up-no-distance', {}, ['after', 'value']);
  if (one.item !== null && facts.get(serviceItems, one.item)?.car !== car.id) return refuse('unknown-item', { item: one.item }, ['item']);
  if (one.session !== null && facts.get(sessions, one.session) === null) return refuse('unknown-session', { session: one.session }, ['session']);
  return ok(null);
}
