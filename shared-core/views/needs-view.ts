import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { carsHere } from '../fleet/departure.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { standingOffers } from '../parts/offer.ts';
import { preferences } from '../parts/part-preference.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { must } from '../result/assert.ts';
import { ok } from '../result/result.ts';
import { householdNeeds, type HouseholdNeed } from './household-needs.ts';
import { needsViewSchema, type NeedsView, type StandingNeed } from './needs-view-schema.ts';
import { orderRequestSchema } from './order-view-schema.ts';
import { sessionParts } from './parts-sessions.ts';
import { said } from './plan-said.ts';
import { standingSupply, takeSupply, type Supply, type Taken } from './supply-taking.ts';

/**
 * What all cars need within a horizon, soonest first. What stands in a session at home is needed the day before; the sessions take what is
 * on the shelf and on the way first, by their days, then what is in none, by when it is due: so `parts.show` says the same of a session.
 * What is still missing and cannot be bought says what is to be entered.
 */
export const showNeeds = ask({
  request: z.strictObject({ horizonDays: orderRequestSchema.shape.horizonDays }),
  reply: needsViewSchema,
  answer: (standing, { horizonDays }, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const supply = standingSupply(facts, today);
    const shown = { facts, offered: offersByPart(facts), places: new Map(supply.shelf.map(({ lot }) => [lot.id, lot.where])) };
    const taking = needTaking(facts, today, supply);
    const needs = soonestFirst(householdNeeds(facts, today, horizonDays)).map((one) => standingNeed(shown, one, taking(one)));
    return ok({ today, horizonDays, needs, tasks: tasksOf(facts) });
  },
});

/** The day by which the parts of a need are to be here. */
function hereBy({ need, session }: HouseholdNeed): LocalDate {
  return session?.ready ?? need.neededBy;
}

function soonestFirst(needs: readonly HouseholdNeed[]): readonly HouseholdNeed[] {
  const key = (one: HouseholdNeed) => `${hereBy(one)} ${one.need.id}`;
  return [...needs].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

/** What a need takes: of a session, what `parts.show` says; of none, what the sessions leave. To be asked of each need once, soonest first. */
function needTaking(facts: Facts, today: LocalDate, supply: Supply): (one: HouseholdNeed) => NeedTaken {
  const planned = new Map<string, NeedTaken>(sessionParts(facts, today, supply).flatMap(({ needs }) => needs.map((one) => [`${one.item}/${one.specification}`, one])));
  return ({ need }) => {
    const known = planned.get(need.id);
    if (known !== undefined) return known;
    const { lots, ...taken } = takeSupply(facts, { specification: need.spec, quantity: need.quantity }, { usedOn: need.neededBy, hereBy: need.neededBy }, supply);
    return { ...taken, taken: lots };
  };
}

type NeedTaken = Pick<Taken, 'coming' | 'comingOn' | 'lacking'> & { readonly taken: Taken['lots'] };

interface ShownFrom {
  readonly facts: Facts;
  readonly offered: ReadonlyMap<string, number>;
  /** Where each lot stands. */
  readonly places: ReadonlyMap<string, string | null>;
}

function standingNeed({ facts, offered, places }: ShownFrom, one: HouseholdNeed, taken: NeedTaken): StandingNeed {
  const { need, item, itemName, session } = one;
  const specification = facts.get(specifications, need.spec);
  const specificationName = specification?.name ?? need.spec;
  const metBy = meeting(facts, need.spec).map((part) => ({ part: part.id, partName: part.name, offers: offered.get(part.id) ?? 0 }));
  return {
    need: need.id, car: need.car, carName: facts.get(cars, need.car)?.name ?? need.car, item: must(item, 'item of what a car needs'), itemName,
    specification: need.spec, specificationName, unit: specification?.unit ?? '', quantity: need.quantity, neededBy: hereBy(one),
    session: session === null ? null : { id: session.id, day: session.day },
    late: need.rank === 0,
    taken: taken.taken.map(({ lot, part, quantity }) => ({ lot, part, partName: facts.get(parts, part)?.name ?? part, quantity, where: places.get(lot) ?? null })),
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
  return carsHere(facts).flatMap((car) => facts.ofCar(serviceItems, car.id).map((item) => ({ car: car.id, carName: car.name, item: item.id, itemName: item.name, needs: [...item.needs] })));
}
