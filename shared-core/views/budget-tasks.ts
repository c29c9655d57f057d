import type { LocalDate } from '../calendar/local-date.ts';
import type { Limit } from '../care/limit.ts';
import { obligations, type Obligation } from '../care/obligation.ts';
import type { ServiceItem } from '../care/service-item.ts';
import { underSevereUse } from '../care/severe-use.ts';
import { reachedOn } from '../fleet/known-distance.ts';
import type { Facts } from '../journal/facts.ts';
import type { BudgetPrice, BudgetTask, NextDue } from '../ledger/budget-input.ts';
import { asLastTimes } from '../ledger/budget-prices.ts';
import { wishes, type Wish } from '../ledger/wish.ts';
import { say } from '../result/words/say.ts';
import type { Place } from '../sessions/place.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { fromTyped, toKilometres } from '../units/distance.ts';
import { pastOfItem, pastOfObligation } from './budget-past.ts';
import type { CarCare, ItemCare } from './car-care.ts';
import { isCaredFor } from './cared-for.ts';
import { needsOfItem } from './needs-of-item.ts';

/** A session that is kept for a task. */
export interface KeptFor {
  readonly on: LocalDate;
  readonly place: Place | null;
  /** It is paid with the sum quoted for the visit. */
  readonly inQuote: boolean;
}

/** What the tasks of a budget are made from beside the care of their car. */
export interface BudgetSources {
  readonly facts: Facts;
  readonly today: LocalDate;
  /** Growth of prices in a year, as a logarithm. */
  readonly growth: number;
  /** What a unit costs that must still be bought, delivery with it, by specification. */
  readonly unitMinor: ReadonlyMap<string, number>;
  readonly garages: readonly Place[];
  readonly kept: ReadonlyMap<string, KeptFor>;
}

/** Everything of a car that is paid for again and again and has a due day or, though nobody knows when it was last done, a kept session. */
export function budgetTasks(sources: BudgetSources, care: CarCare): readonly BudgetTask[] {
  const items = care.items.filter((one) => (one.window.state !== 'unknown' && isCaredFor(one)) || sources.kept.has(taskKey({ kind: 'item', id: one.item.id }))).map((one) => itemTask(sources, care, one));
  const duties = sources.facts.ofCar(obligations, care.car.id).filter((one) => !endsForNothing(one)).map((one) => dutyTask(sources, one));
  return [...items, ...duties];
}

function itemTask(sources: BudgetSources, care: CarCare, one: ItemCare): BudgetTask {
  const { item, target, wear, completions } = one;
  const key = taskKey({ kind: 'item', id: item.id });
  const kept = sources.kept.get(key) ?? null;
  const metres = target?.metres ?? null;
  return {
    key, car: care.car.id, kind: 'item', name: item.name,
    first: { date: target?.date ?? null, printedDate: item.printedDate, km: metres === null ? null : toKilometres(metres), reachedOn: metres === null ? null : reachedOn(care.use.points, metres), wear: wear?.span ?? null },
    next: nextOf(item, care.car.severeUse),
    sessionOn: kept?.on ?? null,
    lastDone: completions.at(-1)?.date ?? null,
    punctual: item.anchor.kind === 'keep-date',
    price: priceOfItem(sources, care, item, kept),
    firstInQuote: kept?.inQuote ?? false,
  };
}

function nextOf({ anchor, interval }: ServiceItem, severeUse: number): NextDue {
  const months = interval.repeat.months ?? 0;
  if (anchor.kind === 'calendar' && months > 0) return { kind: 'calendar', firstDate: anchor.firstDate, months };
  if (anchor.kind === 'keep-date' && months > 0) return { kind: 'certificate', months, keepsDate: true };
  const limit = underSevereUse(interval.repeat, severeUse);
  return { kind: 'completion', months: limit.months, km: kilometresOf(limit) };
}

function kilometresOf({ distance }: Limit): number | null {
  const metres = distance === null ? null : fromTyped(distance);
  return metres === null || !metres.ok ? null : toKilometres(metres.value);
}

/** All of a wish that is planned: what it takes, with a specification and without, and the work where a garage does it. Null where some of that has no price. */
function priceOfWish({ today, unitMinor }: BudgetSources, { needs, others, place }: Wish, work: BudgetPrice | null): BudgetPrice | null {
  const goods = needs.flatMap(({ specification, quantity }) => {
    const unit = unitMinor.get(specification);
    return unit === undefined ? [] : [{ specification, quantity, minor: unit * quantity }];
  });
  const named = others.flatMap((one) => one.priceMinor ?? []);
  if (goods.length < needs.length || named.length < others.length || (place === 'garage' && work === null)) return null;
  const workMinor = place === 'garage' ? (work?.minor ?? 0) : 0;
  const minor = [...goods.map((one) => one.minor), ...named, workMinor].reduce((sum, one) => sum + one, 0);
  return { minor: Math.round(minor), source: goods.length > 0 ? 'offers' : 'entered', known: 1, pricedOn: today, goods };
}

