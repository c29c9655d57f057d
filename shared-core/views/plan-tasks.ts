import { addMonths } from '../calendar/add-months.ts';
import { addDays, dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { renewalOpens } from '../care/keep-the-date.ts';
import { nineDueDays } from '../care/nine-due-days.ts';
import { obligations, type Obligation } from '../care/obligation.ts';
import { reachedOn } from '../fleet/known-distance.ts';
import { dueDayAt, FORESEEABLE_DAYS } from '../fleet/odometer-forecast.ts';
import type { Facts } from '../journal/facts.ts';
import { countsIn, ownRecords } from '../records/earlier-things.ts';
import { say } from '../result/words/say.ts';
import type { HouseholdTask, LegalDate } from '../sessions/household-task.ts';
import type { Place } from '../sessions/place.ts';
import type { PlanSettings } from '../sessions/plan-settings.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { toKilometres } from '../units/distance.ts';
import type { CarCare, ItemCare } from './car-care.ts';
import { isCaredFor } from './cared-for.ts';
import { ownMinutes } from './own-minutes.ts';
import { garagePrice, homePrice, type PriceBook } from './price-book.ts';

/** What tasks are made from beside the care of their car. */
export interface TaskSources {
  readonly facts: Facts;
  readonly today: LocalDate;
  readonly settings: PlanSettings;
  /** The household's: what was paid in another one is no price here. */
  readonly currency: string;
  readonly places: readonly Place[];
  readonly book: PriceBook;
  /** By item, the first day on which its parts are at home; none where nothing is to be waited for. */
  readonly partsFrom: ReadonlyMap<string, LocalDate>;
  /** Keys of tasks that are pinned: they are tasks whatever is known of them. */
  readonly pinned: ReadonlySet<string>;
}

/** Everything that could be done once on a car: its items with a due date, its tests, and whatever is pinned. */
export function tasksOfCar(sources: TaskSources, care: CarCare): readonly HouseholdTask[] {
  const items = care.items.filter((one) => (one.window.state !== 'unknown' && isCaredFor(one)) || sources.pinned.has(taskKey({ kind: 'item', id: one.item.id })));
  const tests = sources.facts.ofCar(obligations, care.car.id).filter((one) => one.kind === 'roadworthiness-test' || sources.pinned.has(taskKey({ kind: 'obligation', id: one.id })));
  return [...items.map((one) => itemTask(sources, care, one)), ...tests.map((one) => testTask(sources, care, one))];
}

function itemTask(sources: TaskSources, care: CarCare, one: ItemCare): HouseholdTask {
  const { item, window } = one;
  const ref = { kind: 'item', id: item.id } as const;
  const { prices, unpriced, missing } = pricesOf(sources, care, one);
  const since = one.completions.at(-1)?.date ?? one.target?.since ?? null;
  const minutes = ownMinutes(item, ownRecords(care.records, care.earlier))?.minutes ?? null;
  return {
    ref,
    key: taskKey(ref),
    car: care.car.id,
    carName: care.car.name,
    name: item.name,
    minutes: minutes ?? sources.settings.unknownMinutes,
    minutesAssumed: minutes === null,
    access: item.access,
    lateMinorADay: sources.settings.lateMinorADay[item.harm],
    valueMinor: prices.size === 0 ? 0 : Math.min(...prices.values()),
    prices,
    unpriced,
    priceMissing: missing,
    dueDays: dueDaysOf(sources, care, one),
    countedFrom: since === null ? null : dayNumber(since),
    likely: window.likely,
    late: window.state === 'late',
    legal: certificateOf(one),
    partsFrom: sources.partsFrom.get(item.id) ?? null,
  };
}

function dueDaysOf({ today }: TaskSources, { use }: CarCare, { item, target, wear, window }: ItemCare): HouseholdTask['dueDays'] {
  if (window.state === 'unknown') return [];
  const metres = target?.metres ?? null;
  const reached = metres === null ? null : reachedOn(use.points, metres);
  const { usage } = use;
  const forecast = metres === null || usage === null ? null : (z: number) => dueDayAt(usage, toKilometres(metres), z);
  return nineDueDays({
    time: target?.date ?? null,
    printedDate: item.printedDate,
    distanceAt: reached === null ? forecast : () => dayNumber(reached),
    wear: wear?.span ?? null,
    unforeseen: dayNumber(today) + FORESEEABLE_DAYS,
  }) ?? [];
}

/** A certificate kept as an item: a new one in its last month keeps the day. */
function certificateOf({ item, target }: ItemCare): LegalDate | null {
  if (item.anchor.kind !== 'keep-date' || target?.date == null) return null;
  return { lastDay: target.date, opens: renewalOpens(target.date), notBefore: null };
}

/** An item that may be done at either is offered a garage only where somebody has said what one asks. */
function pricesOf({ places, book, currency }: TaskSources, { car, records: all, earlier }: CarCare, { item }: ItemCare): { readonly prices: ReadonlyMap<string, number>; readonly unpriced: readonly string[]; readonly missing: boolean } {
  const records = all.filter((record) => countsIn(currency, record, earlier));
  const atHome = homePrice(book, item, records);
  const atGarage = garagePrice(item, records);
  const taking = places.filter((place) => takes(place, car.id));
  const prices = taking.flatMap((place): (readonly [string, number])[] => {
    if (place.kind === 'home') return item.place === 'garage' ? [] : [[place.id, atHome.minor]];
    if (item.place === 'home' || (atGarage === null && item.place === 'either')) return [];
    return [[place.id, atGarage ?? 0]];
  });
  const unpriced = item.place === 'either' && atGarage === null ? taking.filter((place) => place.kind === 'garage').map((place) => place.id) : [];
  return { prices: new Map(prices), unpriced, missing: item.place === 'garage' ? atGarage === null : atHome.missing };
}

function takes(place: Place, car: string): boolean {
  return place.cars === null || place.cars.includes(car);
}

/** A test, or another duty that the keeper has pinned: done at a garage, by its last valid day. */
function testTask({ today, settings, places }: TaskSources, { car }: CarCare, duty: Obligation): HouseholdTask {
  const ref = { kind: 'obligation', id: duty.id } as const;
  const last = dayNumber(duty.lastValidDay);
  const began = duty.months === null ? null : addMonths(duty.lastValidDay, -duty.months);
  return {
    ref,
    key: taskKey(ref),
    car: car.id,
    carName: car.name,
    name: duty.name ?? say({ key: `obligation-${duty.kind}`, values: {} }),
    minutes: settings.unknownMinutes,
    minutesAssumed: true,
    access: [],
    lateMinorADay: settings.lateMinorADay.safety,
    valueMinor: duty.price ?? 0,
    prices: new Map(places.filter((place) => place.kind === 'garage' && takes(place, car.id)).map((place) => [place.id, duty.price ?? 0])),
    unpriced: [],
    priceMissing: duty.price === null,
    dueDays: Array.from({ length: 9 }, () => last),
    countedFrom: began === null ? null : dayNumber(began),
    likely: duty.lastValidDay,
    late: today > duty.lastValidDay,
    legal: {
      lastDay: duty.lastValidDay,
      opens: duty.keepsDate ? renewalOpens(duty.lastValidDay) : null,
      // Renewed by the day its term began, it would move nothing.
      notBefore: duty.keepsDate || began === null ? null : addDays(began, 1),
    },
    partsFrom: null,
  };
}
