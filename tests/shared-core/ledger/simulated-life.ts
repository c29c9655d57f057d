import { addDays, dayNumber, fromDayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';

/**
 * Invented households and what they really paid. It shares no line with the budget: its own chance, its own use of cars (season, months that
 * differ, years that drift, changes of job), prices that rise and differ from time to time, a keeper who is now early and now late, and repairs
 * that nobody planned. All figures are invented.
 */
export interface SimulatedLife {
  readonly seed: number;
  readonly cars: readonly SimulatedCar[];
  readonly things: readonly SimulatedThing[];
  readonly paid: readonly SimulatedPayment[];
  /** What a car's instrument showed, in km. */
  readonly seen: readonly { readonly car: string; readonly day: number; readonly km: number }[];
}

export interface SimulatedCar {
  readonly id: string;
  readonly registered: number;
}

/** Something that comes again: by months, by km, or both. */
export interface SimulatedThing {
  readonly id: string;
  readonly car: string;
  readonly duty: boolean;
  readonly months: number | null;
  readonly km: number | null;
  readonly place: 'home' | 'garage';
  /** Bought by an offer, not priced as work. */
  readonly parts: boolean;
  /** What the keeper has entered for it; null: only the records tell. */
  readonly enteredMinor: number | null;
}

export interface SimulatedPayment {
  readonly car: string;
  readonly day: number;
  readonly minor: number;
  /** The things paid for together; none: a repair that nobody planned. */
  readonly things: readonly string[];
}

/** The day on which budgets are asked for, and how far the truth goes on. */
export const ASKED_ON = '2026-11-25' as LocalDate;
export const TRUE_UNTIL = '2028-11-25' as LocalDate;
const ASKED = dayNumber(ASKED_ON);
const END = dayNumber(TRUE_UNTIL);

interface Kind {
  readonly name: string;
  readonly months: readonly number[];
  readonly km: readonly number[];
  readonly minor: readonly [number, number];
  readonly spread: number;
}

const KINDS: readonly Kind[] = [
  { name: 'engine-oil', months: [12], km: [10_000, 15_000, 20_000], minor: [5000, 22_000], spread: 0.12 },
  { name: 'cabin-filter', months: [12, 24], km: [], minor: [1500, 6000], spread: 0.15 },
  { name: 'air-filter', months: [], km: [30_000, 45_000], minor: [1800, 5000], spread: 0.12 },
  { name: 'brake-fluid', months: [24], km: [], minor: [5000, 9000], spread: 0.1 },
  { name: 'front-pads', months: [], km: [28_000, 40_000, 55_000], minor: [11_000, 32_000], spread: 0.2 },
  { name: 'tyres', months: [], km: [35_000, 45_000], minor: [28_000, 62_000], spread: 0.18 },
  { name: 'belt', months: [72, 96], km: [100_000], minor: [38_000, 85_000], spread: 0.15 },
  { name: 'coolant', months: [48, 60], km: [], minor: [7000, 15_000], spread: 0.12 },
  { name: 'battery', months: [60], km: [], minor: [8000, 19_000], spread: 0.15 },
  { name: 'plugs', months: [], km: [45_000, 60_000], minor: [5000, 14_000], spread: 0.15 },
  { name: 'wipers', months: [12, 18], km: [], minor: [1500, 4500], spread: 0.2 },
];
const DUTIES: readonly Kind[] = [
  { name: 'test', months: [12], km: [], minor: [4500, 9000], spread: 0.04 },
  { name: 'tax', months: [12], km: [], minor: [3000, 36_000], spread: 0.03 },
  { name: 'insurance', months: [12], km: [], minor: [22_000, 70_000], spread: 0.09 },
];

/** Chance of its own: not that of the budget. */
class Dice {
  private a: number;
  private b = 0x9e3779b9;
  private c = 0x243f6a88;
  private count = 1;

  constructor(seed: number) {
    this.a = seed | 0;
    for (let skipped = 0; skipped < 20; skipped += 1) this.next();
  }

  /** Source: "sfc32" (from memory); the tests of coverage hold its use. */
  next(): number {
    const sum = (((this.a + this.b) | 0) + this.count) | 0;
    this.count = (this.count + 1) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = ((this.c << 21) | (this.c >>> 11)) + sum;
    return (sum >>> 0) / 2 ** 32;
  }

  /** By summing twelve: near enough to normal, and another way than the budget's. */
  normal(): number {
    let sum = -6;
    for (let at = 0; at < 12; at += 1) sum += this.next();
    return sum;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1));
  }

  one<Value>(list: readonly Value[]): Value | undefined {
    return list[Math.floor(this.next() * list.length)];
  }

  /** Days until the next of what comes so often a year. */
  wait(aYear: number): number {
    return (-Math.log(1 - this.next()) / aYear) * 365.25;
  }
}

