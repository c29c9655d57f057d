import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { known, newId, removeWhole, setWhole, allOf } from '../parts/set-whole.ts';
import { papers } from '../records/paper.ts';
import { workRecords } from '../records/work-record.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { heldQuoteRemoved, heldQuotes, heldQuoteSchema, heldQuoteSet, type HeldQuote } from './held-quote.ts';

const shape = heldQuoteSchema.shape;

/** Keeps a price that somebody named for work, or states it anew; also which records did that work in its place. */
export const setHeldQuote = setWhole(
  heldQuoteSet,
  z.strictObject({
    ...shape, id: newId, validUntil: shape.validUntil.default(null), lines: shape.lines.default([]), totalMinor: shape.totalMinor.default(null), records: shape.records.default([]),
    paper: shape.paper.default(null), note: shape.note.default(''),
  }),
  heldQuoteSchema,
  checkQuote,
);

/** Takes a kept price away. */
export const removeHeldQuote = removeWhole(heldQuoteRemoved, heldQuotes, 'unknown-held-quote');

function checkQuote(facts: Facts, quote: HeldQuote, { today }: Moment): Result<unknown> {
  const things = new Set(quote.things.map((one) => one.id));
  return allOf(
    () => known(facts, cars, quote.car, 'car'),
    () => (quote.on > today ? refuse('date-in-future', { date: quote.on }, ['on']) : ok(null)),
    () => (quote.validUntil !== null && quote.validUntil < quote.on ? refuse('quote-valid-before', { date: quote.validUntil }, ['validUntil']) : ok(null)),
    () => (things.size < quote.things.length ? refuse('quote-thing-twice', {}, ['things']) : ok(null)),
    () => itemsOf(facts, quote),
    () => (quote.lines.length === 0 && quote.totalMinor === null ? refuse('quote-without-price', {}, ['totalMinor']) : ok(null)),
    () => linesOf(quote, things),
    () => recordsOf(facts, quote),
    () => (quote.paper === null ? ok(null) : facts.get(papers, quote.paper) === null ? refuse('unknown-paper', { paper: quote.paper }, ['paper']) : ok(null)),
  );
}

function itemsOf(facts: Facts, quote: HeldQuote): Result<unknown> {
  const items = quote.things.flatMap((one) => one.item ?? []);
  const strange = items.find((id) => facts.get(serviceItems, id)?.car !== quote.car);
  if (strange !== undefined) return refuse('unknown-item', { item: strange }, ['things']);
  return new Set(items).size < items.length ? refuse('quote-thing-twice', {}, ['things']) : ok(null);
}

function linesOf(quote: HeldQuote, things: ReadonlySet<string>): Result<unknown> {
  const at = quote.lines.findIndex((line) => line.covers.some((id) => !things.has(id)));
  return at < 0 ? ok(null) : refuse('quote-covers-strange', { text: quote.lines[at]?.text ?? '' }, ['lines', at, 'covers']);
}

function recordsOf(facts: Facts, quote: HeldQuote): Result<unknown> {
  const strange = quote.records.find((id) => facts.get(workRecords, id)?.car !== quote.car);
  return strange === undefined ? ok(null) : refuse('unknown-record', { record: strange }, ['records']);
}
