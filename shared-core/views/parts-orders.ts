import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { asideLeft, claimable, depositsOpen, goodsToReturn, orderStandsAt } from '../parts/order-owed.ts';
import { refundedMinor } from '../parts/order-return.ts';
import { shareLine, sharesByCar } from '../parts/order-shares.ts';
import { standingOrders, type StandingLine, type StandingOrder } from '../parts/order-standing.ts';
import { successorsOf, superseded } from '../parts/part-number.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';
import { unitOfPart } from './order-lines.ts';
import { orderSheet } from './order-sheets.ts';
import type { PlacedOrderView } from './parts-view-schema.ts';

/** Every placed order, the latest first: what came, what is open, on whom it falls, and its sheet. */
export function placedOrderViews(facts: Facts, today: LocalDate, currency: string): PlacedOrderView[] {
  return standingOrders(facts).map((standing) => placedOrderView(facts, standing, today, currency));
}

function placedOrderView(facts: Facts, standing: StandingOrder, today: LocalDate, currency: string): PlacedOrderView {
  const { order, state, deliveries, returns } = standing;
  const { landed, ...sums } = orderStandsAt(standing);
  const supplierName = facts.get(suppliers, order.supplier)?.name ?? order.supplier;
  const lines = standing.lines.map((one) => lineView(facts, one, landed.get(one.line.id) ?? 0));
  const shares = sharesByCar(standing.lines.flatMap(({ line, notComing, cancelled }) => (landed.has(line.id) ? shareLine(facts, { ...line, packs: line.packs - notComing - cancelled }, landed.get(line.id) ?? 0) : [])));
  const open = state === 'on-the-way' || state === 'part-delivered';
  return {
    order, supplierName, state,
    overdueDays: open && order.expectedOn < today ? daysBetween(order.expectedOn, today) : null,
    lines,
    deliveries: [...deliveries],
    returns: [...returns],
    ...sums,
    depositsOpenMinor: lines.reduce((sum, one) => sum + one.depositsOpen * one.line.depositMinor, 0),
    refundOpenMinor: returns.reduce((sum, one) => sum + Math.max(0, one.refundExpectedMinor - refundedMinor(one)), 0),
    returnDaysLeft: order.returnBy === null || order.returnBy < today ? null : daysBetween(today, order.returnBy),
    shares: shares.map(({ car, minor }) => ({ car, carName: car === null ? null : (facts.get(cars, car)?.name ?? car), minor })),
    sheet: orderSheet({ supplier: order.supplier, supplierName, deliveryMinor: order.deliveryMinor, discountMinor: order.discountMinor, lines: sheetLines(facts, standing) }, currency, order.placedOn),
  };
}

function lineView(facts: Facts, standing: StandingLine, landedMinor: number): PlacedOrderView['lines'][number] {
  const { depositsReturned: _depositsReturned, asideReturned: _asideReturned, ...line } = standing;
  return {
    ...line, landedMinor, partName: facts.get(parts, line.line.part)?.name ?? line.line.part, unit: unitOfPart(facts, line.line.part),
    depositsOpen: depositsOpen(standing), asideLeft: asideLeft(standing), goodsToReturn: goodsToReturn(standing), claimable: claimable(standing),
  };
}

function sheetLines(facts: Facts, { order }: StandingOrder): Parameters<typeof orderSheet>[0]['lines'] {
  const replaced = facts.all(superseded);
  return order.lines.map((line) => ({
    ...line,
    numberNow: line.number === null ? null : (successorsOf(replaced, line.number).at(-1) ?? null),
    partName: facts.get(parts, line.part)?.name ?? line.part,
    unit: unitOfPart(facts, line.part),
    for: line.for.map((taker) => ({ carName: facts.get(cars, taker.car)?.name ?? taker.car })),
  }));
}
