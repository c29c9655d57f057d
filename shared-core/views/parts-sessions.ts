import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import type { Session } from '../sessions/session.ts';
import { plannedItems } from './household-needs.ts';
import { needsOfItem } from './needs-of-item.ts';
import type { SessionParts } from './parts-view-schema.ts';
import { sessionDays, standingSupply, takeSupply, type Supply } from './supply-taking.ts';
import { toolsLacking } from './tools-lacking.ts';

/** What each session at home, in order of day, takes off the shelf, has on the way by then, and lacks. What one takes the next cannot. */
export function sessionParts(facts: Facts, today: LocalDate, supply: Supply = standingSupply(facts, today)): SessionParts[] {
  return sessionsAtHome(facts, today).map(({ session, items }) => ({
    session: session.id,
    day: session.day,
    daysAhead: daysBetween(today, session.day),
    needs: [...items].sort().flatMap((item) => partsOfItem(facts, item, session.day, supply)),
    toolsLacking: toolsLacking(facts, items.map((item) => ({ item, day: session.day })), today),
  }));
}

/** The sessions at home that are still to come, soonest first, with the items to be done in them. */
function sessionsAtHome(facts: Facts, today: LocalDate): readonly { readonly session: Session; readonly items: readonly string[] }[] {
  const bySession = new Map<string, { readonly session: Session; readonly items: string[] }>();
  for (const [item, { session, atHome }] of plannedItems(facts, today)) {
    if (!atHome) continue;
    const known = bySession.get(session.id);
    if (known === undefined) bySession.set(session.id, { session, items: [item] });
    else known.items.push(item);
  }
  return [...bySession.values()].sort((a, b) => (a.session.day < b.session.day ? -1 : a.session.day > b.session.day ? 1 : a.session.id < b.session.id ? -1 : 1));
}

/** What one item takes off the shelf, has on the way by a day, and lacks. What it takes is no longer free. */
export function partsOfItem(facts: Facts, id: string, day: LocalDate, supply: Supply): SessionParts['needs'] {
  const item = facts.get(serviceItems, id);
  return (item === null ? [] : needsOfItem(item)).map(({ specification, quantity }) => {
    const { lots, coming, comingOn, lacking } = takeSupply(facts, { specification, quantity }, sessionDays(day), supply);
    const named = facts.get(specifications, specification);
    return {
      car: item?.car ?? '', carName: facts.get(cars, item?.car ?? '')?.name ?? '', item: id, itemName: item?.name ?? id, specification, specificationName: named?.name ?? specification, unit: named?.unit ?? '', quantity,
      taken: lots.map((one) => ({ ...one, partName: facts.get(parts, one.part)?.name ?? one.part, where: supply.shelf.find((lot) => lot.lot.id === one.lot)?.lot.where ?? null })),
      coming, comingOn, lacking,
    };
  });
}
