import { z } from 'zod';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { begunSession } from './begin-work.ts';
import { stepKey, stepTicked, tickRemoved, ticks, tickSchema, type StepRef, type Tick } from './doing.ts';
import { isKnownStep } from './known-steps.ts';

const shape = tickSchema.shape;

/** Ticks a step, or leaves it out with a word on why; ticked before, the new tick takes its place. */
export const tickStep = change({
  request: z.strictObject({ session: idSchema, of: shape.of, as: shape.as.default('done'), note: shape.note.default('') }),
  reply: z.object({ tick: tickSchema }),
  decide: (facts, request, { today, now, newId }) => {
    const session = begunSession(facts, request.session, request.of);
    if (!session.ok) return session;
    const unknown = request.of.findIndex((one) => !isKnownStep(facts, session.value, one));
    if (unknown >= 0) return refuse('unknown-step', {}, ['of', unknown, 'step']);
    if (request.as === 'left-out' && request.note.trim() === '') return refuse('left-out-why', {}, ['note']);
    const standing = ticksOn(facts, request.session, request.of);
    const replaced = standing.find((one) => without(one, request.of).length === 0);
    const tick: Tick = { ...request, id: replaced?.id ?? newId(), on: today, at: now };
    return ok({ entries: [...standing.filter((one) => one !== replaced).map((one) => taken(one, request.of)), newEntry(stepTicked, tick)], reply: { tick } });
  },
});

/** Takes the tick off a step. */
export const untickStep = change({
  request: z.strictObject({ session: idSchema, of: shape.of }),
  reply: z.object({ unticked: z.int() }),
  decide: (facts, request) => {
    const session = begunSession(facts, request.session, request.of);
    if (!session.ok) return session;
    const found = ticksOn(facts, request.session, request.of);
    return found.length === 0 ? refuse('step-not-ticked', {}, ['of']) : ok({ entries: found.map((one) => taken(one, request.of)), reply: { unticked: found.length } });
  },
});

/** The ticks of a session. */
export function ticksOf(facts: Facts, session: string): readonly Tick[] {
  return facts.all(ticks).filter((tick) => tick.session === session);
}

function ticksOn(facts: Facts, session: string, of: readonly StepRef[]): readonly Tick[] {
  const named = new Set(of.map(stepKey));
  return ticksOf(facts, session).filter((tick) => tick.of.some((one) => named.has(stepKey(one))));
}

/** What is left of a tick without some of its steps: a step of several tasks may be ticked for all and then differ for one. */
function without({ of }: Tick, steps: readonly StepRef[]): StepRef[] {
  const named = new Set(steps.map(stepKey));
  return of.filter((one) => !named.has(stepKey(one)));
}

function taken(tick: Tick, steps: readonly StepRef[]): NewEntry {
  const of = without(tick, steps);
  return of.length === 0 ? newEntry(tickRemoved, { id: tick.id, car: null }) : newEntry(stepTicked, { ...tick, of });
}
