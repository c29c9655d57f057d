import { z } from 'zod';
import { checkMeasuredValue, checkMeasureName } from '../care/check-measure.ts';
import { localDate, type LocalDate } from '../calendar/local-date.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { findTask, taskOfKey } from '../sessions/task-ref.ts';
import { torqueFromTyped } from '../units/torque.ts';
import { begunSession } from './begin-work.ts';
import { stepKey, stepValueRead, stepValueRemoved, stepValues, stepValueSchema, type StepRef, type StepValue } from './doing.ts';
import { isBefore } from './instant.ts';
import { isKnownStep } from './known-steps.ts';

const shape = stepValueSchema.shape;

/** Writes down what was read at a step: a measurement, or the torque a joint was given. Read again, the new value takes the place of the old. */
export const readAtStep = change({
  request: z.strictObject({ session: idSchema, at: shape.at, read: shape.read }),
  reply: z.object({ value: stepValueSchema }),
  decide: (facts, { session: id, at, read }, { today, now, newId }) => {
    const session = begunSession(facts, id, [at]);
    if (!session.ok) return session;
    if (!isKnownStep(facts, session.value, at)) return refuse('unknown-step', {}, ['at', 'step']);
    const car = carOfStep(facts, at);
    if (!car.ok) return car;
    const sound = checkRead(facts, car.value, read);
    if (!sound.ok) return sound;
    const standing = valuesOf(facts, id).find((one) => stepKey(one.at) === stepKey(at) && sameRead(one.read, read));
    const value: StepValue = { id: standing?.id ?? newId(), session: id, car: car.value, at, read, written: now, on: today };
    return ok({ entries: [newEntry(stepValueRead, value)], reply: { value } });
  },
});

/** Takes back a value that was read at a step. */
export const unreadAtStep = change({
  request: z.strictObject({ session: idSchema, value: idSchema }),
  reply: z.object({ value: stepValueSchema }),
  decide: (facts, request) => {
    const session = begunSession(facts, request.session);
    if (!session.ok) return session;
    const value = facts.get(stepValues, request.value);
    if (value === null || value.session !== request.session) return refuse('unknown-step-value', {}, ['value']);
    return ok({ entries: [newEntry(stepValueRemoved, { id: value.id, car: null })], reply: { value } });
  },
});

/** What was read in a session, in order of writing. */
export function valuesOf(facts: Facts, session: string): readonly StepValue[] {
  return facts.all(stepValues).filter((one) => one.session === session).sort((a, b) => (isBefore(a.written, b.written) ? -1 : isBefore(b.written, a.written) ? 1 : a.id < b.id ? -1 : 1));
}

/** The day on which a value was read. */
export function dayOfValue({ on, written }: StepValue): LocalDate {
  const day = localDate(written.slice(0, 10));
  return on ?? must(day.ok ? day.value : null, 'the day of an instant');
}

/** The car that a step is done on. */
export function carOfStep(facts: Facts, { task }: StepRef): Result<string> {
  const ref = taskOfKey(task);
  if (ref === null) return refuse('task-not-in-session', {}, ['of']);
  const found = findTask(facts, ref);
  return found.ok ? ok(found.value.car) : found;
}

function checkRead(facts: Facts, car: string, read: StepValue['read']): Result<unknown> {
  if (read.kind === 'torque') return torqueFromTyped(read.typed);
  const named = checkMeasureName(read);
  return named.ok ? checkMeasuredValue(facts, car, read, read.typed) : named;
}

/** Whether two readings are of one thing. */
export function sameRead(a: StepValue['read'], b: StepValue['read']): boolean {
  if (a.kind === 'torque') return b.kind === 'torque' && a.name === b.name;
  return b.kind === 'measured' && a.what === b.what && a.name === b.name && a.place === b.place;
}
