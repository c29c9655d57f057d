import { z } from 'zod';
import { addDays } from '../calendar/local-date.ts';
import { renewalSchema } from '../care/renewal.ts';
import { measurementSchema } from '../care/measurement.ts';
import { recordReadingReply } from '../fleet/recorded-reading.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { overlayFacts } from '../journal/overlay-facts.ts';
import { wasteSchema } from '../parts/waste.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LONGEST_NOTE, sessionSchema, sessionSet, type Session } from '../sessions/session.ts';
import { taskKey, taskRefSchema } from '../sessions/task-ref.ts';
import { keptSession } from '../work/begin-work.ts';
import { begunWork } from '../work/doing.ts';
import { followUpSchema } from '../work/follow-up.ts';
import { endedSpans } from '../work/take-time.ts';
import { dayOfValue, valuesOf } from '../work/read-at-step.ts';
import { ticksOf } from '../work/tick-step.ts';
import { closeCar, type ClosedCar } from './close-car.ts';
import { amissIn, untoldIn } from './close-checks.ts';
import { closeSessionRequest, type CloseSessionRequest } from './close-request.ts';
import { keepWaste } from './keep-waste.ts';
import { observationSchema } from './observation.ts';
import { recordedSince } from './recorded-since.ts';
import { workRecorded, workRecordSchema } from './work-record.ts';

/** Who plans after the work was done does so soon after: what is further back is asked about. Our own rule. */
const DAYS_BEFORE_PLANNED = 31;

/**
 * Closes a session: one record for each car worked on, with its reading, what was measured, the lots that were used and the photographs; what
 * was met is renewed, follow-ups and leavings are written down, and what was not done is free for another day. All of it or nothing.
 */
export const closeSession = change({
  request: closeSessionRequest,
  reply: z.object({
    session: sessionSchema,
    records: z.array(z.object({ record: workRecordSchema, reading: recordReadingReply.nullable() })),
    measurements: z.array(measurementSchema),
    observations: z.array(observationSchema),
    renewals: z.array(renewalSchema),
    followUps: z.array(followUpSchema),
    wastes: z.array(wasteSchema),
    /** Tasks that were neither done nor recorded elsewhere: a plan takes them up again. */
    left: z.array(taskRefSchema),
  }),
  decide: (facts, request, moment) => {
    const found = keptSession(facts, request.session);
    if (!found.ok) return found;
    const session = found.value;
    const date = request.date ?? dayOfLastWork(facts, session) ?? moment.today;
    if (date > moment.today) return refuse('date-in-future', { date }, ['date']);
    const early = request.sure ? null : tooEarly(facts, session, date);
    if (early !== null) return refuse('closed-before-work', { date, from: early }, ['sure']);
    const amiss = amissIn(facts, session, request);
    if (amiss !== null) return { ok: false, refusal: amiss };
    const closed = closeCars(facts, session, { ...request, date }, moment);
    if (!closed.ok) return closed;
    const wastes = request.wastes.map((one) => keepWaste.decide(facts, { ...one, since: date, note: '' }, moment));
    const badWaste = wastes.find((one) => !one.ok);
    if (badWaste?.ok === false) return badWaste;
    const wasted = wastes.flatMap((one) => (one.ok ? [one.value] : []));
    const told = closed.value;
    const recorded = new Set(session.tasks.filter((task) => recordedSince(facts, task, session) !== null).map(taskKey));
    if (recorded.size === 0 && told.every((one) => one.record === null && one.renewals.length === 0 && one.measurements.length === 0)) return refuse('nothing-done', {}, ['cars']);
    const untold = untoldIn(facts, session, request);
    if (untold !== null) return { ok: false, refusal: untold };
    const note = [session.note, ...told.map((one) => one.note)].filter((one) => one !== '').join('\n');
    const wordy = told.findIndex((one) => one.note !== '');
    if (note.length > LONGEST_NOTE && wordy >= 0) return refuse('closing-note-too-long', { most: LONGEST_NOTE, over: note.length - LONGEST_NOTE }, ['cars', wordy, 'note']);
    const done = new Set(told.flatMap((one) => one.done));
    const ended: Session = { ...session, state: 'done', day: date, note, movedFrom: date === session.day ? session.movedFrom : { day: session.day, place: session.place } };
    const entries: readonly NewEntry[] = [...told.flatMap((one) => one.entries), ...wasted.flatMap((one) => one.entries), ...endedSpans(facts, session.id, moment), newEntry(sessionSet, ended)];
    return ok({
      entries,
      reply: {
        session: ended,
        records: told.flatMap(({ record, reading }) => (record === null ? [] : [{ record, reading }])),
        measurements: told.flatMap((one) => [...one.measurements]),
        observations: told.flatMap((one) => [...one.observations]),
        renewals: told.flatMap((one) => [...one.renewals]),
        followUps: told.flatMap((one) => [...one.followUps]),
        wastes: wasted.map((one) => one.reply.waste),
        left: session.tasks.filter((task) => !done.has(taskKey(task)) && !recorded.has(taskKey(task))),
      },
    });
  },
});

/** The day before which the work can hardly have been done, where a day is before it: that on which it was begun here, or a month before it was planned. */
function tooEarly(facts: Facts, session: Session, date: Session['day']): Session['day'] | null {
  const begun = facts.get(begunWork, session.id)?.on ?? null;
  // Work that came from another session was begun there.
  const from = begun === null ? addDays(session.madeOn, -DAYS_BEFORE_PLANNED) : daysOfWork(facts, session).reduce((first, on) => (on < first ? on : first), begun);
  return date < from ? from : null;
}

/** Car by car, each seeing what the ones before took off the shelf. */
function closeCars(facts: Facts, session: Session, request: CloseSessionRequest & { readonly date: Session['day'] }, moment: Moment): Result<readonly ClosedCar[]> {
  const sofar = overlayFacts(facts);
  const closed: ClosedCar[] = [];
  for (const [at, car] of request.cars.entries()) {
    const one = closeCar(sofar, { session, car, date: request.date, sure: request.sure }, moment);
    if (!one.ok) return { ok: false, refusal: { ...one.refusal, path: ['cars', at, ...(one.refusal.path ?? [])] } };
    if (one.value.record !== null) sofar.lay(workRecorded.apply(one.value.record));
    closed.push(one.value);
  }
  return ok(closed);
}

/** The day of the last tick or of what was read last; null where there is neither. */
export function dayOfLastWork(facts: Facts, session: Session): Session['day'] | null {
  return daysOfWork(facts, session).reduce<Session['day'] | null>((last, on) => (last === null || on > last ? on : last), null);
}

function daysOfWork(facts: Facts, session: Session): readonly Session['day'][] {
  return [...ticksOf(facts, session.id).map((tick) => tick.on), ...valuesOf(facts, session.id).map(dayOfValue)];
}
