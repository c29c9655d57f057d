import { addDays, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { PlanInstanceAsWritten } from '../../shared-core/sessions/plan-instance.ts';
import { diceOf, type Dice } from '../shared-core/parts/order-seeds.ts';

type Written = PlanInstanceAsWritten;

/** How large a plan to make, and how full the days at home get. */
export interface PlanSize {
  readonly tasks: number;
  readonly days: number;
  readonly cars: number;
  readonly homeMinutes: number;
  /** What a minute at the garage costs; 0 where its price is in the costs of the tasks alone. */
  readonly garageMinuteMinor: number;
}

/** What a large household asks: half a year of Saturdays. */
export const LARGE_PLAN: PlanSize = { tasks: 100, days: 26, cars: 8, homeMinutes: 240, garageMinuteMinor: 0 };

/** Days from the first Saturday on which the horizon begins. */
const FIRST_DAY = '2027-01-09' as LocalDate;

/**
 * A large plan from a seed, its costs made as the design makes them: nine due dates of each task, what is lost by doing it early, what a late
 * day costs by its kind (safety, damage, comfort), and what the garage asks above home. Some tasks must be done by a legal date, some only at
 * a garage; what lies under the same cover shares its access; some Saturdays are holidays, some cars are away.
 */
export function largePlan(seed: number, size: PlanSize = LARGE_PLAN): Written {
  const dice = diceOf(seed);
  const days = Array.from({ length: size.days }, (_, i) => addDays(FIRST_DAY, 7 * i));
  const cars = Array.from({ length: size.cars }, (_, i) => ({ id: `c${i + 1}`, closed: dice.chance(25) ? [dice.one(days), dice.one(days)] : [] }));
  const access = cars.flatMap(({ id: car }) => ['undertray', 'wheels', 'airbox'].slice(0, dice.whole(1, 3)).map((id) => ({ car, id, minutes: 5 * dice.whole(2, 7) })));
  const places: Written['places'] = [
    { id: 'home', openingMinor: 1500, minutesADay: size.homeMinutes, closed: days.filter(() => dice.chance(10)) },
    { id: 'garage', openingMinor: 4000, minutesADay: 480, minuteMinor: size.garageMinuteMinor, closed: days.filter(() => dice.chance(5)) },
  ];
  const tasks = Array.from({ length: size.tasks }, (_, i) => task(dice, i, days, access.filter(({ car }) => car === `c${(i % size.cars) + 1}`)));
  return { days, places, tasks, access, cars };
}

function task(dice: Dice, i: number, days: readonly LocalDate[], reach: readonly { car: string; id: string }[]): Written['tasks'][number] {
  const due = dates(dice, days.length);
  const worth = dice.whole(10, 300) * 100;
  const life = dice.one([180, 365, 365, 730, 1095]);
  const lateDay = dice.one([200, 60, 60, 10]);
  const extra = dice.one([0, 1500, 3000, 6000, 12_000]) + dice.whole(0, 9) * 100;
  const onlyGarage = dice.chance(12);
  const legal = dice.chance(6) ? dice.whole(4, days.length - 1) : null;
  const home = days.map((_, at) => wait(due, 7 * at, worth, life, lateDay));
  const allowed = (costs: readonly number[]) => costs.map((cost, at) => (legal !== null && at > legal ? null : cost));
  const past = 7 * days.length;
  return {
    id: `t${i + 1}`,
    car: reach[0]?.car ?? 'c1',
    minutes: 5 * dice.whole(2, 18),
    access: reach.filter(() => dice.chance(45)).map(({ id }) => id),
    mustDo: legal !== null,
    leftUndoneMinor: wait(due, past, worth, life, lateDay) + (mean(due) < past ? 1500 : 0),
    costMinor: onlyGarage ? { garage: allowed(home) } : { home: allowed(home), garage: allowed(home.map((cost) => cost + extra)) },
  };
}

/** Nine equally likely due days, counted from the first candidate day; some lie before it: already late. */
function dates(dice: Dice, weeks: number): readonly number[] {
  const likely = dice.whole(-40, 7 * weeks + 90);
  const spread = dice.one([0, 7, 14, 30, 60]);
  return [-1.6, -1, -0.6, -0.3, 0, 0.3, 0.6, 1, 1.6].map((part) => likely + Math.round(part * spread));
}

function wait(due: readonly number[], day: number, worth: number, life: number, lateDay: number): number {
  const early = (worth * mean(due.map((x) => Math.max(0, x - day)))) / Math.max(30, life);
  return Math.round(early + lateDay * mean(due.map((x) => Math.max(0, day - Math.max(x, 0)))));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
