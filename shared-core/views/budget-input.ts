import type { LocalDate } from '../calendar/local-date.ts';
import { obligations } from '../care/obligation.ts';
import type { Car } from '../fleet/car.ts';
import { carsHere } from '../fleet/departure.ts';
import type { Facts } from '../journal/facts.ts';
import type { BudgetInput, BudgetStock } from '../ledger/budget-input.ts';
import { priceHabits } from '../ledger/budget-prices.ts';
import { lotsAside } from '../ledger/wish-aside.ts';
import { wishes } from '../ledger/wish.ts';
import { comingSupply } from '../parts/coming-supply.ts';
import { goodsMinor, orders } from '../parts/order.ts';
import { standingOffers } from '../parts/offer.ts';
import { paidPrices } from '../parts/offer-price.ts';
import { parts } from '../parts/part.ts';
import { standingLots } from '../records/shelf-left.ts';
import { standingPlaces } from '../sessions/place.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { lagsOf, pastPricesOf, unplannedOf, watchedCars } from './budget-past.ts';
import { budgetTasks } from './budget-tasks.ts';
import { keptVisits } from './budget-visits.ts';
import { careOf } from './car-care.ts';
import { leadTimes } from './notice-days.ts';
import { priceBook } from './price-book.ts';

/** What a budget is made of, with what its notes tell beside. */
export interface ComposedBudget {
  readonly input: BudgetInput;
  /** What delivery came to on top of goods, by the household's own orders; null where there is none. */
  readonly deliveryShare: number | null;
  /** Something is on order, which counts as paid. */
  readonly onOrder: boolean;
}

/** All that a budget ahead is made of, as the household stands; of one car, or of all that are here. */
export function composeBudget(facts: Facts, today: LocalDate, months: number, only: Car | null): ComposedBudget {
  const leads = leadTimes(facts);
  const all = carsHere(facts).map((car) => careOf(facts, car, today, leads));
  const { kept, visits } = keptVisits(facts, today);
  const habits = { pastPrices: pastPricesOf(facts, all, (car) => facts.ofCar(obligations, car).map(({ id }) => id)), lagDays: lagsOf(all) };
  const deliveryShare = deliveryShareOf(facts);
  const garages = standingPlaces(facts).flatMap(({ place }) => (place.kind === 'garage' ? [place] : []));
  const sources = { facts, today, kept, garages, growth: priceHabits(habits).growth, unitMinor: unitPrices(facts, today, deliveryShare ?? 0) };
  const tasks = all.flatMap((care) => budgetTasks(sources, care));
  const stock = [...shelf(facts, today), ...coming(facts, today)];
  return {
    input: {
      today, months, habits, stock, visits, tasks,
      only: only?.id ?? null,
      cars: all.map(({ car, use }) => ({ id: car.id, name: car.name, usage: use.usage })),
      unplanned: unplannedOf(facts),
      watched: watchedCars(facts, today),
      extra: [],
      unknown: all.flatMap(({ car, items }) => items.filter(({ window }) => window.state === 'unknown').map(({ item }) => ({ key: taskKey({ kind: 'item', id: item.id }), car: car.id, name: item.name, why: 'unknown' as const })).filter(({ key }) => !kept.has(key))),
    },
    deliveryShare,
    onOrder: stock.some(({ id }) => id.startsWith('order/')),
  };
}

/** What a unit costs that must be bought: the cheapest offer with its share of delivery; where none stands, what the price book knows. */
function unitPrices(facts: Facts, today: LocalDate, deliveryShare: number): ReadonlyMap<string, number> {
  const prices = new Map(priceBook(facts, today).unitMinor);
  const offered = new Map<string, number>();
  for (const offer of standingOffers(facts)) {
    const unit = (paidPrices(offer).priceMinor / offer.quantity) * (1 + deliveryShare);
    for (const one of facts.get(parts, offer.part)?.meets ?? []) offered.set(one, Math.min(offered.get(one) ?? Infinity, unit));
  }
  for (const [specification, unit] of offered) prices.set(specification, unit);
  return prices;
}

function deliveryShareOf(facts: Facts): number | null {
  const placed = facts.all(orders).filter(({ cancelledOn }) => cancelledOn === null);
  const goods = placed.reduce((sum, order) => sum + order.lines.reduce((all, line) => all + goodsMinor(line), 0), 0);
  return goods === 0 ? null : placed.reduce((sum, order) => sum + order.deliveryMinor, 0) / goods;
}

/** What is put aside for a wish is its item's alone; while it has none, nothing of it is paid here. */
function shelf(facts: Facts, today: LocalDate): readonly BudgetStock[] {
  const aside = lotsAside(facts);
  return standingLots(facts).filter(({ left }) => left > 0).flatMap(({ lot, left, goodUntil }): BudgetStock[] => {
    const wish = facts.get(wishes, aside.get(lot.id) ?? '');
    if (wish?.item === null) return [];
    return [{ id: `lot/${lot.id}`, meets: facts.get(parts, lot.part)?.meets ?? [], quantity: left, from: today, goodUntil, ...(wish === null ? {} : { onlyFor: taskKey({ kind: 'item', id: wish.item }) }) }];
  });
}

function coming(facts: Facts, today: LocalDate): readonly BudgetStock[] {
  return comingSupply(facts, today).flatMap(({ order, line, packs, on }) => {
    const part = facts.get(parts, line.part);
    const quantity = packs * line.quantity;
    const inside = part === null || part.contains.length === 0 ? [{ part: line.part, quantity: 1 }] : part.contains;
    return inside.map((one) => ({ id: `order/${order}/${line.id}/${one.part}`, meets: facts.get(parts, one.part)?.meets ?? [], quantity: quantity * one.quantity, from: on, goodUntil: null }));
  });
}
