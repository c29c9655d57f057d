import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LARGEST_MINOR } from '../units/money.ts';
import { bookingReplySchema } from './ask-booking.ts';
import { quoteLineSchema, quoteSchema, type Booking, type Quote } from './booking.ts';
import { askedBooking, bookingEntries } from './find-booking.ts';
import { numberedLines } from './numbered-lines.ts';

const shape = quoteSchema.shape;
const line = quoteLineSchema.shape;
const newQuoteSchema = z.strictObject({
  id: idSchema.optional(),
  by: shape.by.default(null),
  on: shape.on,
  validUntil: shape.validUntil.default(null),
  lines: z.array(quoteLineSchema.extend({ covers: line.covers.default([]), amountMinor: line.amountMinor.default(null) })).max(60).default([]),
  totalMinor: shape.totalMinor.default(null),
  paper: shape.paper.default(null),
  note: shape.note.default(''),
});

/** Writes down a price that was named for what was asked; with the id of one that stands, states it anew. */
export const quoteBooking = change({
  request: z.strictObject({ session: idSchema, quote: newQuoteSchema }),
  reply: bookingReplySchema.extend({ quote: quoteSchema }),
  decide: (facts, request, { today }) => {
    const found = askedBooking(facts, request.session);
    if (!found.ok) return found;
    const { booking } = found.value;
    const [quote] = numberedLines([request.quote], booking.quotes, 'quote').map((one): Quote => one);
    if (quote === undefined) return refuse('unknown-quote', {}, ['quote']);
    const sound = checkQuote(booking, quote, today);
    if (!sound.ok) return sound;
    const stands = booking.quotes.some((one) => one.id === quote.id);
    if (!stands && booking.quotes.length >= 20) return refuse('quotes-too-many', {}, ['quote']);
    const quotes = stands ? booking.quotes.map((one) => (one.id === quote.id ? quote : one)) : [...booking.quotes, quote];
    const after = { ...booking, quotes };
    return ok({ entries: bookingEntries(found.value.before, after), reply: { booking: after, quote } });
  },
});

/** Takes a quote away; not the one by which it was booked. */
export const removeQuote = change({
  request: z.strictObject({ session: idSchema, quote: idSchema }),
  reply: bookingReplySchema,
  decide: (facts, request) => {
    const found = askedBooking(facts, request.session);
    if (!found.ok) return found;
    const { booking } = found.value;
    if (!booking.quotes.some((one) => one.id === request.quote)) return refuse('unknown-quote', {}, ['quote']);
    if (booking.booked?.quote === request.quote) return refuse('quote-booked', {}, ['quote']);
    const after: Booking = { ...booking, quotes: booking.quotes.filter((one) => one.id !== request.quote) };
    return ok({ entries: bookingEntries(found.value.before, after), reply: { booking: after } });
  },
});

function checkQuote(booking: Booking, quote: Quote, today: LocalDate): Result<unknown> {
  if (quote.on > today) return refuse('quote-ahead', { day: quote.on }, ['quote', 'on']);
  if (booking.askedOn !== null && quote.on < booking.askedOn) return refuse('quote-before-asked', { day: quote.on, asked: booking.askedOn }, ['quote', 'on']);
  if (quote.validUntil !== null && quote.validUntil < quote.on) return refuse('quote-ends-before', { day: quote.validUntil }, ['quote', 'validUntil']);
  for (const [at, { covers }] of quote.lines.entries()) {
    if (covers.some((id) => !booking.wanted.some((one) => one.id === id))) return refuse('quote-covers-nothing', {}, ['quote', 'lines', at, 'covers']);
    if (new Set(covers).size < covers.length) return refuse('quote-covers-twice', {}, ['quote', 'lines', at, 'covers']);
  }
  const amounts = quote.lines.flatMap((one) => one.amountMinor ?? []);
  if (amounts.length === 0 && quote.totalMinor === null) return refuse('quote-without-amount', {}, ['quote', 'totalMinor']);
  const sum = amounts.reduce((all, one) => all + one, 0);
  return sum < 0 || sum > LARGEST_MINOR ? refuse('not-an-amount', { field: 'lines' }, ['quote', 'totalMinor']) : ok(null);
}
