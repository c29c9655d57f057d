import type { Solver } from '../integer-program/solver.ts';
import { ok, type Result } from '../result/result.ts';
import type { OrderAnswer } from './order-answer.ts';
import type { OrderInstance, OrderNeed } from './order-instance.ts';
import { solveOrder, type OrderOptions } from './order-solve.ts';

/** What buying for each car alone would come to. */
export interface PerCarOrder {
  readonly totalMinor: number;
  readonly met: number;
  readonly cars: readonly { readonly car: string; readonly totalMinor: number; readonly met: number }[];
}

/**
 * The figure of comparison: the cars in order of need, each solved alone on what the shelf still holds after the ones before.
 *
 * @example (await orderPerCar(instance, solver)) //=> { ok: true, value: { totalMinor: 5210, met: 4, cars: [...] } }
 */
export async function orderPerCar(instance: OrderInstance, solver: Solver, options: OrderOptions = {}): Promise<Result<PerCarOrder>> {
  const cars: { car: string; totalMinor: number; met: number }[] = [];
  let { shelf, offers } = instance;
  for (const [car, needs] of carsInOrderOfNeed(instance.needs)) {
    const answer = await solveOrder({ ...instance, needs, shelf, offers }, solver, options);
    if (!answer.ok) return answer;
    cars.push({ car, totalMinor: answer.value.totalMinor, met: needs.length - answer.value.unmet.length - answer.value.later.length });
    shelf = shelfAfter({ ...instance, shelf }, answer.value);
    offers = offersAfter(offers, answer.value);
  }
  return ok({ totalMinor: cars.reduce((sum, one) => sum + one.totalMinor, 0), met: cars.reduce((sum, one) => sum + one.met, 0), cars });
}

/** The car whose first need comes first is first; cars of one day in order of their ids. */
function carsInOrderOfNeed(needs: readonly OrderNeed[]): readonly (readonly [string, OrderNeed[]])[] {
  const byCar = new Map<string, OrderNeed[]>();
  for (const need of needs) byCar.set(need.car, [...(byCar.get(need.car) ?? []), need]);
  const first = (list: readonly OrderNeed[]) => list.map((need) => need.neededBy).sort()[0] ?? '';
  return [...byCar].sort(([a, one], [b, other]) => compare(first(one), first(other)) || compare(a, b));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Of an offer with a limit, what one car took the next one cannot have. */
export function offersAfter(offers: OrderInstance['offers'], answer: OrderAnswer): OrderInstance['offers'] {
  const packs = new Map(answer.lines.map((line) => [line.offer, line.packs]));
  return offers.map((offer) => (offer.most === null ? offer : { ...offer, most: offer.most - (packs.get(offer.id) ?? 0) }));
}

/** Old stock less what was taken from it, oldest expiry first; what was bought and left over is the next car's to use. */
export function shelfAfter(instance: OrderInstance, answer: OrderAnswer): OrderInstance['shelf'] {
  const taken = new Map<string, number>();
  for (const use of answer.allocation) if (use.from === 'shelf') taken.set(use.part, (taken.get(use.part) ?? 0) + use.quantity);
  const old = [...instance.shelf].sort((a, b) => compare(a.expires ?? '9', b.expires ?? '9')).flatMap((stock) => {
    const used = Math.min(stock.quantity, taken.get(stock.part) ?? 0);
    taken.set(stock.part, (taken.get(stock.part) ?? 0) - used);
    return stock.quantity - used > 1e-9 ? [{ ...stock, quantity: rounded(stock.quantity - used) }] : [];
  });
  const standing = new Map<string, number>();
  for (const stock of old) standing.set(stock.part, (standing.get(stock.part) ?? 0) + stock.quantity);
  const bought = answer.left.flatMap(({ part, quantity }) => {
    const more = rounded(quantity - (standing.get(part) ?? 0));
    return more > 0 ? [{ part, quantity: more, expires: null }] : [];
  });
  return [...old, ...bought];
}

function rounded(quantity: number): number {
  return Math.round(quantity * 1e6) / 1e6;
}
