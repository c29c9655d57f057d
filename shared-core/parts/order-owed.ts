import { largestRemainder } from './largest-remainder.ts';
import { landedPacks, orderPaid } from './order-landed.ts';
import type { Order } from './order.ts';
import type { StandingLine, StandingOrder } from './order-standing.ts';

/** Packs of a line that were ordered and never come: said not to come, or cancelled. */
export function neverComes({ notComing, cancelled }: StandingLine): number {
  return notComing + cancelled;
}

/** Packs that came wrong or damaged, still lie there, and were not settled without being sent back. */
export function asideLeft(one: StandingLine): number {
  return Math.max(0, one.aside - one.asideReturned - asideClaimed(one));
}

/** Packs whose goods can still be sent back: good ones, and those that lie aside. */
export function goodsToReturn(one: StandingLine): number {
  return Math.max(0, one.good - goodReturned(one)) + asideLeft(one);
}

/** Packs whose money can be asked for without sending anything back: they never come, or came wrong and nothing comes in their place. */
export function claimable(one: StandingLine): number {
  return Math.max(0, neverComes(one) - one.claimed) + asidePaidLeft(one);
}

/** Deposits paid for what was kept, and not yet given back. */
export function depositsOpen(one: StandingLine): number {
  return one.line.depositMinor === 0 ? 0 : Math.max(0, one.good - goodReturned(one) - one.depositsReturned);
}

/** Packs of a line that go back or are claimed: good ones, those that lay aside, claims, and deposits by themselves. */
export interface PacksBack {
  readonly good: number;
  readonly aside: number;
  readonly claimed: number;
  readonly deposits: number;
}

/**
 * What is to come back for packs of a line, in minor units: what they were bought for less their share of a discount, and their deposits, each
 * once. Those that others come for were paid for once, so nothing comes back for them.
 */
export function owedForPacks(order: Order, one: StandingLine, back: PacksBack): number {
  const paidAside = Math.min(back.aside, asidePaidLeft(one));
  const priced = back.good + paidAside + back.claimed;
  const before = goodReturned(one) + Math.min(one.asideReturned, asidePaid(one)) + one.claimed;
  const deposits = paidAside + back.claimed + back.deposits + Math.min(back.good, Math.max(0, depositsOpen(one) - back.deposits));
  return sumOfLast(order, one, before, priced) + deposits * one.line.depositMinor;
}

/** What an order comes to by what came of it or is still to come: delivery stays as charged, unless nothing ever comes. */
export interface OrderStandsAt {
  readonly goodsMinor: number;
  readonly paidMinor: number;
  readonly depositsMinor: number;
  /** What of the sum agreed is for packs that never come, deposits included, and was not claimed yet: it comes back if it was paid. */
  readonly owedBackMinor: number;
  /** Goods, delivery and discount of each line, without what never comes. */
  readonly landed: ReadonlyMap<string, number>;
}

/** @example orderStandsAt(standing).paidMinor //=> what was agreed, where everything came */
export function orderStandsAt({ order, lines }: StandingOrder): OrderStandsAt {
  const nothing = lines.every((one) => came(one) === 0);
  const landed = landedOfCame(order, lines.filter((one) => came(one) > 0));
  const missing = lines.map((one) => ({ one, packs: Math.max(0, neverComes(one) - one.claimed) }));
  const goods = missing.reduce((sum, { one, packs }) => sum + sumOfLast(order, one, one.claimed, packs) + packs * one.line.depositMinor, 0);
  const claimedAll = lines.every((one) => one.claimed >= neverComes(one));
  return {
    goodsMinor: lines.reduce((sum, one) => sum + came(one) * one.line.priceMinor, 0),
    paidMinor: [...landed.values()].reduce((sum, minor) => sum + minor, 0),
    depositsMinor: lines.reduce((sum, one) => sum + came(one) * one.line.depositMinor, 0),
    owedBackMinor: goods + (nothing && !claimedAll ? order.deliveryMinor : 0),
    landed,
  };
}

/** All that an order was agreed at, deposits included. */
export function agreedMinor(order: Order): number {
  const { paidMinor, depositsMinor } = orderPaid(order);
  return paidMinor + depositsMinor;
}

/** Each line's goods less their discount, for what came or is still to come, with its share of the whole delivery. */
function landedOfCame(order: Order, lines: readonly StandingLine[]): ReadonlyMap<string, number> {
  if (lines.length === 0) return new Map();
  const delivery = largestRemainder(order.deliveryMinor, lines.map((one) => came(one) * one.line.priceMinor));
  return new Map(lines.map((one, at) => [one.line.id, sumOfLast(order, one, neverComes(one), came(one)) + (delivery[at] ?? 0)]));
}

function came(one: StandingLine): number {
  return one.line.packs - neverComes(one);
}

/** What so many packs of a line were bought for without delivery, counted from its last pack on, after some that were counted before. */
function sumOfLast(order: Order, { line }: StandingLine, before: number, packs: number): number {
  const each = landedPacks({ ...order, deliveryMinor: 0 }, line);
  const end = Math.max(0, each.length - before);
  return each.slice(Math.max(0, end - packs), end).reduce((sum, minor) => sum + minor, 0);
}

function goodReturned({ goodsReturned, asideReturned }: StandingLine): number {
  return goodsReturned - asideReturned;
}

function asideClaimed(one: StandingLine): number {
  return Math.max(0, one.claimed - neverComes(one));
}

function asidePaid({ aside, again }: StandingLine): number {
  return aside - again;
}

function asidePaidLeft(one: StandingLine): number {
  return Math.max(0, asidePaid(one) - Math.min(one.asideReturned, asidePaid(one)) - asideClaimed(one));
}
