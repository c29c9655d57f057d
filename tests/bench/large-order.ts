import type { OrderInstanceAsWritten } from '../../shared-core/parts/order-instance.ts';
import { diceOf, type Dice } from '../shared-core/parts/order-seeds.ts';

type Written = OrderInstanceAsWritten;

/** How large an order to make. */
export interface OrderSize {
  readonly cars: number;
  readonly needs: number;
  readonly suppliers: number;
  readonly offers: number;
}

/** What a household with many cars asks at the very most. */
export const LARGE: OrderSize = { cars: 12, needs: 200, suppliers: 8, offers: 1500 };

/**
 * A large order from a seed, with every feature: oils in cans shared by many cars, filters of each car's own, kits, breaks, thresholds,
 * minima, stock that expires, steps, parts not to be mixed, needs that may wait.
 */
export function largeOrder(seed: number, size: OrderSize = LARGE): Written {
  const dice = diceOf(seed);
  const specs = Array.from({ length: Math.ceil(size.needs / 3) }, (_, i) => ({ id: `spec${i + 1}`, poured: i % 4 === 0, base: dice.whole(300, 6000) }));
  const singles = specs.flatMap((spec, i) =>
    Array.from({ length: dice.whole(2, 4) }, (_, k) => ({ id: `p${i + 1}-${k + 1}`, spec, meets: dice.chance(15) ? [spec.id, alike(dice, specs, spec).id] : [spec.id], contains: [] })),
  );
  const kits = Array.from({ length: Math.ceil(size.offers / 75) }, (_, i) => kit(dice, i + 1, singles));
  const suppliers = Array.from({ length: size.suppliers }, (_, i) => ({
    id: `s${i + 1}`,
    deliveryMinor: dice.one([0, 395, 495, 695, 990]),
    freeFromMinor: dice.chance(75) ? dice.whole(30, 150) * 100 : null,
    minimumMinor: dice.chance(30) ? dice.whole(10, 50) * 100 : 0,
    leadDays: dice.whole(1, 10),
  }));
  const offers = Array.from({ length: size.offers }, (_, i) => {
    const supplier = dice.one(suppliers).id;
    return i < kits.length * 2 ? kitOffer(dice, i, supplier, kits) : singleOffer(dice, i, supplier, dice.one(singles));
  });
  const needs = Array.from({ length: size.needs }, (_, i) => need(dice, i, size.cars, dice.one(specs)));
  const shelf = Array.from({ length: 30 }, () => ({ part: dice.one(singles).id, quantity: dice.whole(1, 3), expires: dice.chance(50) ? `2027-0${dice.whole(1, 6)}-15` : null }));
  const parts = [...singles.map(({ id, meets, contains }) => ({ id, meets, contains })), ...kits.map(({ id, contains }) => ({ id, meets: [], contains }))];
  return { suppliers, parts, offers, needs, shelf, orderOn: '2027-01-02' };
}

interface Spec {
  readonly id: string;
  readonly poured: boolean;
  readonly base: number;
}

interface Single {
  readonly id: string;
  readonly spec: Spec;
}

function alike(dice: Dice, specs: readonly Spec[], spec: Spec): Spec {
  return dice.one(specs.filter(({ poured }) => poured === spec.poured));
}

function kit(dice: Dice, i: number, singles: readonly Single[]): { id: string; contains: { part: string; quantity: number }[]; worth: number } {
  const chosen = [...new Set(Array.from({ length: dice.whole(2, 4) }, () => dice.one(singles)))];
  const contains = chosen.map(({ id, spec }) => ({ part: id, quantity: spec.poured ? dice.one([1, 4, 5]) : 1 }));
  return { id: `kit${i}`, contains, worth: chosen.reduce((sum, { spec }, at) => sum + spec.base * (contains[at]?.quantity ?? 1), 0) };
}

function kitOffer(dice: Dice, i: number, supplier: string, kits: readonly { id: string; worth: number }[]): Written['offers'][number] {
  const { id, worth } = dice.one(kits);
  return { id: `o${i + 1}`, supplier, part: id, quantity: 1, priceMinor: Math.round((worth * dice.whole(70, 100)) / 100) };
}

function singleOffer(dice: Dice, i: number, supplier: string, { id, spec }: Single): Written['offers'][number] {
  const quantity = spec.poured ? dice.one([0.5, 1, 1, 4, 5, 5, 20]) : dice.one([1, 1, 1, 1, 2, 4]);
  const bulk = 1 - Math.log2(quantity) * 0.05;
  const priceMinor = Math.round(((spec.poured ? spec.base / 4 : spec.base) * quantity * bulk * dice.whole(80, 130)) / 100);
  const breaks = dice.chance(15) ? [{ packs: dice.whole(2, 4), priceMinor: Math.round(priceMinor * 0.9) }] : [];
  return { id: `o${i + 1}`, supplier, part: id, quantity, priceMinor, breaks, most: dice.chance(10) ? dice.whole(1, 3) : null };
}

function need(dice: Dice, i: number, cars: number, spec: Spec): Written['needs'][number] {
  return {
    id: `n${i + 1}`,
    car: `c${(i % cars) + 1}`,
    spec: spec.id,
    quantity: spec.poured ? dice.one([0.4, 1, 3.2, 3.8, 4.3, 5.5, 6.5]) : dice.whole(1, 4),
    neededBy: `2027-0${dice.whole(1, 3)}-${dice.whole(15, 28)}`,
    mix: dice.chance(20),
    ...(spec.poured ? {} : { step: 1 }),
    rank: dice.one([0, 1, 1, 1, 2] as const),
    ...(dice.chance(10) ? { laterMinor: dice.whole(0, 3000) } : {}),
  };
}
