import { z } from 'zod';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { begunSession, keptSession } from './begin-work.ts';
import { spans, spanSchema, timeTaken, type Span } from './doing.ts';
import { instantSchema, isBefore, secondsBetween } from './instant.ts';
import { countedSpans, lastSign, laterOf, vouchedUntil } from './signs-of-work.ts';

/**
 * Runs the time of a task, or pauses it: one runs at a time, and starting one ends the other, in another session too. `upTo`: until when the
 * running one counts, where it was left running; unless given, now, or the last sign of work where it ran on for longer than anybody works without one. A clock that was set back ends nothing before it began.
 */
export const takeTime = change({
  request: z.strictObject({ session: idSchema, task: spanSchema.shape.task, run: z.boolean(), upTo: instantSchema.nullable().default(null) }),
  reply: z.object({ running: spanSchema.nullable(), /** What ran in other sessions and is paused by it. */ paused: z.array(spanSchema) }),
  decide: (facts, { session: id, task, run, upTo }, { now, newId }) => {
    // Pausing is always allowed: cautions that came since are read before work goes on.
    const session = run ? begunSession(facts, id, task === null ? [] : [{ task, step: 'whole' }]) : keptSession(facts, id);
    if (!session.ok) return session;
    const running = spansOf(facts, id).filter((span) => span.to === null);
    const latest = laterOf(now, lastSign(facts, id));
    if (upTo !== null && (isBefore(latest, upTo) || running.some((span) => isBefore(upTo, span.from)))) return refuse('time-ends-outside', {}, ['upTo']);
    const paused = run ? facts.all(spans).filter((span) => span.to === null && span.session !== id).flatMap((span) => vouchedSpans(facts, span, now, newId)) : [];
    const elsewhere = paused.map((span) => newEntry(timeTaken, span));
    const going = running.find((span) => run && span.task === task && upTo === null);
    if (going !== undefined) return ok({ entries: elsewhere, reply: { running: going, paused } });
    const ended = [...elsewhere, ...running.flatMap((span) => (upTo === null ? countedSpans(facts, span, now, newId) : [{ ...span, to: laterOf(span.from, upTo) }])).map((span) => newEntry(timeTaken, span))];
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
export function endedSpans(facts: Facts, session: string, { now, newId }: Moment): readonly NewEntry[] {
  return spansOf(facts, session).filter((span) => span.to === null).flatMap((span) => vouchedSpans(facts, span, now, newId)).map((span) => newEntry(timeTaken, span));
}

/** What runs, ended from outside: now, or at the last sign of work where nobody gave one for long. */
export function vouchedSpans(facts: Facts, span: Span, now: string, newId: () => string): readonly Span[] {
  return countedSpans(facts, span, vouchedUntil(facts, span.session, now), newId);
}

/** Seconds of each task (null: shared ones) while somebody was there: what runs counts to when it was last vouched for. */
export function vouchedSeconds(facts: Facts, session: string, now: string): ReadonlyMap<string | null, number> {
  return secondsUntil(facts, session, vouchedUntil(facts, session, now));
}

/** Seconds of each task (null: shared ones) by an instant, what runs included as it counts. */
export function secondsUntil(facts: Facts, session: string, end: string): ReadonlyMap<string | null, number> {
  return secondsByTask(spansOf(facts, session).flatMap((span) => (span.to === null ? countedSpans(facts, span, end, () => span.id) : [span])), end);
}

function secondsByTask(all: readonly Span[], now: string): ReadonlyMap<string | null, number> {
  const seconds = new Map<string | null, number>();
  for (const span of all) seconds.set(span.task, (seconds.get(span.task) ?? 0) + secondsBetween(span.from, span.to ?? now));
  return seconds;
}