/** A household's whole life by its seed, past and to come. */
export function simulatedLife(seed: number): SimulatedLife {
  const dice = new Dice(seed * 7919);
  const cars = Array.from({ length: dice.whole(2, 4) }, (_, at): SimulatedCar => ({ id: `car${at}`, registered: dayNumber('2020-11-25' as LocalDate) - dice.whole(0, 1100) }));
  const household = { bundles: dice.next() < 0.3, lag: dice.between(-5, 25), lagSpread: dice.between(3, 20), repairs: dice.between(0.25, 1.2), prices: pricesOver(dice) };
  const lives = cars.map((car) => carLife(dice, car, household));
  return { seed, cars, things: lives.flatMap((one) => one.things), paid: lives.flatMap((one) => one.paid).sort((a, b) => a.day - b.day), seen: lives.flatMap((one) => one.seen) };
}

/** The level of prices on each day: a rise of its own each year. */
function pricesOver(dice: Dice): (day: number) => number {
  const usual = 0.025 + 0.015 * dice.normal();
  const levels = [0];
  for (let year = 0; year < 14; year += 1) levels.push((levels.at(-1) ?? 0) + usual + 0.015 * dice.normal());
  const first = dayNumber('2017-01-01' as LocalDate);
  const at = (day: number) => {
    const years = (day - first) / 365.25;
    const whole = Math.floor(years);
    return (levels[whole] ?? 0) + (years - whole) * ((levels[whole + 1] ?? 0) - (levels[whole] ?? 0));
  };
  return (day) => Math.exp(at(day) - at(ASKED));
}

interface HouseholdWays {
  readonly bundles: boolean;
  readonly lag: number;
  readonly lagSpread: number;
  readonly repairs: number;
  readonly prices: (day: number) => number;
}

interface CarLife {
  readonly things: SimulatedThing[];
  readonly paid: SimulatedPayment[];
  readonly seen: { readonly car: string; readonly day: number; readonly km: number }[];
}

function carLife(dice: Dice, car: SimulatedCar, ways: HouseholdWays): CarLife {
  const km = drivenOver(dice, car.registered);
  const life: CarLife = { things: [], paid: [], seen: [] };
  const picked = KINDS.filter(() => dice.next() < 0.8);
  const due = [...picked.map((kind) => ({ kind, duty: false })), ...DUTIES.map((kind) => ({ kind, duty: true }))].map(({ kind, duty }) => {
    const place = duty || dice.next() < 0.6 ? 'garage' as const : 'home' as const;
    return {
      kind, duty, place, parts: place === 'home' && dice.next() < 0.5,
      id: `${car.id}-${kind.name}`, months: dice.one(kind.months) ?? null, km: dice.one(kind.km) ?? null, minor: dice.between(...kind.minor), from: car.registered,
      lastDay: car.registered, done: [] as { day: number; minor: number }[],
    };
  });
  for (const one of due) {
    const limit = () => (one.duty ? addMonthsTo(one.from, one.months ?? 12) : Math.min(one.months === null ? Infinity : addMonthsTo(one.lastDay, one.months), one.km === null ? Infinity : km.reaches(km.on(one.lastDay) + one.km)));
    for (;;) {
      const dueOn = limit();
      if (!(dueOn < END + 400)) break;
      const lag = one.duty ? 0 : Math.round(ways.lag + ways.lagSpread * dice.normal());
      const day = Math.max(one.lastDay + 20, dueOn + lag);
      one.done.push({ day, minor: Math.round(one.minor * ways.prices(day) * Math.exp(one.kind.spread * dice.normal())) });
      one.lastDay = day;
      one.from = dueOn;
    }
  }
  // Who goes to the garage for two things at once is given one sum.
  const singles = due.flatMap((one) => one.done.map((done) => ({ one, ...done }))).sort((a, b) => a.day - b.day);
  const taken = new Set<object>();
  for (const visit of singles) {
    if (taken.has(visit)) continue;
    const beside = ways.bundles && !visit.one.duty && visit.one.place === 'garage' ? singles.filter((other) => !taken.has(other) && other.one !== visit.one && !other.one.duty && other.one.place === 'garage' && other.day === visit.day) : [];
    for (const done of [visit, ...beside]) taken.add(done);
    life.paid.push({ car: car.id, day: visit.day, minor: [visit, ...beside].reduce((sum, done) => sum + done.minor, 0), things: [visit, ...beside].map((done) => done.one.id) });
  }
  repairs(dice, car, ways, life);
  for (const one of due) {
    // Never done, or often done beside others: then the keeper has asked and entered a price.
    const alone = life.paid.some((paid) => paid.day < ASKED && paid.day >= WRITTEN_FROM && paid.things.length === 1 && paid.things[0] === one.id);
    const entered = !alone || dice.next() < 0.5;
    life.things.push({
      id: one.id, car: car.id, duty: one.duty, months: one.months, km: one.km, place: alone || one.parts ? one.place : 'garage', parts: one.parts,
      enteredMinor: entered || one.parts ? Math.round(one.minor * Math.exp(0.08 * dice.normal())) : null,
    });
  }
  for (let day = car.registered + dice.whole(5, 60); day < ASKED; day += dice.whole(25, 130)) life.seen.push({ car: car.id, day, km: Math.round(km.on(day)) });
  return life;
}

