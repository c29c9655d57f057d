import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import { finds } from '../work/doing.ts';
import { isOfPart, type PartOfWork } from '../work/part-of-work.ts';
import { valuesOf } from '../work/read-at-step.ts';
import { photosOf } from '../work/take-photo.ts';
import { spansOf, vouchedSeconds } from '../work/take-time.ts';
import { ticksOf } from '../work/tick-step.ts';

/** What of a part of a session's work would come into no record, in words: ticked, timed, read, photographed or found. Null where there is none. */
export function workInHand(facts: Facts, session: string, part: PartOfWork, now: string): string | null {
  const seconds = [...vouchedSeconds(facts, session, now)].reduce((sum, [task, own]) => sum + (part.task(task) ? own : 0), 0);
  const running = spansOf(facts, session).some((span) => span.to === null && part.task(span.task));
  const counts = {
    ticked: ticksOf(facts, session).filter((tick) => tick.of.some((ref) => part.task(ref.task))).length,
    minutes: seconds === 0 ? 0 : Math.max(1, Math.round(seconds / 60)),
    // Time that runs and that nobody has vouched for is no minutes yet.
    running: running && seconds === 0 ? 1 : 0,
    read: valuesOf(facts, session).filter((one) => isOfPart(part, one)).length,
    photographed: photosOf(facts, session).filter((one) => isOfPart(part, one)).length,
    found: facts.all(finds).filter((one) => one.session === session && isOfPart(part, one)).length,
  };
  const said = Object.entries(counts).flatMap(([what, n]) => (n === 0 ? [] : [say({ key: `work-in-hand-${what}`, values: { n } })]));
  return said.length === 0 ? null : said.join(', ');
}
