import type { Facts } from '../journal/facts.ts';
import { finds, spans, stepPhotos, stepValues, ticks, type Span } from './doing.ts';
import { isBefore, secondsBetween } from './instant.ts';

/** So long without a sign of work, and time that runs is asked about, and not vouched for where nobody can be asked: ours, no source. */
export const LEFT_ALONE_SECONDS = 600;

/**
 * The longest that anybody works at one thing without a sign of it, four hours: our own rule, no source. A task without steps has no sign but its
 * end, and a night is longer. What ran on without a sign for longer counts to the last sign before, and goes on from the sign after.
 */
export const LONGEST_WITHOUT_SIGN_SECONDS = 4 * 3600;

/** When somebody did something in a session, oldest first: ticked, read, found or photographed something, or ran or paused the time. */
export function signsOfWork(facts: Facts, session: string): readonly string[] {
  const of = <One extends { readonly session: string }>(all: readonly One[]) => all.filter((one) => one.session === session);
  const [found, taken] = [facts.stamps(finds, null), facts.stamps(stepPhotos, null)];
  return [
    ...of(facts.all(ticks)).map((one) => one.at),
    ...of(facts.all(stepValues)).map((one) => one.written),
    ...of(facts.all(finds)).flatMap((one) => found.get(one.id)?.firstAt ?? []),
    ...of(facts.all(stepPhotos)).flatMap((one) => taken.get(one.id)?.firstAt ?? []),
    ...of(facts.all(spans)).map((span) => span.to ?? span.from),
  ].sort((a, b) => (isBefore(a, b) ? -1 : isBefore(b, a) ? 1 : 0));
}

/** When somebody last did something in a session. Null where nothing was done. */
export function lastSign(facts: Facts, session: string): string | null {
  return signsOfWork(facts, session).at(-1) ?? null;
}

/** The later of two instants. */
export function laterOf(one: string, other: string | null): string {
  return other !== null && isBefore(one, other) ? other : one;
}

/** Until when what runs in a session is vouched for: now, or the last sign of work where nobody gave one for long. */
export function vouchedUntil(facts: Facts, session: string, now: string): string {
  const sign = lastSign(facts, session);
  return sign !== null && secondsBetween(sign, now) > LEFT_ALONE_SECONDS ? sign : now;
}

/** A span that runs, as it counts when it is ended at an instant: never before it began, and without what ran on for longer than anybody works without a sign. */
export function countedSpans(facts: Facts, span: Span, end: string, newId: () => string): readonly Span[] {
  const signs = signsOfWork(facts, span.session).filter((one) => isBefore(span.from, one) && isBefore(one, end));
  const counted = [{ from: span.from, to: span.from }];
  for (const at of [...signs, laterOf(span.from, end)]) {
    const last = counted.at(-1);
    if (last === undefined || secondsBetween(last.to, at) > LONGEST_WITHOUT_SIGN_SECONDS) counted.push({ from: at, to: at });
    else last.to = at;
  }
  return counted.filter((one, at) => at === 0 || isBefore(one.from, one.to)).map((one, at) => ({ ...span, id: at === 0 ? span.id : newId(), ...one }));
}
