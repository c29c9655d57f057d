import { z } from 'zod';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { begunSession, keptSession } from './begin-work.ts';
import { spans, spanSchema, stepValues, ticks, timeTaken, type Span } from './doing.ts';
import { instantSchema, isBefore, secondsBetween } from './instant.ts';

/** So long without a sign of work, and time that runs is not vouched for: ours, no source. */
export const LEFT_ALONE_SECONDS = 600;

/**
 * Runs the time of a task, or pauses it: one runs at a time, and starting one ends the other, in another session too. `upTo`: until when the
 * running one counts, where it was left running; now unless given. A clock that was set back ends nothing before it began.
 */
export const takeTime = change({
  request: z.strictObject({ session: idSchema, task: spanSchema.shape.task, run: z.boolean(), upTo: instantSchema.nullable().default(null) }),
  reply: z.object({ running: spanSchema.nullable(), /** What ran in other sessions and is paused by it. */ paused: z.array(spanSchema) }),
  decide: (facts, { session: id, task, run, upTo }, { now, newId }) => {
    // Pausing is always allowed: cautions that came since are read before work goes on.
    const session = run ? begunSession(facts, id, task === null ? [] : [{ task, step: 'whole' }]) : keptSession(facts, id);
    if (!session.ok) return session;
    const running = spansOf(facts, id).filter((span) => span.to === null);
    const latest = later(now, lastSign(facts, id));
    if (upTo !== null && (isBefore(latest, upTo) || running.some((span) => isBefore(upTo, span.from)))) return refuse('time-ends-outside', {}, ['upTo']);
    const paused = run ? facts.all(spans).filter((span) => span.to === null && span.session !== id).map((span) => ({ ...span, to: vouchedUntil(facts, span, now) })) : [];
    const elsewhere = paused.map((span) => newEntry(timeTaken, span));
    const going = running.find((span) => run && span.task === task && upTo === null);
    if (going !== undefined) return ok({ entries: elsewhere, reply: { running: going, paused } });
    const ended = [...elsewhere, ...running.map((span) => newEntry(timeTaken, { ...span, to: later(span.from, upTo ?? now) }))];
    if (!run) return ok({ entries: ended, reply: { running: null, paused } });
    const begun: Span = { id: newId(), session: id, task, from: now, to: null };
    return ok({ entries: [...ended, newEntry(timeTaken, begun)], reply: { running: begun, paused } });
  },
});

/** The stretches of time of a session, oldest first. */
export function spansOf(facts: Facts, session: string): readonly Span[] {
  return facts.all(spans).filter((span) => span.session === session).sort((a, b) => (isBefore(a.from, b.from) ? -1 : isBefore(b.from, a.from) ? 1 : a.id < b.id ? -1 : 1));
}

/** Entries that end what runs in a session, when it was last vouched for. */
export function endedSpans(facts: Facts, session: string, now: string): readonly NewEntry[] {
  return spansOf(facts, session).flatMap((span) => (span.to === null ? [newEntry(timeTaken, { ...span, to: vouchedUntil(facts, span, now) })] : []));
}

/** Until when a stretch counts that is ended from outside: now, or the last sign of work where nobody gave one for long. */
export function vouchedUntil(facts: Facts, span: Span, now: string): string {
  const sign = lastSign(facts, span.session) ?? span.from;
  const end = secondsBetween(sign, now) > LEFT_ALONE_SECONDS ? sign : now;
  return later(span.from, end);
}

/** Seconds of each task (null: shared ones) while somebody was there: what runs counts to when it was last vouched for. */
export function vouchedSeconds(facts: Facts, session: string, now: string): ReadonlyMap<string | null, number> {
  return secondsByTask(spansOf(facts, session).map((span) => ({ ...span, to: span.to ?? vouchedUntil(facts, span, now) })), now);
}

/** Seconds of each task (null: shared ones) by an instant, what runs included. */
export function secondsByTask(all: readonly Span[], now: string): ReadonlyMap<string | null, number> {
  const seconds = new Map<string | null, number>();
  for (const span of all) seconds.set(span.task, (seconds.get(span.task) ?? 0) + secondsBetween(span.from, span.to ?? now));
  return seconds;
}

/** When somebody last did something in a session: until then the time that runs can be vouched for. Null where nothing was done. */
export function lastSign(facts: Facts, session: string): string | null {
  const signs = [
    ...facts.all(ticks).filter((one) => one.session === session).map((one) => one.at),
    ...facts.all(stepValues).filter((one) => one.session === session).map((one) => one.written),
    ...spansOf(facts, session).map((span) => span.to ?? span.from),
  ];
  return signs.reduce<string | null>((last, one) => later(one, last), null);
}

function later(one: string, other: string | null): string {
  return other !== null && isBefore(one, other) ? other : one;
}
