import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Solver } from '../integer-program/solver.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { composeInstance } from '../parts/compose-instance.ts';
import { offers } from '../parts/offer.ts';
import { packPaidMinor } from '../parts/offer-price.ts';
import { orderAnswerSchema, type OrderAnswer } from '../parts/order-answer.ts';
import type { OrderInstance } from '../parts/order-instance.ts';
import { orderPerCar, type PerCarOrder } from '../parts/order-per-car.ts';
import { solveOrder } from '../parts/order-solve.ts';
import { verifyOrder } from '../parts/order-verify.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import { stockOnShelf } from '../records/shelf-left.ts';
import { assert, must } from '../result/assert.ts';
import { ok, type Result } from '../result/result.ts';
import { householdNeeds, type HouseholdNeed } from './household-needs.ts';

export const orderRequestSchema = z.strictObject({
  /** Items likely due within so many days are bought for. */
  horizonDays: z.int().min(0).max(1826).default(90),
});

const needViewSchema = z.object({
  need: z.string(), car: z.string(), carName: z.string(), item: z.string(), itemName: z.string(),
  specification: z.string(), specificationName: z.string(), unit: z.string(), quantity: z.number(), neededBy: dateSchema,
  state: z.enum(['met', 'later', 'none-in-time', 'not-enough']),
});

const supplierOrderSchema = z.object({
  supplier: z.string(), supplierName: z.string(), goodsMinor: z.int(), deliveryMinor: z.int(), leadDays: z.int(),
  lines: z.array(z.object({ offer: z.string(), part: z.string(), partName: z.string(), number: z.string().nullable(), packs: z.int(), quantity: z.number(), priceMinor: z.int(), totalMinor: z.int() })),
});

/** The bare answer with its needs, its orders by supplier, and what buying for each car alone would come to. */
export const orderViewSchema = orderAnswerSchema.extend({
  today: dateSchema,
  horizonDays: z.int(),
  currency: z.string(),
  needs: z.array(needViewSchema),
  orders: z.array(supplierOrderSchema),
  perCar: z.object({ totalMinor: z.int(), met: z.int(), cars: z.array(z.object({ car: z.string(), totalMinor: z.int(), met: z.int() })) }),
  /** What buying together saves; null where each car alone would not meet the same number of needs. */
  savedMinor: z.int().nullable(),
});
export type OrderView = z.infer<typeof orderViewSchema>;

/**
 * Merges what all cars need into orders: solved to the proven cheapest, checked by the verifier, and held against buying
 * for each car alone. An answer that fails the verifier is our bug and is never shown.
 */
export async function proposeOrder(facts: Facts, request: z.output<typeof orderRequestSchema>, moment: Pick<Moment, 'today'>, solver: Solver): Promise<Result<OrderView>> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const needs = householdNeeds(facts, moment.today, request.horizonDays);
  const instance = composeInstance(facts, needs.map((one) => one.need), stockOnShelf(facts), moment.today);
  const answer = await solveOrder(instance, solver);
  if (!answer.ok) return answer;
  const faults = verifyOrder(instance, answer.value);
  assert(faults.length === 0, `an order that its verifier refuses: ${JSON.stringify(faults[0])}`);
  const perCar = await orderPerCar(instance, solver);
  if (!perCar.ok) return perCar;
  return ok({
    ...answer.value,
    today: moment.today,
    horizonDays: request.horizonDays,
    currency: household.value.currency,
    needs: needs.map((one) => needView(facts, one, answer.value)),
    orders: supplierOrders(facts, instance, answer.value),
    perCar: { ...perCar.value, cars: [...perCar.value.cars] },
    savedMinor: savedBy(answer.value, perCar.value, needs.length),
  });
}

function savedBy(answer: OrderAnswer, perCar: PerCarOrder, needs: number): number | null {
  const met = needs - answer.unmet.length - answer.later.length;
  return met === perCar.met ? perCar.totalMinor - answer.totalMinor : null;
}

function needView(facts: Facts, { need, item, itemName }: HouseholdNeed, answer: OrderAnswer): OrderView['needs'][number] {
  const specification = must(facts.get(specifications, need.spec), 'specification of a need');
  const unmet = answer.unmet.find((one) => one.need === need.id)?.code;
  return {
    need: need.id,
    car: need.car,
    carName: must(facts.get(cars, need.car), 'car of a need').name,
    item,
    itemName,
    specification: need.spec,
    specificationName: specification.name,
    unit: specification.unit,
    quantity: need.quantity,
    neededBy: need.neededBy,
    state: unmet ?? (answer.later.includes(need.id) ? 'later' : 'met'),
  };
}

function supplierOrders(facts: Facts, instance: OrderInstance, answer: OrderAnswer): OrderView['orders'] {
  return instance.suppliers.flatMap((supplier) => {
    const lines = answer.lines.flatMap((line) => {
      const offer = must(facts.get(offers, line.offer), 'offer of a line');
      if (offer.supplier !== supplier.id) return [];
      const priceMinor = packPaidMinor(offer, line.packs);
      const part = must(facts.get(parts, offer.part), 'part of an offer');
      return [{ offer: offer.id, part: part.id, partName: part.name, number: offer.number, packs: line.packs, quantity: offer.quantity, priceMinor, totalMinor: line.packs * priceMinor }];
    });
    if (lines.length === 0) return [];
    const goodsMinor = lines.reduce((sum, line) => sum + line.totalMinor, 0);
    const free = supplier.freeFromMinor !== null && goodsMinor >= supplier.freeFromMinor;
    const supplierName = must(facts.get(suppliers, supplier.id), 'supplier').name;
    return [{ supplier: supplier.id, supplierName, goodsMinor, deliveryMinor: free ? 0 : supplier.deliveryMinor, leadDays: supplier.leadDays, lines }];
  });
}
