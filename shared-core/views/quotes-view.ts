import { z } from 'zod';
import { addMonths } from '../calendar/add-months.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { carsHere } from '../fleet/departure.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { heldQuotes, heldQuoteSchema, type HeldQuote } from '../ledger/held-quote.ts';
import { householdAccount } from '../ledger/household-account.ts';
import { ledgerSettings } from '../ledger/ledger-settings.ts';
import { likeForLike, type LikeForLike } from '../ledger/like-for-like.ts';
import type { Cost } from '../ledger/posting.ts';
import { doneWork, wholeCost, type CostParts, type DoneWork } from '../ledger/work-costs.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';
import { ok, type Message } from '../result/result.ts';
import { money } from '../sessions/plan-why.ts';
import { expectedWork } from './expected-work.ts';
import { carName } from './money-names.ts';
import { said, saidSchema } from './plan-said.ts';

const costSchema = z.object({ partsMinor: z.int(), consumablesMinor: z.int(), toolsMinor: z.int(), otherMinor: z.int(), timeMinor: z.int(), totalMinor: z.int() });

const groupSchema = z.object({
  /** What the prices cover, and what of it was done, in words. */
  quoted: z.array(z.string()), done: z.array(z.string()),
  quotedMinor: z.int().nullable(), cost: costSchema.nullable(), savedMinor: z.int().nullable(),
  /** Why there is no sum, or what the sum is. */
  said: saidSchema,
});

/** A quote with what it comes to against the work done in its place; `expected`: nothing was done yet, and the cost is what it is likely to be. */
export const quoteViewSchema = z.object({
  quote: heldQuoteSchema, carName: z.string(), over: z.boolean(), expected: z.boolean(),
  groups: z.array(groupSchema),
  unquoted: z.array(z.object({ things: z.array(z.string()), cost: costSchema.nullable() })),
  savedMinor: z.int().nullable(),
  said: saidSchema,
  /** Records of the car that did some of it since a year before the quote: those that are held against it, and those that could be. */
  records: z.array(z.object({ record: z.string(), date: dateSchema, title: z.string(), things: z.int(), held: z.boolean() })),
});
export type QuoteView = z.infer<typeof quoteViewSchema>;

/** The prices that were named for work, each held like for like against what was done at home in its place. */
export const showQuotes = ask({
  request: z.strictObject({}),
  reply: z.object({
    today: dateSchema, currency: z.string(), ownHourMinor: z.int(), quotes: z.array(quoteViewSchema),
    /** The cars that are here, with what can be asked for on each. */
    cars: z.array(z.object({ car: z.string(), name: z.string(), items: z.array(z.object({ item: z.string(), name: z.string() })) })),
  }),
  answer: (standing, _request, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const { currency } = household.value;
    const { ownHourMinor } = ledgerSettings(facts);
    const { costs } = householdAccount(facts, today);
    const quotes = [...facts.all(heldQuotes)].sort((a, b) => (a.on === b.on ? (a.id < b.id ? -1 : 1) : a.on < b.on ? 1 : -1));
    const here = carsHere(facts).map((car) => ({ car: car.id, name: car.name, items: facts.ofCar(serviceItems, car.id).map((item) => ({ item: item.id, name: item.name })) }));
    return ok({ today, currency, ownHourMinor, cars: here, quotes: quotes.map((quote) => quoteView(facts, quote, costs, { ownHourMinor, currency, today })) });
  },
});

interface Terms {
  readonly ownHourMinor: number;
  readonly currency: string;
  readonly today: LocalDate;
}

function quoteView(facts: Facts, quote: HeldQuote, costs: readonly Cost[], { ownHourMinor, currency, today }: Terms): QuoteView {
  const held = [...new Set(quote.records)].flatMap((id) => facts.get(workRecords, id) ?? []);
  const expected = held.length === 0;
  const work = expected ? expectedWork(facts, quote, ownHourMinor, today) : doneWork(facts, held, quote.things, costs, ownHourMinor);
  const like = likeForLike(quote, work);
  const name = namesOf(quote, work);
  return {
    quote, carName: carName(facts, quote.car), over: quote.validUntil !== null && quote.validUntil < today, expected,
    groups: like.groups.map((one) => ({ quoted: one.quoted.map(name), done: one.done.map(name), quotedMinor: one.quotedMinor, cost: asTold(one.cost), savedMinor: one.savedMinor, said: said(groupSaid(one, name, expected, currency)) })),
    unquoted: like.unquoted.map((one) => ({ things: one.things.map(name), cost: asTold(one.cost) })),
    savedMinor: like.savedMinor,
    said: said(wholeSaid(like, expected, currency)),
    records: facts.ofCar(workRecords, quote.car).flatMap((record) => offered(record, quote)).sort((a, b) => (a.date < b.date ? 1 : -1)),
  };
}

function asTold(cost: CostParts | null): z.infer<typeof costSchema> | null {
  return cost === null ? null : { ...cost, totalMinor: wholeCost(cost) };
}

function namesOf(quote: HeldQuote, work: DoneWork): (id: string) => string {
  const names = new Map([...work.done.map((one) => [one.id, one.text] as const), ...quote.things.map((one) => [one.id, one.text] as const)]);
  return (id) => names.get(id) ?? id;
}

function groupSaid(one: LikeForLike['groups'][number], name: (id: string) => string, expected: boolean, currency: string): Message {
  if (one.savedMinor !== null) return sumSaid('group', one.savedMinor, expected, currency);
  const missing = one.why === 'not-done' ? one.quoted.filter((id) => !one.done.includes(id)) : one.done.filter((id) => !one.quoted.includes(id));
  return { key: `quote-group-${one.why ?? 'no-cost'}${one.why === 'not-done' && expected ? '-expected' : ''}`, values: { things: missing.map(name).join(', ') } };
}

function wholeSaid({ savedMinor, groups }: LikeForLike, expected: boolean, currency: string): Message {
  if (savedMinor === null) return { key: groups.every((one) => one.why === 'no-cost') ? 'quote-no-cost' : 'quote-no-sum', values: {} };
  const whole = sumSaid('whole', savedMinor, expected, currency);
  return groups.every((one) => one.savedMinor !== null) ? whole : { key: `${whole.key}-part`, values: whole.values };
}

function sumSaid(of: 'group' | 'whole', minor: number, expected: boolean, currency: string): Message {
  const way = minor > 0 ? 'saves' : minor < 0 ? 'costs' : 'same';
  return { key: `quote-${of}-${way}${expected ? '-expected' : ''}`, values: { sum: money(Math.abs(minor), currency) } };
}

/** Work from a year before the price was named. */
function offered(record: WorkRecord, quote: HeldQuote): QuoteView['records'] {
  const items = new Set(quote.things.flatMap((one) => one.item ?? []));
  const things = new Set(record.lines.flatMap((line) => (line.item !== null && line.outcome !== 'not-done' && items.has(line.item) ? [line.item] : []))).size;
  const held = quote.records.includes(record.id);
  return held || (things > 0 && record.date >= addMonths(quote.on, -12)) ? [{ record: record.id, date: record.date, title: record.title, things, held }] : [];
}
