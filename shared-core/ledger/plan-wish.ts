import { z } from 'zod';
import { ONCE } from '../care/limit.ts';
import { serviceItemRemoved, serviceItems, serviceItemSchema, serviceItemSet, type ServiceItem } from '../care/service-item.ts';
import { newEntry, put, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { overlayFacts } from '../journal/overlay-facts.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { checkBoard, checkPin } from '../sessions/check-board.ts';
import { openSession } from '../sessions/move-session.ts';
import { sessionOverMinutes } from '../sessions/over-minutes.ts';
import { standingPlaces } from '../sessions/place.ts';
import { sayTask } from '../sessions/say-task.ts';
import { boardEntries, putIn, standingBoard, takeOut } from '../sessions/session-board.ts';
import { isPinned, sessionSchema, type Session } from '../sessions/session.ts';
import { taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { unplanned } from './unplan-wish.ts';
import { wishSchema, wishSet, type Wish } from './wish.ts';
import { findOpenWish } from './wish-state.ts';

/**
 * Plans a wish: from now on it is a task of its car, done once and due at no time. With a session that is kept it is put into that; one
 * that is planned already, and in no kept session, as well.
 */
export const planWish = change({
  request: z.strictObject({ wish: idSchema, session: idSchema.nullable().default(null) }),
  reply: z.object({ wish: wishSchema, item: serviceItemSchema, session: sessionSchema.nullable(), /** What the keeper may not have meant. */ notes: z.array(z.string()) }),
  decide: (facts, request, moment) => {
    const found = findOpenWish(facts, request.wish);
    if (!found.ok) return found;
    const before = found.value;
    if (before.item !== null && request.session === null) return refuse('wish-planned-already', { wish: before.name }, ['wish']);
    const item = before.item === null ? newItem(before, moment.newId()) : must(facts.get(serviceItems, before.item), 'item of a wish');
    const wish: Wish = { ...before, item: item.id };
    const made = before.item === null ? [newEntry(serviceItemSet, item), newEntry(wishSet, wish)] : [];
    if (request.session === null) return ok({ entries: made, reply: { wish, item, session: null, notes: [] } });
    const there = overlayFacts(facts);
    there.lay([put(serviceItems, item, item.car)]);
    const joined = joinSession(there, wish, { kind: 'item', id: item.id }, request.session, moment);
    if (!joined.ok) return joined;
    const { session, entries } = joined.value;
    return ok({ entries: [...made, ...entries], reply: { wish, item, session, notes: sessionOverMinutes(there, session).map(say) } });
  },
});

/** Takes a wish out of the plan again: out of its sessions, and its task off the car. Refused where something hangs on the task by now. */
export const unplanWish = change({
  request: z.strictObject({ wish: idSchema }),
  reply: z.object({ wish: wishSchema }),
  decide: (facts, request, moment) => {
    const found = findOpenWish(facts, request.wish);
    if (!found.ok) return found;
    if (found.value.item === null) return refuse('wish-not-planned', { wish: found.value.name }, ['wish']);
    const item = must(facts.get(serviceItems, found.value.item), 'item of a wish');
    const entries = unplanned(facts, item, moment.now);
    if (!entries.ok) return entries;
    const wish: Wish = { ...found.value, item: null };
    // The wish lets go of its item before the item is gone.
    return ok({ entries: [...entries.value, newEntry(wishSet, wish), newEntry(serviceItemRemoved, { id: item.id, car: item.car })], reply: { wish } });
  },
});

/** What of a wish its item says as well. */
export function itemOfWish({ name, needs, minutes, access, place, garagePrice }: Wish): Pick<ServiceItem, 'name' | 'needs' | 'minutes' | 'access' | 'place' | 'garagePrice'> {
  return { name, needs, minutes, access, place, garagePrice };
}

function newItem(wish: Wish, id: string): ServiceItem {
  return {
    id, car: wish.car, ...itemOfWish(wish),
    work: 'replace', harm: 'comfort', interval: ONCE, anchor: { kind: 'completion' }, history: 'never-done', printedDate: null, source: null, confirmed: true, measure: null,
  };
}

function joinSession(facts: Facts, wish: Wish, task: TaskRef, id: string, { today }: Moment): Result<{ readonly session: Session; readonly entries: readonly NewEntry[] }> {
  const open = openSession(facts, id);
  if (!open.ok) return open;
  const session = open.value;
  if (!isPinned(session)) return refuse('wish-session-not-kept', { day: session.day }, ['session']);
  const place = must(standingPlaces(facts).find((one) => one.place.id === session.place)?.place, 'place of a session');
  if (place.kind !== wish.place) return refuse(wish.place === 'home' ? 'wish-at-home' : 'wish-at-garage', { wish: wish.name, place: place.name }, ['session']);
  const pin = checkPin(facts, { day: session.day, place, tasks: [task] }, today);
  if (!pin.ok) return pin;
  const before = standingBoard(facts, today);
  const there = [...before.values()].find((one) => isPinned(one) && one.tasks.some((other) => taskKey(other) === taskKey(task)));
  if (there !== undefined) return refuse('task-in-session', { task: sayTask(facts, task), day: there.day }, ['session']);
  const free = takeOut(before, [task], (one) => one.state === 'proposed');
  // What joins is meant since now.
  const coming: Session = { id: 'joining', day: session.day, place: session.place, tasks: [task], state: 'kept', movedFrom: null, madeOn: today, note: '' };
  const joined = putIn(new Map(free).set(session.id, session), coming);
  const sound = checkBoard(facts, joined.board, before);
  return sound.ok ? ok({ session: joined.session, entries: boardEntries(before, joined.board) }) : sound;
}
