import { addDays, later, type LocalDate } from '../calendar/local-date.ts';
import type { ServiceItem } from '../care/service-item.ts';
import { carsHere } from '../fleet/departure.ts';
import type { Facts } from '../journal/facts.ts';
import { wishNeeds } from '../ledger/wish-aside.ts';
import { openWishes } from '../ledger/wish-state.ts';
import type { Wish } from '../ledger/wish.ts';
import { mayMix } from '../parts/mix-rule.ts';
import type { OrderNeed } from '../parts/order-instance.ts';
import { specifications } from '../parts/specification.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { careOf, type ItemCare } from './car-care.ts';
import { LEAST_NOTICE_DAYS, leadTimes, type LeadTimes } from './notice-days.ts';
import { needsOfItem } from './needs-of-item.ts';
import { openTasks } from './plan-input.ts';

/** A need of a household's car, with the item it is for and the session in which it is to be done. */
export interface HouseholdNeed {
  readonly need: OrderNeed;
  /** Null for a wish that is not planned yet. */
  readonly item: string | null;
  readonly itemName: string;
  /** The wish that it is for; null for what the car is to have. */
  readonly wish: string | null;
  /** The session at home that takes it: the parts should be there the day before. Null where there is none. */
  readonly session: { readonly id: string; readonly day: LocalDate; readonly ready: LocalDate } | null;
}

/**
 * What all cars need within a horizon: each need of each item that is late or likely due by then, or stands in a session at home. It is
 * needed the day before its session, else by the likely date, but never sooner than it can be had: the shortest delivery, and without a
 * session the least notice from today. What is late is ordered all the same, and then is later.
 */
export function householdNeeds(facts: Facts, today: LocalDate, horizonDays: number): readonly HouseholdNeed[] {
  const leads = leadTimes(facts);
  const until = addDays(today, horizonDays);
  const planned = plannedItems(facts, today);
  const wished = new Map(openWishes(facts).flatMap((wish) => (wish.item === null ? [] : [[wish.item, wish] as const])));
  return carsHere(facts).flatMap((car) =>
    careOf(facts, car, today, leads)
      .items.filter((one) => isWanted(one, planned.get(one.item.id) ?? null, until))
      .flatMap((one) => needsOf({ facts, today, leads }, one, planned.get(one.item.id)?.session ?? null, wished.get(one.item.id) ?? null)),
  );
}

/** Where an item is to be done next, and whether that is at home. */
interface PlannedItem {
  readonly session: Session;
  readonly atHome: boolean;
}

/** The sessions that stand from today on, by the items that are still to be done in them; what is kept before what is proposed, then by day. */
export function plannedItems(facts: Facts, today: LocalDate): ReadonlyMap<string, PlannedItem> {
  const homes = new Set(standingPlaces(facts).flatMap(({ place }) => (place.kind === 'home' ? [place.id] : [])));
  const standing = facts.all(sessions).filter((one) => one.day >= today && (isPinned(one) || one.state === 'proposed'));
  const rank = (one: Session) => `${isPinned(one) ? 0 : 1} ${one.day} ${one.id}`;
  const found = new Map<string, PlannedItem>();
  for (const session of [...standing].sort((a, b) => (rank(a) < rank(b) ? -1 : 1))) {
    for (const task of openTasks(facts, session)) if (task.kind === 'item' && !found.has(task.id)) found.set(task.id, { session, atHome: homes.has(session.place) });
  }
  return found;
}

/** A garage brings its own parts for what is left to it. */
function isWanted({ item, window }: ItemCare, planned: PlannedItem | null, until: LocalDate): boolean {
  if (planned !== null) return planned.atHome && (planned.session.day <= until || window.state === 'late');
  if (item.place === 'garage') return false;
  return window.state === 'late' || (window.likely !== null && window.likely <= until);
}

interface NeedSources {
  readonly facts: Facts;
  readonly today: LocalDate;
  readonly leads: LeadTimes;
}

/** One part alone meets a need unless the keeper lets its specification be mixed and all that meets it goes together. */
function needsOf({ facts, today, leads }: NeedSources, { item, window }: ItemCare, session: Session | null, wish: Wish | null): readonly HouseholdNeed[] {
  const soonest = (specification: string, least: number) => addDays(today, Math.max(least, leads.get(specification) ?? 0));
  const ready = session === null ? null : later(today, addDays(session.day, -1));
  return (wish === null ? needsOfItem(item) : lackingOf(facts, wish)).map(({ specification, quantity }) => ({
    item: item.id,
    itemName: item.name,
    wish: wish?.id ?? null,
    session: session === null || ready === null ? null : { id: session.id, day: session.day, ready },
    need: {
      id: `${item.id}/${specification}`,
      car: item.car,
      spec: specification,
      quantity,
      neededBy: ready === null ? later(window.likely ?? today, soonest(specification, LEAST_NOTICE_DAYS)) : later(ready, soonest(specification, 0)),
      ...(session === null ? {} : { usedOn: session.day }),
      mix: mayMix(facts, specification),
      step: facts.get(specifications, specification)?.step ?? null,
      // A wish never goes ahead of what is due.
      rank: wish !== null ? 2 : window.state === 'late' ? 0 : 1,
      laterMinor: null,
    },
  }));
}

/** What a wish needs beyond what is put aside for it. */
function lackingOf(facts: Facts, wish: Wish): ServiceItem['needs'] {
  return wishNeeds(facts, wish).filter((need) => need.lacking > 0).map(({ specification, lacking }) => ({ specification, quantity: lacking }));
}
