import { z } from 'zod';
import { addDays } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { standingOffers } from '../parts/offer.ts';
import { preferences } from '../parts/part-preference.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { ok } from '../result/result.ts';
import { householdNeeds, type HouseholdNeed } from './household-needs.ts';
import { needsViewSchema, type NeedsView, type StandingNeed } from './needs-view-schema.ts';
import { orderRequestSchema } from './order-view-schema.ts';
import { said } from './plan-said.ts';
import { standingSupply, takeSupply, type Supply } from './supply-taking.ts';

/**
 * What all cars need within a horizon, soonest first: each takes what is on the shelf and on the way before the next. What is still
 * missing and cannot be bought says what is to be entered.
 */
export const showNeeds = ask({
  request: z.strictObject({ horizonDays: orderRequestSchema.shape.horizonDays }),
  reply: needsViewSchema,
  answer: (standing, { horizonDays }, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const supply = standingSupply(facts, today);
    const offered = offersByPart(facts);
    const needs = [...householdNeeds(facts, today, horizonDays)].sort((a, b) => (a.need.neededBy < b.need.neededBy ? -1 : a.need.neededBy > b.need.neededBy ? 1 : a.need.id < b.need.id ? -1 : 1));
    return ok({ today, horizonDays, needs: needs.map((one) => standingNeed(facts, one, supply, offered)), tasks: tasksOf(facts) });
  },
});

function standingNeed(facts: Facts, { need, item, itemName, session }: HouseholdNeed, supply: Supply, offered: ReadonlyMap<string, number>): StandingNeed {
  const taken = takeSupply(facts, { specification: need.spec, quantity: need.quantity }, addDays(need.neededBy, 1), supply);
  const specification = facts.get(specifications, need.spec);
  const specificationName = specification?.name ?? need.spec;
  const metBy = meeting(facts, need.spec).map((part) => ({ part: part.id, partName: part.name, offers: offered.get(part.id) ?? 0 }));
  return {
    need: need.id, car: need.car, carName: facts.get(cars, need.car)?.name ?? need.car, item, itemName,
    specification: need.spec, specificationName, unit: specification?.unit ?? '', quantity: need.quantity, neededBy: need.neededBy,
    session: session === null ? null : { id: session.id, day: session.day },
    late: need.rank === 0,
    taken: taken.lots.map((one) => ({ ...one, partName: facts.get(parts, one.part)?.name ?? one.part, where: supply.shelf.find((lot) => lot.lot.id === one.lot)?.lot.where ?? null })),
    coming: taken.coming, comingOn: taken.comingOn, lacking: taken.lacking,
    state: taken.lacking > 0 ? 'missing' : taken.coming > 0 ? 'on-the-way' : 'on-shelf',
    metBy,
    gap: taken.lacking === 0 ? null : gapOf(specificationName, metBy),
  };
}

function gapOf(specification: string, metBy: StandingNeed['metBy']): StandingNeed['gap'] {
  if (metBy.length === 0) return { code: 'no-part', said: said({ key: 'need-gap-no-part', values: { specification } }) };
  if (metBy.some((one) => one.offers > 0)) return null;
  return { code: 'no-offer', said: said({ key: 'need-gap-no-offer', values: { parts: metBy.map((one) => one.partName).join(', ') } }) };
}

/** The parts that meet a specification: those that one would rather have first, then as they were entered. */
function meeting(facts: Facts, specification: string) {
  const preferred = facts.get(preferences, specification)?.parts ?? [];
  const place = (id: string) => (preferred.includes(id) ? preferred.indexOf(id) : preferred.length);
  return facts.all(parts).filter((part) => part.meets.includes(specification)).sort((a, b) => place(a.id) - place(b.id));
}

/** How many offers stand for each single part, those for kits that hold it included. */
function offersByPart(facts: Facts): ReadonlyMap<string, number> {
  const count = new Map<string, number>();
  for (const offer of standingOffers(facts)) {
    const inside = facts.get(parts, offer.part)?.contains.map((one) => one.part) ?? [];
    for (const part of [offer.part, ...inside]) count.set(part, (count.get(part) ?? 0) + 1);
  }
  return count;
}

function tasksOf(facts: Facts): NeedsView['tasks'] {
  return facts.all(cars).flatMap((car) => facts.ofCar(serviceItems, car.id).map((item) => ({ car: car.id, carName: car.name, item: item.id, itemName: item.name, needs: [...item.needs] })));
}
