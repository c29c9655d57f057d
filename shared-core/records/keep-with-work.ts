import type { LocalDate } from '../calendar/local-date.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { keepSessions } from '../sessions/keep-sessions.ts';
import { sayTask } from '../sessions/say-task.ts';
import { boardEntries, takeOut } from '../sessions/session-board.ts';
import { pinnedBefore, type Session } from '../sessions/session.ts';
import { taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { bookings } from '../work/booking.ts';
import { recordedSince } from './recorded-since.ts';
import { workInHand } from './work-in-hand.ts';

/**
 * Keeps sessions as `keepSessions` does; a task that still stands in a session whose day has passed leaves it, for it has another day
 * now. What was done or begun there stays, and so does a session that a garage was asked for and that would hold nothing more.
 */
export const keepWithWork = change({
  request: keepSessions.request,
  reply: keepSessions.reply,
  decide: (facts, request, moment) => {
    const kept = keepSessions.decide(facts, request, moment);
    if (!kept.ok) return kept;
    const { entries, reply } = kept.value;
    const wanted = new Set(request.sessions.flatMap((one) => one.tasks.map(taskKey)));
    const left = pinnedBefore(facts, moment.today).flatMap((passed) => leave(facts, passed, wanted, moment.now));
    const notes = left.map(({ day, tasks }) => say({ key: 'session-passed-left', values: { day, tasks: tasks.map((task) => sayTask(facts, task)).join('; ') } }));
    return ok({ entries: [...entries, ...left.flatMap((one) => one.entries)], reply: { ...reply, notes: [...reply.notes, ...notes] } });
  },
});

interface Left {
  readonly day: LocalDate;
  readonly tasks: readonly TaskRef[];
  readonly entries: readonly NewEntry[];
}

/** The tasks that leave a session whose day has passed, and the entries by which they do; none where none does. */
function leave(facts: Facts, passed: Session, wanted: ReadonlySet<string>, now: string): readonly Left[] {
  const hasWork = (of: (key: string | null) => boolean, car: boolean) => workInHand(facts, passed.id, { task: of, car: () => car }, now) !== null;
  const tasks = passed.tasks.filter((task) => wanted.has(taskKey(task)) && recordedSince(facts, task, passed) === null && !hasWork((key) => key === taskKey(task), false));
  const holds = tasks.length === passed.tasks.length && (hasWork(() => true, true) || facts.get(bookings, passed.id) !== null);
  if (tasks.length === 0 || holds) return [];
  const before = new Map([[passed.id, passed]]);
  return [{ day: passed.day, tasks, entries: boardEntries(before, takeOut(before, tasks, () => true)) }];
}
