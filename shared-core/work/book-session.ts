import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { isPinned, sessionSchema, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { bookings, bookingSchema, type Booking } from './booking.ts';
import { afterRounds, doneByGarage, MOST_ROUNDS, roundsOver, undoneLines } from './booking-rounds.ts';
import { isOver } from './booking-state.ts';
import { bookingEntries, garageSession, type GarageSession } from './find-booking.ts';
import { moveWorkAlong } from './move-with-work.ts';
import { numberedLines } from './numbered-lines.ts';
import { wantedOfTasks } from './wanted-of-tasks.ts';

const booked = bookingSchema.shape.booked.unwrap().shape;
const request = z.strictObject({
  session: idSchema,
  /** The day on which it was booked; absent: today. */
  on: dateSchema.optional(),
  day: dateSchema,
  time: booked.time.default(null),
  reference: booked.reference.default(''),
  quote: booked.quote.default(null),
  /** Where the garage gives another day than the session has, moves the session there. */
  moveSession: z.boolean().default(false),
});
type Wanted = z.output<typeof request>;
type Booked = NonNullable<Booking['booked']>;

/**
 * Books a kept session at its garage. On another day than the session's it is refused, unless the session is to move there too: it then
 * moves by the rules of every move, in the same change. What was never asked in writing is taken as asked for all its tasks that day.
 */
export const bookSession = change({
  request,
  reply: z.object({ booking: bookingSchema, session: sessionSchema, notes: z.array(z.string()) }),
  decide: (facts, wanted, moment) => {
    const found = garageSession(facts, wanted.session);
    if (!found.ok) return found;
    const on = wanted.on ?? moment.today;
    const sound = checkBooked(found.value, on, moment);
    if (!sound.ok) return sound;
    const standing = standingOrWhole(facts, found.value, { on, day: wanted.day });
    if (!standing.ok) return standing;
    if (wanted.quote !== null && !standing.value.quotes.some((one) => one.id === wanted.quote)) return refuse('unknown-quote', {}, ['quote']);
    const moved = movedThere(facts, found.value.session, wanted, moment);
    if (!moved.ok) return moved;
    const { session, entries, notes } = moved.value;
    const there = session.id === wanted.session ? null : facts.get(bookings, session.id);
    if (there !== null && !isOver(there)) return refuse('booking-two-there', { day: wanted.day }, ['day']);
    const booking: Booking = {
      ...standing.value, ...afterRounds([...roundsOver(there), ...(standing.value.earlier ?? [])].slice(-MOST_ROUNDS)), id: session.id, booked: { on, day: wanted.day, time: wanted.time, reference: wanted.reference, quote: wanted.quote },
    };
    return ok({ entries: [...entries, ...bookingEntries(found.value.booking, booking)], reply: { booking, session, notes } });
  },
});

function checkBooked({ session, place, booking }: GarageSession, on: LocalDate, { today }: Moment): Result<unknown> {
  if (place.kind !== 'garage') return refuse('booking-not-garage', { place: place.name }, ['session']);
  if (session.state === 'proposed') return refuse('booking-not-kept', { day: session.day }, ['session']);
  if (session.state === 'cancelled') return refuse('session-ended', { day: session.day }, ['session']);
  const here = booking?.place === session.place;
  if (here && booking.dropped !== null) return refuse('booking-dropped', {}, ['session']);
  if (booking !== null && !here && !isOver(booking)) return refuse('booking-not-asked', { place: place.name }, ['session']);
  if (on > today) return refuse('booked-ahead', { day: on }, ['on']);
  if (here && booking.askedOn !== null && on < booking.askedOn) return refuse('booked-before-asked', { day: on, asked: booking.askedOn }, ['on']);
  return ok(null);
}

/**
 * What was asked so far; asked now, where it was not; where nothing was written, the session's tasks as they are called. A day after the one
 * on which the work was done is another appointment: it is for what was not done, and what came back stays with the first.
 */
function standingOrWhole(facts: Facts, { session, place, booking }: GarageSession, { on, day }: Pick<Booked, 'on' | 'day'>): Result<Booking> {
  const here = booking?.place === session.place ? booking : null;
  if (here !== null && (here.cameBack === null || day <= here.cameBack.doneOn)) return ok({ ...here, askedOn: here.askedOn ?? on });
  const rounds = roundsOver(booking);
  if (rounds.length > MOST_ROUNDS) return refuse('booking-rounds-too-many', {}, ['session']);
  const fresh = { askedOn: on, quotes: [], booked: null, cameBack: null, dropped: null, ...afterRounds(rounds) };
  const rest = here === null ? null : undoneLines(here);
  const done = doneByGarage(booking);
  const wanted = rest ?? numberedLines(wantedOfTasks(facts, session).filter(({ task }) => task === null || !done.has(taskKey(task))).map((line) => ({ ...line, id: undefined })), [], 'wanted');
  const last = rounds.flatMap((one) => one.cameBack?.doneOn ?? []).at(-1);
  if (wanted.length === 0 && last !== undefined) return refuse('booking-all-done', { day: last }, ['session']);
  if (here === null) return ok({ id: session.id, place: place.id, wanted, unwanted: [], bring: [], digitalRecord: false, note: '', contact: '', ...fresh });
  const ofRest = ({ car }: { readonly car: string }) => wanted.some((one) => one.car === car);
  return ok({ ...here, ...fresh, wanted, unwanted: here.unwanted.filter(ofRest), bring: here.bring.filter(ofRest) });
}

interface MovedThere {
  readonly session: Session;
  readonly entries: readonly NewEntry[];
  readonly notes: string[];
}

function movedThere(facts: Facts, session: Session, { day, moveSession: move }: Wanted, moment: Moment): Result<MovedThere> {
  if (day === session.day) return ok({ session, entries: [], notes: [] });
  if (!move || !isPinned(session)) return refuse('booking-other-day', { day, session: session.day }, ['day']);
  const moved = moveWorkAlong(facts, { session: session.id, day }, moment);
  return moved.ok ? ok({ session: moved.value.reply.session, entries: moved.value.entries, notes: moved.value.reply.notes }) : moved;
}
