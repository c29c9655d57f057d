import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { comingSupply } from '../parts/coming-supply.ts';
import { ruleBetween } from '../parts/mix-rule.ts';
import { neverMixes } from '../parts/never-mix.ts';
import { offers, standingOffers } from '../parts/offer.ts';
import { paidPrices } from '../parts/offer-price.ts';
import { formerNumbers, successorsOf, superseded } from '../parts/part-number.ts';
import { preferences } from '../parts/part-preference.ts';
import { parts, statementOf, type Part } from '../parts/part.ts';
import { isStale, partsSettings } from '../parts/parts-settings.ts';
import { specifications, type Specification } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import { goodStock, standingLots } from '../records/shelf-left.ts';
import { say } from '../result/words/say.ts';
import { unitOfPart } from './order-lines.ts';
import type { PartsView, SpecificationView } from './parts-view-schema.ts';
import { said } from './plan-said.ts';

const sum = (values: readonly number[]) => Math.round(values.reduce((total, value) => total + value, 0) * 1000) / 1000;

/** How much of each part stands on the shelf and is good today. */
export function stockByPart(facts: Facts, today: LocalDate): ReadonlyMap<string, number> {
  const stock = new Map<string, number>();
  for (const { lot, left } of goodStock(standingLots(facts), today)) stock.set(lot.part, sum([stock.get(lot.part) ?? 0, left]));
  return stock;
}

/** Every specification: who asks for it, what meets it and who says so, what it may not meet, what there is of it. */
export function specificationViews(facts: Facts, today: LocalDate): SpecificationView[] {
  const stock = stockByPart(facts, today);
  const coming = comingByPart(facts, today);
  const all = facts.all(specifications);
  return all.map((specification) => {
    const meeting = facts.all(parts).filter((part) => part.meets.includes(specification.id));
    return {
      specification,
      askedBy: askedBy(facts, specification),
      metBy: meeting.map((part) => metBy(facts, specification, part, stock)),
      preference: facts.get(preferences, specification.id),
      neverWith: neverWith(facts, specification, all),
      onShelf: sum(meeting.map((part) => stock.get(part.id) ?? 0)),
      coming: sum(meeting.map((part) => coming.get(part.id) ?? 0)),
    };
  });
}

/** What is on the way of each single part; a kit as its contents. */
function comingByPart(facts: Facts, today: LocalDate): ReadonlyMap<string, number> {
  const coming = new Map<string, number>();
  const add = (part: string, quantity: number) => coming.set(part, (coming.get(part) ?? 0) + quantity);
  for (const { line, packs } of comingSupply(facts, today)) {
    const contains = facts.get(parts, line.part)?.contains ?? [];
    if (contains.length === 0) add(line.part, packs * line.quantity);
    for (const inside of contains) add(inside.part, packs * line.quantity * inside.quantity);
  }
  return coming;
}

function askedBy(facts: Facts, specification: Specification): SpecificationView['askedBy'] {
  return facts.all(serviceItems).flatMap((item) => item.needs.filter((need) => need.specification === specification.id).map((need) => ({
    car: item.car, carName: facts.get(cars, item.car)?.name ?? item.car, item: item.id, itemName: item.name, quantity: need.quantity,
  })));
}

function metBy(facts: Facts, specification: Specification, part: Part, stock: ReadonlyMap<string, number>): SpecificationView['metBy'][number] {
  const statement = statementOf(part, specification.id);
  const preferred = facts.get(preferences, specification.id)?.parts.indexOf(part.id) ?? -1;
  const by = say({ key: `stated-by-${statement.by}`, values: {} });
  return {
    part: part.id, name: part.name, statement, offers: standingOffers(facts).filter((offer) => offer.part === part.id).length, onShelf: stock.get(part.id) ?? 0, preferred: preferred < 0 ? null : preferred,
    said: say({ key: `stated-${statement.basis}${statement.source === null ? '' : '-source'}`, values: { by, source: statement.source } }),
  };
}

function neverWith(facts: Facts, specification: Specification, all: readonly Specification[]): SpecificationView['neverWith'] {
  const pairs = facts.all(neverMixes);
  return all.flatMap((other) => {
    const rule = ruleBetween(pairs, specification, other);
    return rule === null ? [] : [{ specification: other.id, name: other.name, rule: rule.rule, why: said(rule.why) }];
  });
}

/** Every part, with the numbers before and after its own. */
export function partViews(facts: Facts, today: LocalDate): PartsView['parts'] {
  const stock = stockByPart(facts, today);
  const replaced = facts.all(superseded);
  return facts.all(parts).map((part) => ({
    part,
    unit: unitOfPart(facts, part.id),
    numberNow: part.number === null ? null : (successorsOf(replaced, part.number).at(-1) ?? null),
    formerNumbers: part.number === null ? [] : [...formerNumbers(replaced, part.number)],
    contains: part.contains.map((inside) => ({ part: inside.part, name: facts.get(parts, inside.part)?.name ?? inside.part, quantity: inside.quantity })),
    onShelf: stock.get(part.id) ?? 0,
  }));
}

/** Every offer, withdrawn ones as well: what is paid by it, and whether its price is old. */
export function offerViews(facts: Facts, today: LocalDate): PartsView['offers'] {
  const settings = partsSettings(facts);
  const replaced = facts.all(superseded);
  return facts.all(offers).map((offer) => {
    const number = offer.number ?? facts.get(parts, offer.part)?.number ?? null;
    return {
      offer,
      supplierName: facts.get(suppliers, offer.supplier)?.name ?? offer.supplier,
      partName: facts.get(parts, offer.part)?.name ?? offer.part,
      unit: unitOfPart(facts, offer.part),
      paidMinor: paidPrices(offer).priceMinor,
      stale: offer.withdrawnOn === null && isStale(offer, today, settings),
      ageDays: Math.max(0, daysBetween(offer.seenOn, today)),
      numberNow: number === null ? null : (successorsOf(replaced, number).at(-1) ?? null),
    };
  });
}
