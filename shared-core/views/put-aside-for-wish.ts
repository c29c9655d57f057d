import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { carsHere } from '../fleet/departure.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { partOfLot } from '../ledger/set-wish.ts';
import { lotMeets, lotsAside } from '../ledger/wish-aside.ts';
import { findOpenWish } from '../ledger/wish-state.ts';
import { wishes, wishSchema, wishSet, type Wish } from '../ledger/wish.ts';
import { lots } from '../parts/lot.ts';
import { pickLots } from '../records/pick-lots.ts';
import { standingLots, type StandingLot } from '../records/shelf-left.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { careOf } from './car-care.ts';
import { needsOfItem } from './needs-of-item.ts';
import { leadTimes } from './notice-days.ts';

/**
 * States which lots on the shelf are put aside for a wish, all of them at once: what is not named is free again. A lot is for one wish
 * only, must meet something of it, and is never taken from what is late.
 */
export const putAsideForWish = change({
  request: z.strictObject({ wish: idSchema, lots: wishSchema.shape.lots }),
  reply: z.object({ wish: wishSchema }),
  decide: (facts, request, { today }) => {
    const found = findOpenWish(facts, request.wish);
    if (!found.ok) return found;
    const wish: Wish = { ...found.value, lots: request.lots };
    const sound = checkLots(facts, wish, found.value, today);
    return sound.ok ? ok({ entries: [newEntry(wishSet, wish)], reply: { wish } }) : sound;
  },
});

/** What was put aside before need not be there any more. */
function checkLots(facts: Facts, wish: Wish, before: Wish, today: LocalDate): Result<null> {
  const shelf = standingLots(facts);
  const aside = lotsAside(facts);
  for (const [at, id] of wish.lots.entries()) {
    if (facts.get(lots, id) === null) return refuse('unknown-lot', { lot: id }, ['lots', at]);
    if (wish.lots.indexOf(id) < at) return refuse('lot-aside-twice', { part: partOfLot(facts, id) }, ['lots', at]);
    const other = aside.get(id);
    if (other !== undefined && other !== wish.id) return refuse('lot-of-other-wish', { part: partOfLot(facts, id), wish: facts.get(wishes, other)?.name ?? other }, ['lots', at]);
    if (!lotMeets(facts, id).some((met) => wish.needs.some((need) => need.specification === met))) return refuse('lot-meets-no-wish', { part: partOfLot(facts, id) }, ['lots', at]);
    if (before.lots.includes(id)) continue;
    if ((shelf.find((one) => one.lot.id === id)?.left ?? 0) <= 0) return refuse('lot-empty', { part: partOfLot(facts, id) }, ['lots', at]);
    const late = lateTaskNeeding(facts, id, shelf.filter(({ lot }) => !wish.lots.includes(lot.id) && !aside.has(lot.id)), today);
    if (late !== null) return refuse('lot-needed-by-late', { part: partOfLot(facts, id), task: late }, ['lots', at]);
  }
  return ok(null);
}

/** What is late, on whichever car, and lacks what a lot meets once the lot is gone; null where the rest of the shelf does for all that is late. */
function lateTaskNeeding(facts: Facts, lot: string, rest: readonly StandingLot[], today: LocalDate): string | null {
  const meets = lotMeets(facts, lot);
  const leads = leadTimes(facts);
  const late = carsHere(facts).flatMap((car) => careOf(facts, car, today, leads).items.filter((one) => one.window.state === 'late'));
  for (const specification of meets) {
    const wanted = late.flatMap(({ item }) => needsOfItem(item).filter((need) => need.specification === specification).map((need) => ({ item, quantity: need.quantity })));
    const quantity = Math.round(wanted.reduce((sum, one) => sum + one.quantity, 0) * 1000) / 1000;
    const [first] = wanted;
    if (first === undefined || pickLots(facts, rest, { specification, quantity }, today).lacking === 0) continue;
    return `${facts.get(cars, first.item.car)?.name ?? first.item.car}: ${first.item.name}`;
  }
  return null;
}
