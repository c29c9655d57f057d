import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { checkBoard, checkPin } from './check-board.ts';
import { ensurePlace } from './ensure-place.ts';
import { sessionOverMinutes } from './over-minutes.ts';
import { boardEntries, putIn, standingBoard, takeOut, type SessionBoard } from './session-board.ts';
import { isPinned, sessions, sessionSchema, type Session } from './session.ts';
import { taskKey, taskRefSchema } from './task-ref.ts';

const wantedSchema = z.strictObject({ id: idSchema.optional(), day: dateSchema, place: idSchema, tasks: z.array(taskRefSchema).min(1).max(100), note: sessionSchema.shape.note.default('') });
type Wanted = z.infer<typeof wantedSchema>;
const request = z.strictObject({ sessions: z.array(wantedSchema).max(400) });
/** `notes`: what the keeper may not have meant, though it is kept. */
const reply = z.object({ sessions: z.array(sessionSchema), notes: z.array(z.string()) });

/**
 * Keeps sessions: from now on a plan leaves them where they are. A day and place that already has one takes the tasks in; tasks leave
 * the sessions that were only proposed for them.
 */
export const keepSessions = change({
  request,
  reply,
  decide: (facts, { sessions }, moment) => {
    const before = standingBoard(facts, moment.today);
    const free = takeOut(before, sessions.flatMap((one) => one.tasks), (session) => session.state === 'proposed');
    return arranged(facts, { before, free, wanted: sessions, state: 'kept' }, moment);
  },
});

/** Lays proposed sessions on the yard in place of all that were proposed before; what is kept stays, and its tasks are not proposed again. */
export const proposeSessions = change({
  request,
  reply,
  decide: (facts, { sessions }, moment) => {
    const before = standingBoard(facts, moment.today);
    const free = new Map([...before].filter(([, session]) => isPinned(session)));
    const pinned = new Set([...free.values()].flatMap((session) => session.tasks.map(taskKey)));
    const wanted = sessions.map((one) => ({ ...one, tasks: one.tasks.filter((task) => !pinned.has(taskKey(task))) })).filter((one) => one.tasks.length > 0);
    return arranged(facts, { before, free, wanted, state: 'proposed' }, moment);
  },
});

interface Arranging {
  readonly before: SessionBoard;
  readonly free: SessionBoard;
  readonly wanted: readonly Wanted[];
  readonly state: 'kept' | 'proposed';
}

function arranged(facts: Facts, { before, free, wanted, state }: Arranging, moment: Moment): Result<{ readonly entries: readonly NewEntry[]; readonly reply: z.infer<typeof reply> }> {
  const places = checkWanted(facts, wanted, moment);
  if (!places.ok) return places;
  const laid = wanted.reduce<{ readonly board: SessionBoard; readonly ids: readonly string[] }>(({ board, ids }, { id, day, place, tasks, note }) => {
    const fresh: Session = { id: id ?? moment.newId(), day, place, tasks: [...tasks], state, movedFrom: null, madeOn: moment.today, madeAt: moment.now, note };
    const put = putIn(board, fresh);
    return { board: put.board, ids: [...ids, put.session.id] };
  }, { board: free, ids: [] });
  const sound = checkBoard(facts, laid.board, before);
  if (!sound.ok) return sound;
  const made = [...new Set(laid.ids)].flatMap((id) => laid.board.get(id) ?? []);
  return ok({ entries: [...places.value, ...boardEntries(before, laid.board)], reply: { sessions: made, notes: state === 'kept' ? made.flatMap((one) => sessionOverMinutes(facts, one)).map(say) : [] } });
}

/** Each by itself, and no task twice among them; the entries state the places that were only assumed. */
function checkWanted(facts: Facts, wanted: readonly Wanted[], { today }: Moment): Result<readonly NewEntry[]> {
  const entries = new Map<string, readonly NewEntry[]>();
  for (const one of wanted) {
    const place = ensurePlace(facts, one.place);
    if (!place.ok) return place;
    const sound = checkPin(facts, { ...one, place: place.value.place }, today);
    if (!sound.ok) return sound;
    entries.set(one.place, place.value.entries);
  }
  const taken = wanted.find(({ id }, at) => id !== undefined && (facts.get(sessions, id) !== null || wanted.findIndex((one) => one.id === id) !== at));
  if (taken !== undefined) return refuse('id-taken', { id: taken.id ?? '' }, ['sessions']);
  const keys = wanted.flatMap((one) => one.tasks.map(taskKey));
  if (new Set(keys).size < keys.length) return refuse('task-twice', {}, ['sessions']);
  return ok([...entries.values()].flat());
}
