import type { MemoryHousehold } from '../contract/memory-household.ts';
import { memoryHousehold } from '../contract/memory-household.ts';
import { day } from '../calendar/day.ts';
import { diceOf, type Dice } from './order-seeds.ts';

/** Fluids with how much a car takes, in litres, and what a litre costs about, in minor units. */
const FLUIDS = [
  { id: 'oil-a', litres: [3.2, 3.8, 4, 4.3, 5.5, 6], litreMinor: 900 },
  { id: 'oil-b', litres: [3.5, 4.2, 5], litreMinor: 1100 },
  { id: 'coolant', litres: [4.5, 6, 7.5], litreMinor: 500 },
  { id: 'brake-fluid', litres: [0.8, 1], litreMinor: 1300 },
  { id: 'washer-fluid', litres: [3, 4], litreMinor: 250 },
] as const;
const PACKS = [1, 2, 4, 5, 10, 20] as const;

/**
 * A household such as there are, from a seed: three to five cars, each due for oil with a filter of its own and for some other fluids; three or
 * four suppliers that charge for delivery, some free from a sum, with cans of several sizes. All is due on 20 December 2026.
 */
export function orderHousehold(seed: number): MemoryHousehold {
  const dice = diceOf(seed + 500_000);
  const household = memoryHousehold();
  for (const { id } of FLUIDS) {
    household.must('specification.set', { id, name: id, unit: 'litre' });
    household.must('part.set', { id: `can-${id}`, name: `Can of ${id}`, meets: [id] });
  }
  const suppliers = Array.from({ length: dice.whole(3, 4) }, (_, at) => `supplier-${at + 1}`);
  for (const id of suppliers) household.must('supplier.set', { id, name: id, deliveryMinor: dice.one([395, 495, 595, 690]), freeFromMinor: dice.chance(70) ? dice.whole(40, 90) * 100 : null, leadDays: dice.whole(1, 6) });
  for (const { id, litreMinor } of FLUIDS) offerEach(household, dice, suppliers, `can-${id}`, () => dice.one(PACKS), litreMinor);
  Array.from({ length: dice.whole(3, 5) }, (_, at) => `car-${at + 1}`).forEach((car) => addCar(household, dice, suppliers, car));
  return household;
}

function addCar(household: MemoryHousehold, dice: Dice, suppliers: readonly string[], car: string): void {
  household.must('car.add', { id: car, name: car, firstRegistered: day('2020-12-20') });
  household.must('specification.set', { id: `filter-${car}`, name: `filter of ${car}`, unit: 'each', step: 1 });
  household.must('part.set', { id: `f-${car}`, name: `Filter of ${car}`, meets: [`filter-${car}`] });
  offerEach(household, dice, suppliers, `f-${car}`, () => 1, dice.whole(600, 1400));
  const oil = FLUIDS[dice.chance(65) ? 0 : 1];
  const others = FLUIDS.slice(2).filter(() => dice.chance(45));
  const fluids = [oil, ...others].map(({ id, litres }) => ({ specification: id, quantity: dice.one<number>(litres) }));
  for (const [at, needs] of [[...fluids.slice(0, 1), { specification: `filter-${car}`, quantity: 1 }], ...fluids.slice(1).map((fluid) => [fluid])].entries()) {
    household.must('item.add', { id: `${car}-${at}`, car, name: `item ${at}`, history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs });
  }
}

/** Most suppliers have a part, in one or two sizes; large packs cost less by the litre. */
function offerEach(household: MemoryHousehold, dice: Dice, suppliers: readonly string[], part: string, size: () => number, eachMinor: number): void {
  suppliers.forEach((supplier, at) => {
    if (at > 0 && dice.chance(20)) return;
    for (const quantity of new Set([size(), size()])) {
      const priceMinor = Math.round((eachMinor * quantity * (1 - Math.log2(quantity) * 0.06) * dice.whole(85, 120)) / 100);
      household.must('offer.set', { id: `${supplier}-${part}-${quantity}`, supplier, part, quantity, priceMinor, seenOn: day('2026-11-20') });
    }
  });
}
