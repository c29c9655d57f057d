import { z } from 'zod';
import { addMonths } from '../calendar/add-months.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { addDays, asDate, later, yearOf, type LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { findCar, findHousehold, sameName } from '../fleet/find-car.ts';
import type { Household } from '../fleet/household.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { parseRequest } from '../result/parse-request.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { proseFor } from '../result/words/american-prose.ts';
import type { DistanceUnit } from '../units/distance.ts';
import type { Limit } from './limit.ts';
import { limitTarget } from './limit-target.ts';
import { historySchema, serviceItems, serviceItemSchema, type Anchor, type ServiceItem } from './service-item.ts';
import { addItem } from './set-item.ts';
import { suggestedHistory } from './suggested-history.ts';
import { startingSet, startingSetKeySchema, suggestedSet, type SetItem, type SetLimit, type StartingSet } from './starting-set.ts';

/** What of a set is taken, and what is known of the time before. */
export const setChoice = {
  /** Keys of the set's items that the car does not have. */
  omit: z.array(idSchema).max(100).default([]),
  /** Never done for a car kept from new and no older than a year, else unknown, unless given. */
  history: historySchema.optional(),
  /** Dates printed on the things themselves, by the item's key. */
  printedDates: z.record(idSchema, dateSchema).default({}),
} as const;

const startRequest = z.strictObject({
  car: z.string().min(1).max(80),
  /** The set that fits the car unless given. */
  set: startingSetKeySchema.optional(),
  ...setChoice,
});
type StartRequest = z.infer<typeof startRequest>;

/** What a car's schedule was started with. */
export const startedItems = z.object({
  items: z.array(serviceItemSchema),
  /** Names of the set's items that the car already had. */
  kept: z.array(z.string()),
  /** Items, by id, taken to be never done though their first date has passed: to be asked about first. */
  past: z.array(z.string()),
});

/**
 * Starts a car's schedule from the set of its kind, all in one step. Every interval is marked as common practice and stands
 * unconfirmed; an item whose name the car already has is left as it is.
 */
export const startItems = change({
  request: startRequest,
  reply: startedItems,
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const key = request.set ?? suggestedSet(car.value);
    if (key === null) return refuse('set-not-known', { car: car.value.name }, ['set']);
    const set = proseFor(household.value.locale, startingSet(key));
    const sound = checkKeys(set, request);
    return sound.ok ? startFrom(facts, car.value, household.value, set, request, moment) : sound;
  },
});

function checkKeys(set: StartingSet, request: StartRequest): Result<null> {
  const strange = request.omit.find((key) => !set.items.some((item) => item.key === key));
  if (strange !== undefined) return refuse('not-in-set', { item: strange, set: set.name }, ['omit']);
  const unprinted = Object.keys(request.printedDates).find((key) => !set.items.some((item) => item.key === key && item.printedDate));
  return unprinted === undefined ? ok(null) : refuse('not-printed', { item: unprinted }, ['printedDates', unprinted]);
}

function startFrom(facts: Facts, car: Car, household: Household, set: StartingSet, request: StartRequest, moment: Moment) {
  const there = facts.ofCar(serviceItems, car.id).map((item) => item.name);
  const wanted = set.items.filter((item) => !request.omit.includes(item.key));
  const has = (item: SetItem) => there.some((name) => sameName(name, item.name));
  const history = request.history ?? suggestedHistory(car, moment.today);
  const entries: NewEntry[] = [];
  const items: ServiceItem[] = [];
  for (const item of wanted.filter((one) => !has(one))) {
    const asked = parseRequest(addItem.request, { ...proposal(item, car, household, history, moment.today), source: set.source, history, printedDate: request.printedDates[item.key] ?? null });
    if (!asked.ok) return asked;
    const decided = addItem.decide(facts, asked.value, moment);
    if (!decided.ok) return decided;
    entries.push(...decided.value.entries);
    items.push(decided.value.reply.item);
  }
  if (items.length === 0) return refuse('nothing-to-start', { set: set.name });
  const past = items.filter((item) => firstDatePassed(item, car, moment.today)).map((item) => item.id);
  return ok({ entries, reply: { items, kept: wanted.filter(has).map((item) => item.name), past } });
}

/** An item of a set as it is asked for on a car, apart from what is known of it. */
function proposal(item: SetItem, car: Car, household: Household, history: ServiceItem['history'], today: LocalDate) {
  const { name, work, harm, minutes, place, access } = item;
  return { car: car.id, name, work, harm, minutes, place, access, interval: { first: limitIn(item.first, car.unit), repeat: limitIn(item.repeat, car.unit) }, anchor: anchorOf(item, household, startOf(car, history, today)), confirmed: false, measure: measureOf(item) };
}

function measureOf({ measure }: SetItem): ServiceItem['measure'] {
  return measure === null ? null : { kind: measure, name: null, places: [], limit: null, way: null };
}

function limitIn({ months, distance }: SetLimit, unit: DistanceUnit): Limit {
  return { months, distance: distance === null ? null : { value: distance[unit], unit } };
}

const HALF_A_YEAR = 6;
const MONTHS_A_YEAR = 12;

/**
 * The day from which an item of the calendar can have been left undone: its first date is the next of its days from then on.
 * Nobody knows: a year ago, so that its last day stands until it is answered for, and the season that has begun is not skipped.
 */
function startOf(car: Car, history: ServiceItem['history'], today: LocalDate): LocalDate {
  const aYearAgo = addDays(addMonths(today, -MONTHS_A_YEAR), 1);
  const known = history === 'never-done' ? car.firstRegistered : history === 'from-purchase' ? car.keptSince : null;
  return known === null ? aYearAgo : later(aYearAgo, known);
}

/** The next such day of the year from a day on. */
function anchorOf({ anchor }: SetItem, { hemisphere }: Household, from: LocalDate): Anchor {
  if (anchor === 'completion') return { kind: 'completion' };
  const southern = hemisphere === 'south' ? HALF_A_YEAR : 0;
  const days = [-1, 0, 1, 2].map((years) => addMonths(asDate(yearOf(from) + years, anchor.month, anchor.day), southern));
  return { kind: 'calendar', firstDate: days.find((date) => date >= from) ?? from };
}

function firstDatePassed(item: ServiceItem, car: Car, today: LocalDate): boolean {
  if (item.history !== 'never-done' || item.printedDate !== null) return false;
  const target = limitTarget(item, car, [], { points: [], usage: null, firstRegistered: car.firstRegistered });
  return target !== null && target.date !== null && target.date < today;
}
