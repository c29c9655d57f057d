import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { QuoteView } from '../../../shared-core/views/quotes-view.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';

type HeldQuote = QuoteView['quote'];

/** A price and the things that it is for, by their ids. */
export interface PriceDraft {
  readonly text: string;
  readonly covers: readonly string[];
  readonly amount: string;
}

/** A quote as it is typed. */
export interface QuoteDraft {
  readonly car: string;
  readonly by: string;
  readonly on: string;
  readonly validUntil: string;
  /** Items of the car that are in it; the id of a thing is the item's. */
  readonly items: readonly string[];
  /** Things in words alone, a line each. */
  readonly others: string;
  /** One price for all, or a price for each line. */
  readonly way: 'whole' | 'lines';
  readonly total: string;
  readonly prices: readonly PriceDraft[];
  readonly note: string;
}

/** What stands, as it is typed; a new one for a car. */
export function quoteDraft(now: HeldQuote | null, car: string, today: string, currency: string): QuoteDraft {
  const amount = (minor: number | null) => (minor === null ? '' : amountText(minor, currency));
  if (now === null) return { car, by: '', on: today, validUntil: '', items: [], others: '', way: 'whole', total: '', prices: [], note: '' };
  const nameOf = new Map(now.things.map((one) => [one.id, thingId(one)]));
  return {
    car: now.car, by: now.by, on: now.on, validUntil: now.validUntil ?? '',
    items: now.things.flatMap((one) => one.item ?? []), others: now.things.filter((one) => one.item === null).map((one) => one.text).join('\n'),
    way: now.lines.length === 0 ? 'whole' : 'lines', total: amount(now.totalMinor),
    prices: now.lines.map((line) => ({ text: line.text, covers: line.covers.map((id) => nameOf.get(id) ?? id), amount: amount(line.amountMinor) })), note: now.note,
  };
}

/** A thing by its item, else by its words. */
function thingId({ item, text }: { readonly item: string | null; readonly text: string }): string {
  return item ?? `words:${text}`;
}

/** The things of a draft, each with the id under which prices name it. */
export function thingsOf(draft: Pick<QuoteDraft, 'items' | 'others'>, nameOf: (item: string) => string): readonly { readonly id: string; readonly item: string | null; readonly text: string }[] {
  const others = draft.others.split('\n').map((line) => line.trim()).filter((line) => line !== '');
  return [...draft.items.map((item) => ({ id: item, item, text: nameOf(item) })), ...others.map((text) => ({ id: thingId({ item: null, text }), item: null, text }))];
}

/** The request of a draft; `now` keeps what the form does not show. */
export function quoteRequest(draft: QuoteDraft, now: HeldQuote | null, nameOf: (item: string) => string, currency: string): Result<RequestOf<'quote.set'>> {
  const read = new FieldsRead();
  const things = thingsOf(draft, nameOf).map((one, at) => ({ ...one, place: `thing-${at + 1}` }));
  const placeOf = new Map(things.map((one) => [one.id, one.place]));
  const lines = draft.way === 'whole' ? [] : draft.prices.map((one, at) => ({
    text: one.text.trim() === '' ? one.covers.map((id) => things.find((thing) => thing.id === id)?.text ?? '').join(', ') : one.text, covers: one.covers.flatMap((id) => placeOf.get(id) ?? []),
    amountMinor: read.moneyOrNull(`lines.${at}.amountMinor`, one.amount, currency),
  }));
  return read.whole({
    ...(now === null ? {} : { id: now.id }),
    car: draft.car, by: draft.by, on: read.date('on', draft.on) ?? ('' as never), validUntil: read.dateOrNull('validUntil', draft.validUntil),
    things: things.map(({ place, item, text }) => ({ id: place, item, text })), lines, totalMinor: read.moneyOrNull('totalMinor', draft.total, currency),
    records: now?.car === draft.car ? [...now.records] : [], paper: now?.paper ?? null, note: draft.note,
  });
}
