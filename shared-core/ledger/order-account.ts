import { later, type LocalDate } from '../calendar/local-date.ts';
import { refundedMinor } from '../parts/order-return.ts';
import { agreedMinor, asideLeft, depositsOpen, orderStandsAt, owedForPacks } from '../parts/order-owed.ts';
import { landedPacks } from '../parts/order-landed.ts';
import type { StandingOrder } from '../parts/order-standing.ts';
import { sumOf, type Account, type Balance, type Payment } from './posting.ts';

/**
 * What an order did with money beyond the lots that it brought. It counts as paid on the day it was placed, as agreed, but for packs that
 * never come: they count where their money was claimed, for then it had been paid. What is on the way, deposits that come back, and
 * what is asked back still stand for something; what else is left, as the delivery of what went back, was not given back.
 *
 * @param lotsMinor what the lots of it were paid at, less what went back of them
 */
export function orderAccount(standing: StandingOrder, lotsMinor: number): Account {
  const { order, lines, returns } = standing;
  const source = { kind: 'order', id: order.id } as const;
  const payments: readonly Payment[] = [
    { on: order.placedOn, minor: agreedMinor(order) - orderStandsAt(standing).owedBackMinor, source },
    ...returns.flatMap((one) => one.refunds.map(({ on, minor }): Payment => ({ on, minor: -minor, source }))),
  ].filter(({ minor }) => minor !== 0);
  const onTheWay = lines.reduce((sum, one) => sum + sumLast(landedPacks(order, one.line), one.open) + one.open * one.line.depositMinor, 0);
  const deposits = lines.reduce((sum, one) => sum + depositsOpen(one) * one.line.depositMinor, 0);
  const asked = returns.reduce((sum, one) => sum + Math.max(0, one.refundExpectedMinor - refundedMinor(one)), 0);
  const aside = lines.reduce((sum, one) => sum + owedForPacks(order, one, { good: 0, aside: asideLeft(one), claimed: 0, deposits: 0 }), 0);
  const balances = ([['on-the-way', onTheWay], ['deposits', deposits], ['to-come-back', asked + aside]] as const).flatMap(([kind, minor]): Balance[] => (minor === 0 ? [] : [{ kind, minor, source, of: null }]));
  const rest = sumOf(payments) - lotsMinor - sumOf(balances);
  return { payments, balances, costs: rest === 0 ? [] : [{ on: lastDay(standing), minor: rest, kind: 'parts', side: { kind: 'gone', why: 'not-given-back' }, source, of: null }] };
}

function lastDay({ order, deliveries, returns }: StandingOrder): LocalDate {
  const days = [...deliveries.map((one) => one.on), ...returns.flatMap((one) => [one.on, ...one.refunds.map(({ on }) => on)]), ...(order.cancelledOn === null ? [] : [order.cancelledOn])];
  return days.reduce(later, order.placedOn);
}

function sumLast(packs: readonly number[], count: number): number {
  return count === 0 ? 0 : packs.slice(-count).reduce((sum, minor) => sum + minor, 0);
}
