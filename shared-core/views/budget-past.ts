import { dayNumber, daysBetween, earliest, later, type LocalDate } from '../calendar/local-date.ts';
import { limitTarget } from '../care/limit-target.ts';
import type { ServiceItem } from '../care/service-item.ts';
import { renewals } from '../care/renewal.ts';
import { cars, type Car } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import { reachedOn } from '../fleet/known-distance.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import type { BudgetHabits, UnplannedCost, WatchedCar } from '../ledger/budget-input.ts';
import { lots } from '../parts/lot.ts';
import { countsIn, earlierThings, ownRecordsOf } from '../records/earlier-things.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';
import type { CarCare, ItemCare } from './car-care.ts';

/** A price that was paid on a day. */
export type PastPrice = BudgetHabits['pastPrices'][number][number];

/** Tools last and deposits come back: neither is what a job costs. */
const NOT_OF_THE_JOB: ReadonlySet<string> = new Set(['tools', 'deposit']);
const DAYS_A_YEAR = 365.25;
/** Lateness beyond these says that something was forgotten, or done for another reason; fewer than LEAST_LAGS say no habit (ours, no source). */
const LAG_RANGE = { soonest: -90, latest: 120 };
const LEAST_LAGS = 5;

/** What the work of a record cost: its lines without tools and deposits, or its printed total where it has no lines; and what it took off the shelf, at what that had cost. Null where nothing is said. */
export function landedCost(facts: Facts, record: WorkRecord): number | null {
  const taken = record.lotsUsed.map(({ lot: id, quantity }) => {
    const lot = facts.get(lots, id);
    return lot?.paidMinor == null ? null : (lot.paidMinor * quantity) / lot.quantity;
  });
  const known = taken.filter((one) => one !== null);
  // What came off the shelf is in what the lots cost; its line counts only where nobody knows that.
  const lines = record.costs.filter((line) => !NOT_OF_THE_JOB.has(line.kind) && (line.kind !== 'shelf' || known.length === 0));
  const paid = record.costs.length === 0 ? record.printedTotalMinor : lines.reduce((sum, line) => sum + line.amountMinor, 0);
  if (paid === null && known.length === 0) return null;
  return Math.max(0, Math.round((paid ?? 0) + known.reduce((sum, minor) => sum + minor, 0)));
}

/** What an item cost at home or at a garage before, the oldest first: by the records whose only line it is, for only then the cost is its own. */
export function pastOfItem(facts: Facts, item: string, records: readonly WorkRecord[], place: WorkRecord['place']): readonly PastPrice[] {
  const [counts, earlier] = [facts.get(households, HOUSEHOLD_ID)?.currency ?? '', earlierThings(facts, records[0]?.car ?? '')];
  const alone = records.filter((record) => countsIn(counts, record, earlier) && record.place === place && record.lines.length === 1 && record.lines[0]?.item === item && record.lines[0].outcome !== 'not-done');
  return inOrder(alone.flatMap((record) => {
    const minor = landedCost(facts, record);
    return minor === null || minor === 0 ? [] : [{ on: record.date, minor }];
  }));
}

/** What an obligation cost before, the oldest first. */
export function pastOfObligation(facts: Facts, car: string, obligation: string): readonly PastPrice[] {
  const [counts, earlier] = [facts.get(households, HOUSEHOLD_ID)?.currency ?? '', earlierThings(facts, car)];
  return inOrder(facts.ofCar(renewals, car).filter((one) => countsIn(counts, one, earlier)).flatMap(({ obligation: of, on, paidMinor }) => (of === obligation && paidMinor !== null && paidMinor > 0 ? [{ on, minor: paidMinor }] : [])));
}

function inOrder(past: readonly PastPrice[]): readonly PastPrice[] {
  return [...past].sort((a, b) => (a.on === b.on ? a.minor - b.minor : a.on < b.on ? -1 : 1));
}

/** Days from due to done, of all that was done again after an interval; none where there is too little to tell. What is measured is done when it is worn. */
export function lagsOf(care: readonly CarCare[]): readonly number[] {
  const lags = care.flatMap((one) => one.items.flatMap((item) => lagsOfItem(one, item)));
  return lags.length < LEAST_LAGS ? [] : lags.sort((a, b) => a - b);
}

function lagsOfItem({ car, use }: CarCare, { item, completions }: ItemCare): readonly number[] {
  if (item.anchor.kind !== 'completion' || item.measure !== null) return [];
  const known = { points: use.points, usage: use.usage, firstRegistered: car.firstRegistered };
  return completions.slice(1).flatMap((done, at) => {
    const target = limitTarget(item, car, completions.slice(0, at + 1), known);
    const due = target === null ? null : earliest(target.date, target.metres === null ? null : reachedOn(use.points, target.metres));
    const lag = due === null ? null : daysBetween(due, done.date);
    return lag === null || lag < LAG_RANGE.soonest || lag > LAG_RANGE.latest ? [] : [lag];
  });
}

/**
 * What nobody had planned, by the records of all cars, those that left as well: what belongs to no service item. Of a record that has
 * both, as much as its lines without an item are of all its lines. What was written down from memory does not count: nobody
 * remembers what did not happen; nor does what an earlier keeper paid.
 */
export function unplannedOf(facts: Facts): readonly UnplannedCost[] {
  const own = facts.all(cars).flatMap((car) => ownRecordsOf(facts, car.id));
  return own.filter((record) => !record.reconstructed).flatMap((record) => {
    const cost = landedCost(facts, record);
    const share = record.lines.filter((line) => line.item === null).length / record.lines.length;
    return cost === null || share === 0 ? [] : [{ car: record.car, on: record.date, minor: Math.round(cost * share) }];
  });
}

/** For how long each car's work has been written down: from its purchase or first record, whichever is later, until today or until it left. */
export function watchedCars(facts: Facts, today: LocalDate): readonly WatchedCar[] {
  const left = new Map(facts.all(departures).map((one) => [one.car, one.on]));
  return facts.all(cars).map((car) => {
    const until = left.get(car.id) ?? today;
    return { car: car.id, years: Math.max(0, dayNumber(until) - dayNumber(watchedFrom(facts, car) ?? until)) / DAYS_A_YEAR };
  });
}

function watchedFrom(facts: Facts, car: Car): LocalDate | null {
  const records = facts.ofCar(workRecords, car.id).filter((record) => !record.reconstructed).map((record) => record.date);
  const paid = facts.ofCar(renewals, car.id).map((renewal) => renewal.on);
  const first = earliest(...records, ...paid);
  return first === null || car.keptSince === null ? first : later(first, car.keptSince);
}

/** All prices of like things that were paid again: what growth and spread are learned from. */
export function pastPricesOf(facts: Facts, care: readonly CarCare[], obligationsOf: (car: string) => readonly string[]): BudgetHabits['pastPrices'] {
  const items = (one: CarCare, item: ServiceItem) => (['home', 'garage'] as const).map((place) => pastOfItem(facts, item.id, one.records, place));
  const lists = care.flatMap((one) => [...one.items.flatMap(({ item }) => items(one, item)), ...obligationsOf(one.car.id).map((id) => pastOfObligation(facts, one.car.id, id))]);
  return lists.filter((list) => list.length > 1);
}
