import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LARGEST_MINOR } from '../units/money.ts';
import { bookingReplySchema } from './ask-booking.ts';
import { bookingSchema, cameBackLineSchema, type Booking } from './booking.ts';
import { askedBooking, bookingEntries } from './find-booking.ts';

const shape = cameBackLineSchema.shape;
const whole = bookingSchema.shape.cameBack.unwrap().shape;
const newLineSchema = z.strictObject({
  wanted: shape.wanted.default(null),
  unwanted: shape.unwanted.default(null),
  as: shape.as,
  /** Needed for what was not asked; else the line's own words stand. */
  text: shape.text.optional(),
  note: shape.note.default(''),
  chargedMinor: shape.chargedMinor.default(null),
});
type NewLine = z.output<typeof newLineSchema>;

/**
 * Says what came back from the garage against what was asked: line by line, done or not, and what was done beside. Writes no work record,
 * and leaves the session as it stands. Said again, it is stated anew.
 */
export const cameBack = change({
  request: z.strictObject({
    session: idSchema,
    doneOn: dateSchema,
    lines: z.array(newLineSchema).max(120).default([]),
    chargedMinor: whole.chargedMinor.default(null),
    paper: whole.paper.default(null),
    note: whole.note.default(''),
  }),
  reply: bookingReplySchema,
  decide: (facts, { session, lines: said, ...rest }, { today }) => {
    const found = askedBooking(facts, session);
    if (!found.ok) return found;
    const { booking, before } = found.value;
    if (rest.doneOn > today) return refuse('came-back-ahead', { day: rest.doneOn }, ['doneOn']);
    if (booking.askedOn !== null && rest.doneOn < booking.askedOn) return refuse('came-back-before-asked', { day: rest.doneOn, asked: booking.askedOn }, ['doneOn']);
    const sound = checkSaid(booking, said);
    if (!sound.ok) return sound;
    const lines = said.map((line) => ({ ...line, text: line.text ?? textOf(booking, line) ?? '' }));
    const after: Booking = { ...booking, cameBack: { ...rest, lines } };
    return ok({ entries: bookingEntries(before, after), reply: { booking: after } });
  },
});

/** What the request calls a line. */
function textOf(booking: Booking, { wanted, unwanted }: Pick<NewLine, 'wanted' | 'unwanted'>): string | undefined {
  return booking.wanted.find((one) => one.id === wanted)?.text ?? booking.unwanted.find((one) => one.id === unwanted)?.text;
}

function checkSaid(booking: Booking, said: readonly NewLine[]): Result<unknown> {
  for (const [at, line] of said.entries()) {
    const path = ['lines', at, 'as'];
    if (!isSayable(line)) return refuse('came-back-not-so', {}, path);
    if (line.as !== 'done-unasked' && textOf(booking, line) === undefined) return refuse('came-back-unknown-line', {}, path);
    if (line.as === 'done-unasked' && line.text === undefined) return refuse('text-empty', { field: 'text' }, ['lines', at, 'text']);
    const key = line.wanted ?? line.unwanted;
    if (key !== null && said.findIndex((one) => (one.wanted ?? one.unwanted) === key) !== at) return refuse('came-back-twice', { text: textOf(booking, line) ?? '' }, path);
  }
  const sum = said.reduce((all, one) => all + (one.chargedMinor ?? 0), 0);
  return sum < 0 || sum > LARGEST_MINOR ? refuse('not-an-amount', { field: 'chargedMinor' }, ['chargedMinor']) : ok(null);
}

/** A line wanted was done or not; a line not wanted was done all the same; what nobody named was done unasked. What was not done has no price. */
function isSayable({ as, wanted, unwanted, chargedMinor }: NewLine): boolean {
  if (as === 'done') return wanted !== null && unwanted === null;
  if (as === 'not-done') return wanted !== null && unwanted === null && (chargedMinor ?? 0) === 0;
  return wanted === null && (as === 'not-wanted-done') === (unwanted !== null);
}
