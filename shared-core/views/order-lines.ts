import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { deliveryCharge } from '../parts/delivery-charge.ts';
import { landedCost } from '../parts/landed-cost.ts';
import { offers } from '../parts/offer.ts';
import { packPaidMinor } from '../parts/offer-price.ts';
import type { OrderAnswer } from '../parts/order-answer.ts';
import type { OrderInstance } from '../parts/order-instance.ts';
import { shareLine, sharesByCar } from '../parts/order-shares.ts';
import type { Taker } from '../parts/order.ts';
import { successorsOf, superseded } from '../parts/part-number.ts';
import { parts } from '../parts/part.ts';
import { isStale, partsSettings } from '../parts/parts-settings.ts';
import { specifications } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import { must } from '../result/assert.ts';
import type { HouseholdNeed } from './household-needs.ts';
import type { OrderLineView, OrderView, SupplierOrder } from './order-view-schema.ts';

/** A proposal with what it is made of. */
export interface ProposedOrder {
  readonly facts: Facts;
  readonly today: LocalDate;
  readonly needs: readonly HouseholdNeed[];
  readonly instance: OrderInstance;
  readonly answer: OrderAnswer;
}

/** The unit in which a part is counted: that of what it meets; null where it meets nothing. */
export function unitOfPart(facts: Facts, part: string): string | null {
  return facts.get(parts, part)?.meets.map((id) => facts.get(specifications, id)?.unit ?? null)[0] ?? null;
}

/** What is bought, by supplier, each line with whom it is for. */
export function supplierOrders(proposed: ProposedOrder): SupplierOrder[] {
  const { facts, today } = proposed;
  return facts.all(suppliers).flatMap((supplier): SupplierOrder[] => {
    const bare = proposed.answer.lines.flatMap((line) => lineOf(proposed, line, supplier.id) ?? []);
    if (bare.length === 0) return [];
    const goodsMinor = bare.reduce((sum, line) => sum + line.totalMinor, 0);
    const deliveryMinor = deliveryCharge(supplier, goodsMinor);
    const landed = landedCost(bare.map((line) => ({ goodsMinor: line.totalMinor, line })), { deliveryMinor, discountMinor: 0 });
    const lines = landed.map(({ line, landedMinor }) => ({ ...line.line, landedMinor }));
    return [{
      supplier: supplier.id, supplierName: supplier.name, goodsMinor, deliveryMinor, leadDays: supplier.leadDays, expectedOn: addDays(today, supplier.leadDays), lines,
      depositsMinor: lines.reduce((sum, line) => sum + line.packs * line.depositMinor, 0),
      place: { supplier: supplier.id, lines: lines.map((line) => ({ offer: line.offer, packs: line.packs, for: takersOf(proposed, line.offer) })) },
    }];
  });
}

function lineOf(proposed: ProposedOrder, { offer: id, packs }: OrderAnswer['lines'][number], supplier: string): Omit<OrderLineView, 'landedMinor'> | null {
  const { facts, today } = proposed;
  const offer = facts.get(offers, id);
  if (offer?.supplier !== supplier) return null;
  const part = must(facts.get(parts, offer.part), 'part of an offer');
  const number = offer.number ?? part.number;
  const priceMinor = packPaidMinor(offer, packs);
  return {
    offer: id, part: part.id, partName: part.name, number, numberNow: number === null ? null : (successorsOf(facts.all(superseded), number).at(-1) ?? null),
    packs, quantity: offer.quantity, unit: unitOfPart(facts, part.id), priceMinor, totalMinor: packs * priceMinor, depositMinor: offer.depositMinor,
    seenOn: offer.seenOn, stale: isStale(offer, today, partsSettings(facts)),
    for: takersOf(proposed, id).map((taker) => ({
      car: taker.car, carName: facts.get(cars, taker.car)?.name ?? taker.car, item: taker.item ?? '', itemName: facts.get(serviceItems, taker.item ?? '')?.name ?? '',
      part: taker.part, quantity: taker.quantity, unit: unitOfPart(facts, taker.part) ?? '',
    })),
  };
}

/** Who takes something of what an offer brings. */
function takersOf({ needs, answer }: ProposedOrder, offer: string): Taker[] {
  return answer.allocation.filter((row) => row.from === offer).map((row) => {
    const need = must(needs.find((one) => one.need.id === row.need), 'need of an allocation');
    return { car: need.need.car, item: need.item, specification: need.need.spec, part: row.part, quantity: row.quantity };
  });
}

/** What falls on each car of what is bought, and on the shelf: together goods and delivery. */
export function proposedShares(proposed: ProposedOrder, orders: readonly SupplierOrder[]): OrderView['shares'] {
  const { facts } = proposed;
  const shares = orders.flatMap((order) => order.lines.flatMap((line) => shareLine(facts, { part: line.part, packs: line.packs, quantity: line.quantity, for: takersOf(proposed, line.offer) }, line.landedMinor)));
  return sharesByCar(shares).map(({ car, minor }) => ({ car, carName: car === null ? null : (facts.get(cars, car)?.name ?? car), minor }));
}
