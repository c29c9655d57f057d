import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Message } from '../result/result.ts';
import { amountText } from '../units/money.ts';
import type { Booking, BookingRound, CameBackLine, Quote } from '../work/booking.ts';
import { chargedInAll, chargesDiffer, compareBooking, type ComparedQuote } from '../work/compare-booking.ts';
import type { Outcome } from './booking-view-schema.ts';
import { said } from './plan-said.ts';

type CameBack = NonNullable<Booking['cameBack']>;

/** What came back against what was asked, and what was charged against the quote that it was booked by. */
export function outcomeOf(facts: Facts, booking: BookingRound, byName: (quote: Quote) => string, currency: string): Outcome | null {
  const back = booking.cameBack;
  if (back === null) return null;
  const quote = quoteHeld(booking);
  const compared = quote === null ? null : compareBooking(quote, back);
  const line = (one: CameBackLine) => ({ text: one.text, carName: carName(facts, booking, one), note: one.note, chargedMinor: one.chargedMinor });
  const as = (kind: CameBackLine['as']) => back.lines.filter((one) => one.as === kind).map(line);
  const unsaid = booking.wanted.filter((one) => !back.lines.some((answer) => answer.wanted === one.id));
  const parts = {
    done: as('done'), notDone: as('not-done'), against: as('not-wanted-done'), unasked: as('done-unasked'),
    unsaid: unsaid.map((one) => ({ text: one.text, carName: facts.get(cars, one.car)?.name ?? one.car, note: '', chargedMinor: null })),
  };
  return {
    ...parts,
    chargedMinor: chargedInAll(back),
    quote: quote === null || compared === null ? null : { id: quote.id, byName: byName(quote), sumMinor: compared.quotedMinor },
    groups: quote === null || compared === null ? [] : groupsOf(booking, quote, compared),
    summary: [...saidOfLines(parts), ...saidOfMoney(back, compared, currency)].map(said),
  };
}

/** The quote it was booked by; where it was booked by none, the only one there is. */
function quoteHeld({ booked, quotes }: BookingRound): Quote | null {
  const by = quotes.find((one) => one.id === booked?.quote);
  return by ?? (quotes.length === 1 ? (quotes[0] ?? null) : null);
}

function carName(facts: Facts, booking: BookingRound, one: CameBackLine): string | null {
  const car = [...booking.wanted, ...booking.unwanted].find((line) => line.id === (one.wanted ?? one.unwanted))?.car;
  return car === undefined ? null : (facts.get(cars, car)?.name ?? car);
}

function groupsOf(booking: BookingRound, quote: Quote, compared: ComparedQuote): Outcome['groups'] {
  const textOf = (id: string) => booking.wanted.find((one) => one.id === id)?.text ?? id;
  return compared.groups.map((group) => ({
    lines: group.lines.flatMap((at) => quote.lines[at]?.text ?? []),
    covers: group.covers.map(textOf),
    quotedMinor: group.minor,
    chargedMinor: group.chargedMinor,
    why: group.why === null ? null : said({ key: `outcome-why-${group.why}`, values: {} }),
  }));
}

function saidOfLines({ notDone, unsaid, against, unasked }: Pick<Outcome, 'notDone' | 'unsaid' | 'against' | 'unasked'>): Message[] {
  const counted = (key: string, n: number): Message[] => (n === 0 ? [] : [{ key: n === 1 ? `${key}-one` : key, values: { n } }]);
  const found = [...counted('outcome-not-done', notDone.length), ...counted('outcome-unsaid', unsaid.length), ...counted('outcome-against', against.length), ...counted('outcome-unasked', unasked.length)];
  return found.length === 0 ? [{ key: 'outcome-all', values: {} }] : found;
}

/** A difference is named only where both sums are for the same work; else both are listed. */
function saidOfMoney(back: CameBack, compared: ComparedQuote | null, currency: string): Message[] {
  const charged = chargedInAll(back);
  const amount = (minor: number) => `${amountText(minor, currency)} ${currency}`;
  const differ: Message[] = chargesDiffer(back) ? [{ key: 'outcome-charges-differ', values: {} }] : [];
  if (charged === null) return differ;
  const quoted = compared?.quotedMinor ?? null;
  if (compared === null || quoted === null) return [{ key: 'outcome-charged', values: { charged: amount(charged) } }, ...differ];
  const values = (q: number, c: number) => ({ charged: amount(c), quoted: amount(q), difference: amount(Math.abs(c - q)) });
  const way = (q: number, c: number) => (c === q ? 'as-quoted' : c > q ? 'more' : 'less');
  if (compared.sameWork) return [{ key: `outcome-${way(quoted, charged)}`, values: values(quoted, charged) }];
  const { like } = compared;
  const alike: Message[] = like === null ? [] : [{ key: `outcome-like-${way(like.quotedMinor, like.chargedMinor)}`, values: values(like.quotedMinor, like.chargedMinor) }];
  return [{ key: 'outcome-not-alike', values: values(quoted, charged) }, ...alike, ...differ];
}