/** At the place of its session; else where alone it may be done; else where it was last done or, where that has no price, where it is cheaper. */
function priceOfItem(sources: BudgetSources, care: CarCare, item: ServiceItem, kept: KeptFor | null): BudgetPrice | null {
  const wish = sources.facts.all(wishes).find((one) => one.item === item.id);
  if (wish !== undefined) return priceOfWish(sources, wish, garagePriceOf(sources, care, item, kept));
  const [home, garage] = [homePriceOf(sources, care, item), garagePriceOf(sources, care, item, kept)];
  const only = kept?.place?.kind ?? (item.place === 'either' ? null : item.place);
  if (only !== null) return only === 'home' ? home : garage;
  const last = care.records.filter((record) => record.lines.some((line) => line.item === item.id)).reduce<(typeof care.records)[number] | null>((best, one) => (best === null || one.date >= best.date ? one : best), null);
  const usual = last === null ? null : last.place === 'home' ? home : garage;
  if (usual !== null) return usual;
  return home !== null && garage !== null ? (home.minor <= garage.minor ? home : garage) : (home ?? garage);
}

/** One's own minutes are not money. A check that needs nothing and never cost anything costs nothing. */
function homePriceOf(sources: BudgetSources, care: CarCare, item: ServiceItem): BudgetPrice | null {
  const goods = needsOfItem(item).flatMap(({ specification, quantity }) => {
    const unit = sources.unitMinor.get(specification);
    return unit === undefined ? [] : [{ specification, quantity, minor: unit * quantity }];
  });
  if (item.needs.length > 0 && goods.length === needsOfItem(item).length) {
    return { minor: Math.round(goods.reduce((sum, one) => sum + one.minor, 0)), source: 'offers', known: 1, pricedOn: sources.today, goods };
  }
  const before = lastTimes(sources, pastOfItem(sources.facts, item.id, care.records, 'home'));
  if (before !== null) return before;
  return item.needs.length === 0 && item.work === 'check' ? { minor: 0, source: 'entered', known: 1, pricedOn: sources.today, goods: [] } : null;
}

function garagePriceOf(sources: BudgetSources, care: CarCare, item: ServiceItem, kept: KeptFor | null): BudgetPrice | null {
  if (item.garagePrice === null) return lastTimes(sources, pastOfItem(sources.facts, item.id, care.records, 'garage'));
  return { minor: item.garagePrice + (item.minutes ?? 0) * minuteMinor(sources, care.car.id, kept), source: 'entered', known: 1, pricedOn: sources.today, goods: [] };
}

/** What the garage takes for each minute beside its prices: that of the session, else the one that takes least. What was paid before has it in it. */
function minuteMinor({ garages }: BudgetSources, car: string, kept: KeptFor | null): number {
  if (kept?.place?.kind === 'garage') return kept.place.minuteMinor;
  const taking = garages.filter((place) => place.cars === null || place.cars.includes(car)).map((place) => place.minuteMinor);
  return taking.length === 0 ? 0 : Math.min(...taking);
}

function lastTimes({ growth, today }: BudgetSources, past: ReturnType<typeof pastOfItem>): BudgetPrice | null {
  const now = asLastTimes(past, growth, today);
  return now === null ? null : { ...now, source: 'as-last-times', pricedOn: today, goods: [] };
}

/** A warranty that ends asks for no money unless somebody has said so. */
function endsForNothing({ kind, price }: Obligation): boolean {
  return kind === 'warranty-end' && price === null;
}

function dutyTask(sources: BudgetSources, duty: Obligation): BudgetTask {
  const key = taskKey({ kind: 'obligation', id: duty.id });
  const kept = sources.kept.get(key) ?? null;
  const { facts, today } = sources;
  return {
    key, car: duty.car, kind: 'obligation', name: duty.name ?? say({ key: `obligation-${duty.kind}`, values: {} }),
    first: { date: duty.lastValidDay, printedDate: null, km: null, reachedOn: null, wear: null },
    next: duty.months === null ? { kind: 'never' } : { kind: 'certificate', months: duty.months, keepsDate: duty.keepsDate },
    sessionOn: kept?.on ?? null,
    lastDone: null,
    punctual: true,
    price: duty.price === null ? lastTimes(sources, pastOfObligation(facts, duty.car, duty.id)) : { minor: duty.price, source: 'entered', known: 1, pricedOn: today, goods: [] },
    firstInQuote: kept?.inQuote ?? false,
  };
}