/** The household began to write things down six years ago. */
export const WRITTEN_FROM = dayNumber('2020-11-25' as LocalDate);

function repairs(dice: Dice, car: SimulatedCar, ways: HouseholdWays, life: CarLife): void {
  const aYear = ways.repairs * Math.exp(0.4 * dice.normal());
  for (let day = car.registered + dice.wait(aYear); day < END + 30; day += dice.wait(aYear)) {
    const on = Math.floor(day);
    life.paid.push({ car: car.id, day: on, minor: Math.round(14_000 * ways.prices(on) * Math.exp(0.85 * dice.normal())), things: [] });
  }
}

/** How far a car has gone by each day: about so much a year, more in summer, months that differ, years that drift, and perhaps a change for good. */
function drivenOver(dice: Dice, from: number): { readonly on: (day: number) => number; readonly reaches: (km: number) => number } {
  const aDay = (11_500 * Math.exp(0.4 * dice.normal())) / 365.25;
  const summer = dice.between(0, 0.25);
  const change = dice.next() < 0.35 ? { day: dice.whole(from, END), factor: Math.exp(0.45 * dice.normal()) } : null;
  const sums = [0];
  let drift = 0;
  let month = 1;
  for (let at = 0; from + at < END + 500; at += 1) {
    if (at % 365 === 0) drift += 0.12 * dice.normal();
    if (at % 30 === 0) month = Math.exp(0.3 * dice.normal() - 0.045);
    const season = 1 + summer * Math.cos((2 * Math.PI * (from + at - 195)) / 365.25);
    sums.push((sums.at(-1) ?? 0) + aDay * Math.exp(drift) * month * season * (change !== null && from + at >= change.day ? change.factor : 1));
  }
  return {
    on: (day) => sums[Math.max(0, Math.min(sums.length - 1, day - from))] ?? 0,
    reaches: (km) => {
      const at = sums.findIndex((sum) => sum >= km);
      return at < 0 ? Infinity : from + at;
    },
  };
}

/** Months on, by the calendar, the end of a shorter month for a day it lacks. */
function addMonthsTo(day: number, months: number): number {
  const date = new Date(day * 86_400_000);
  const target = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + months, 1));
  const last = new Date(Date.UTC(target.getUTCFullYear(), target.getUTCMonth() + 1, 0)).getUTCDate();
  return dayNumber(fromDayNumber(Math.round(Date.UTC(target.getUTCFullYear(), target.getUTCMonth(), Math.min(last, date.getUTCDate())) / 86_400_000)));
}

/** What was really paid from a day up to another, of a car or of all. */
export function reallyPaid({ paid }: SimulatedLife, from: LocalDate, to: LocalDate, car: string | null = null): number {
  return paid.filter((one) => one.day >= dayNumber(from) && one.day < dayNumber(to) && (car === null || one.car === car)).reduce((sum, one) => sum + one.minor, 0);
}

/** The day two years before another. */
export const twoYearsBefore = (day: LocalDate) => addDays(day, -731);
