import { addDays, later, type LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { OrderNeed } from '../parts/order-instance.ts';
import { specifications } from '../parts/specification.ts';
import { careOf, type ItemCare } from './car-care.ts';
import { LEAST_NOTICE_DAYS, leadTimes, type LeadTimes } from './notice-days.ts';

/** A need of a household's car, with the item it is for. */
export interface HouseholdNeed {
  readonly need: OrderNeed;
  readonly item: string;
  readonly itemName: string;
}

/**
 * What all cars need within a horizon: each need of each item that is late or likely due by then. It is needed by the
 * likely date, but never sooner than it can be had: the least notice from today, or the shortest delivery where that is
 * longer. What is late is ordered all the same, and then is later.
 */
export function householdNeeds(facts: Facts, today: LocalDate, horizonDays: number): readonly HouseholdNeed[] {
  const leads = leadTimes(facts);
  const until = addDays(today, horizonDays);
  return facts.all(cars).flatMap((car) => careOf(facts, car, today, leads).items.filter((one) => isDue(one, until)).flatMap((one) => needsOf(facts, one, today, leads)));
}

/** A garage brings its own parts for what is left to it. */
function isDue({ item, window }: ItemCare, until: LocalDate): boolean {
  if (item.place === 'garage') return false;
  return window.state === 'late' || (window.likely !== null && window.likely <= until);
}

/** One part alone meets a need unless its specification can be mixed at will: the household's own needs are not mixed. */
function needsOf(facts: Facts, { item, window }: ItemCare, today: LocalDate, leads: LeadTimes): readonly HouseholdNeed[] {
  const soonest = (specification: string) => addDays(today, Math.max(LEAST_NOTICE_DAYS, leads.get(specification) ?? 0));
  return item.needs.map(({ specification, quantity }) => ({
    item: item.id,
    itemName: item.name,
    need: {
      id: `${item.id}/${specification}`,
      car: item.car,
      spec: specification,
      quantity,
      neededBy: later(window.likely ?? today, soonest(specification)),
      mix: false,
      step: facts.get(specifications, specification)?.step ?? null,
      rank: window.state === 'late' ? 0 : 1,
      laterMinor: null,
    },
  }));
}
