import type { z } from 'zod';
import { cars } from '../fleet/car.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, type Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { moveSession } from '../sessions/move-session.ts';
import { sessions } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { carryWork } from './carry-work.ts';
import { begunWork, photoTaken } from './doing.ts';
import { joinBookings } from './join-bookings.ts';
import { MOST_PAPERS, photosOf } from './take-photo.ts';

/**
 * Moves a session, or some of its tasks, as `moveSession` does; what was ticked, read, timed, photographed and found on them goes along into
 * the session that they join, in the same change. So does what was asked of a garage for a session that goes whole.
 */
export const moveWithWork = change({
  request: moveSession.request,
  reply: moveSession.reply,
  decide: (facts, request, moment) => {
    const moved = moveWorkAlong(facts, request, moment);
    if (!moved.ok) return moved;
    const { entries, reply } = moved.value;
    const before = must(facts.get(sessions, request.session), 'a session that moved');
    const isWhole = (request.tasks ?? before.tasks).length === before.tasks.length;
    if (reply.session.id === before.id || !isWhole) return moved;
    const booking = joinBookings(facts, before, reply.session);
    return ok({ entries: [...entries, ...booking.entries], reply: { ...reply, notes: [...reply.notes, ...booking.notes.map(say)] } });
  },
});

/** A move with the work on what moves, for one that sees to the booking itself. */
export function moveWorkAlong(facts: Facts, request: z.output<typeof moveSession.request>, moment: Moment): ReturnType<typeof moveSession.decide> {
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
  const notes = [{ key: begun ? 'work-carried' : 'work-carried-to-begin', values: {} }, ...tooManyPhotos(facts, reply.session.id, carried)].map(say);
  return ok({ entries: [...entries, ...carried], reply: { ...reply, notes: [...reply.notes, ...notes] } });
}

/** Cars that come to more photographs than one record holds: better said now than when all is done. */
function tooManyPhotos(facts: Facts, to: string, carried: readonly NewEntry[]): readonly Message[] {
  const come = carried.flatMap(({ kind, values }) => (kind === photoTaken.kind && values['session'] === to && typeof values['car'] === 'string' ? [values['car']] : []));
  const all = [...photosOf(facts, to).map((one) => one.car), ...come];
  return [...new Set(come)].flatMap((car) => {
    const n = all.filter((one) => one === car).length;
    return n <= MOST_PAPERS ? [] : [{ key: 'work-carried-photos', values: { car: facts.get(cars, car)?.name ?? car, n, most: MOST_PAPERS } }];
  });
}
