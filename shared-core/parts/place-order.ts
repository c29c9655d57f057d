import { z } from 'zod';
import { addDays } from '../calendar/local-date.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { deliveryCharge } from './delivery-charge.ts';
import { offers, type Offer } from './offer.ts';
import { packPaidMinor } from './offer-price.ts';
import { checkLineAmounts, checkOrderSums } from './largest-sums.ts';
import { checkTakers } from './order-mixing.ts';
import { goodsMinor, orderedLineSchema, orders, orderSchema, orderSet, type Order, type OrderedLine } from './order.ts';
import { parts } from './part.ts';
import { allOf } from './set-whole.ts';
import { suppliers, type Supplier } from './supplier.ts';

const line = orderedLineSchema.shape;
const shape = orderSchema.shape;

/** A line by its offer, which then gives what is left out; or by hand, a part with its pack and price. */
export const placedLineRequest = z.strictObject({
  offer: line.offer.default(null),
  part: line.part.optional(),
  number: line.number.optional(),
  packs: line.packs,
  quantity: line.quantity.optional(),
  priceMinor: line.priceMinor.optional(),
  depositMinor: line.depositMinor.optional(),
  for: line.for.default([]),
});

export const placeOrderRequest = z.strictObject({
  id: idSchema.optional(),
  supplier: shape.supplier,
  number: shape.number.default(null),
  placedOn: shape.placedOn.optional(),
  /** Without it: the supplier's lead days from the day it is placed. */
  expectedOn: shape.expectedOn.optional(),
  lines: z.array(placedLineRequest).min(1).max(200),
  /** Without it: as the supplier's terms have it. */
  deliveryMinor: shape.deliveryMinor.optional(),
  discountMinor: shape.discountMinor.default(0),
  returnBy: shape.returnBy.default(null),
  note: shape.note.default(''),
  /** The keeper was asked and is sure: below the supplier's minimum, or of two parts that may not bear each other. */
  sure: z.boolean().default(false),
});
export type PlaceOrderRequest = z.infer<typeof placeOrderRequest>;

/** Places an order with one supplier, as proposed or by hand. Until it has come, what is on the way counts as supply with its date. */
export const placeOrder = change({
  request: placeOrderRequest,
  reply: z.object({ order: orderSchema }),
  decide: (facts, request, moment) => {
    const supplier = facts.get(suppliers, request.supplier);
    if (supplier === null) return refuse('unknown-supplier', { id: request.supplier }, ['supplier']);
    const lines = composeLines(facts, supplier, request);
    if (!lines.ok) return lines;
    const placedOn = request.placedOn ?? moment.today;
    const goods = lines.value.reduce((sum, one) => sum + goodsMinor(one), 0);
    const { sure, ...rest } = request;
    const order: Order = {
      ...rest,
      id: request.id ?? moment.newId(),
      placedOn,
      expectedOn: request.expectedOn ?? addDays(placedOn, supplier.leadDays),
      lines: [...lines.value],
      deliveryMinor: request.deliveryMinor ?? deliveryCharge(supplier, goods),
      cancelledOn: null,
    };
    const sound = allOf(() => (facts.get(orders, order.id) === null ? ok(null) : refuse('id-taken', { id: order.id }, ['id'])), () => checkOrder(order, moment), () => checkLineAmounts(facts, order), () => checkMinimum(supplier, goods, sure), () => checkTakers(facts, order.lines, sure));
    return sound.ok ? ok({ entries: [newEntry(orderSet, order)], reply: { order } }) : sound;
  },
});

function composeLines(facts: Facts, supplier: Supplier, request: PlaceOrderRequest): Result<readonly OrderedLine[]> {
  const lines: OrderedLine[] = [];
  for (const [at, asked] of request.lines.entries()) {
    const offer = asked.offer === null ? null : facts.get(offers, asked.offer);
    if (asked.offer !== null && offer === null) return refuse('unknown-offer', { id: asked.offer }, ['lines', at, 'offer']);
    if (offer !== null && offer.supplier !== supplier.id) return refuse('offer-of-another-supplier', { offer: offer.id, supplier: supplier.name }, ['lines', at, 'offer']);
    const fits = offer === null ? ok(null) : checkOffered(facts, asked, offer, at);
    if (!fits.ok) return fits;
    const part = asked.part ?? offer?.part;
    if (part === undefined || facts.get(parts, part) === null) return refuse('unknown-part', { id: part ?? '' }, ['lines', at, 'part']);
    const quantity = asked.quantity ?? offer?.quantity;
    const priceMinor = asked.priceMinor ?? (offer === null ? undefined : packPaidMinor(offer, asked.packs));
    if (quantity === undefined || priceMinor === undefined) return refuse('order-line-bare', { part }, ['lines', at]);
    lines.push({
      id: `line-${at + 1}`, part, offer: offer?.id ?? null, number: asked.number ?? offer?.number ?? facts.get(parts, part)?.number ?? null, packs: asked.packs, quantity, priceMinor,
      depositMinor: asked.depositMinor ?? offer?.depositMinor ?? 0, for: asked.for,
    });
  }
  return ok(lines);
}

/** What is said of a line beside its offer says the same: the part, and how much is in a pack. */
function checkOffered(facts: Facts, asked: PlaceOrderRequest['lines'][number], offer: Offer, at: number): Result<unknown> {
  const named = (id: string) => facts.get(parts, id)?.name ?? id;
  if (asked.part !== undefined && asked.part !== offer.part) return refuse('offer-of-another-part', { part: named(asked.part), offered: named(offer.part) }, ['lines', at, 'part']);
  if (asked.quantity !== undefined && asked.quantity !== offer.quantity) return refuse('offer-of-another-pack', { part: named(offer.part), quantity: offer.quantity }, ['lines', at, 'quantity']);
  return ok(null);
}

/** What must hold of an order: days in their order, sums that can be true, no discount over the goods. */
export function checkOrder(order: Order, { today }: Pick<Moment, 'today'>): Result<unknown> {
  const goods = order.lines.reduce((sum, one) => sum + goodsMinor(one), 0);
  if (order.placedOn > today) return refuse('date-in-future', { date: order.placedOn }, ['placedOn']);
  if (order.expectedOn < order.placedOn) return refuse('expected-before-placed', { expected: order.expectedOn, placed: order.placedOn }, ['expectedOn']);
  if (order.returnBy !== null && order.returnBy < order.placedOn) return refuse('return-before-placed', { date: order.returnBy, placed: order.placedOn }, ['returnBy']);
  const sums = checkOrderSums(order);
  if (!sums.ok) return sums;
  return order.discountMinor > goods ? refuse('discount-over-goods', {}, ['discountMinor']) : ok(null);
}

function checkMinimum(supplier: Supplier, goods: number, sure: boolean): Result<unknown> {
  return goods < supplier.minimumMinor && !sure ? refuse('order-below-minimum', { supplier: supplier.name }, ['lines']) : ok(null);
}
