import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';
import { diceOf, type Dice } from '../parts/order-seeds.ts';

type Written = PlanInstanceAsWritten;
type WrittenTask = Written['tasks'][number];

/** How large and how tight a seeded plan is. */
export interface PlanRange {
  readonly days: readonly [number, number];
  readonly places: readonly [number, number];
  readonly cars: readonly [number, number];
  readonly tasks: readonly [number, number];
  readonly minutesADay: readonly number[];
  /** How many cells in a hundred are not allowed, and how many tasks in a hundred must be done. */
  readonly notAllowed: number;
  readonly mustDo: number;
}

/** At most so many ways to place the tasks, so that all of them can be tried. */
const MOST_WAYS = 200_000;

const SMALL: PlanRange = { days: [1, 4], places: [1, 3], cars: [1, 3], tasks: [3, 8], minutesADay: [60, 90, 90, 120, 300], notAllowed: 25, mustDo: 15 };
/** What the second solver still proves in a second or so. */
const MIDDLE: PlanRange = { days: [5, 7], places: [2, 3], cars: [2, 4], tasks: [12, 18], minutesADay: [120, 160, 200, 300], notAllowed: 20, mustDo: 8 };

/** A plan of at most eight tasks from a seed, everything awkward about: few enough ways to try them all. */
export function smallPlan(seed: number): Written {
  const dice = diceOf(seed);
  const plan = seededPlan(dice, SMALL);
  const tasks = [...plan.tasks];
  while (waysOf(tasks) > MOST_WAYS) tasks.splice(dice.whole(0, tasks.length - 1), 1);
  return { ...plan, tasks };
}

/** A plan of 12 to 18 tasks from a seed, too many ways to try. */
export function middlePlan(seed: number): Written {
  return seededPlan(diceOf(seed), MIDDLE);
}

function waysOf(tasks: readonly WrittenTask[]): number {
  return tasks.reduce((ways, task) => ways * (1 + Object.values(task.costMinor).flat().filter((cost) => cost !== null).length), 1);
}

function seededPlan(dice: Dice, range: PlanRange): Written {
  const days = daysOf(dice, dice.whole(...range.days));
  const places = ['home', 'garage', 'hill'].slice(0, dice.whole(...range.places)).map((id) => place(dice, id, days, range));
  const cars = Array.from({ length: dice.whole(...range.cars) }, (_, i) => `c${i + 1}`);
  const access = cars.flatMap((car) => ['airbox', 'wheels', 'tray'].slice(0, dice.whole(0, 3)).map((id) => ({ car, id, minutes: dice.one([0, 10, 25, 40]) })));
  const tasks = Array.from({ length: dice.whole(...range.tasks) }, (_, i) => task(dice, `t${i + 1}`, { days, places, access, car: dice.one(cars), range }));
  const closed = cars.filter(() => dice.chance(30)).map((id) => ({ id, closed: [...days.filter(() => dice.chance(35)), ...(dice.chance(30) ? [addDays('2029-01-06' as LocalDate, 7)] : [])] }));
  const neverAll = dice.chance(45) ? [dice.chance(8) ? [dice.one(cars)] : dice.chance(15) ? [...cars, 'c9'] : cars.slice(0, Math.max(2, cars.length - dice.whole(0, 1)))] : [];
  const gone = neverAll.length === 0 ? [] : cars.filter(() => dice.chance(35)).map((id) => ({ id, away: days.filter(() => dice.chance(40)) }));
  const unfree = cars.flatMap((id) => {
    const found = [...closed, ...gone].filter((one) => one.id === id);
    return found.length === 0 ? [] : [Object.assign({}, ...found) as NonNullable<Written['cars']>[number]];
  });
  return { days, places, tasks, ...(access.length === 0 && dice.chance(50) ? {} : { access }), ...(unfree.length === 0 && dice.chance(50) ? {} : { cars: unfree }), ...(neverAll.length === 0 ? {} : { neverAll }) };
}

/** Saturdays with holes; now and then not in the order of the calendar. */
function daysOf(dice: Dice, count: number): LocalDate[] {
  let week = 0;
  const days = Array.from({ length: count }, () => addDays('2027-01-09' as LocalDate, 7 * (week += dice.whole(1, 2))));
  return dice.chance(15) ? days.reverse() : days;
}

function place(dice: Dice, id: string, days: readonly LocalDate[], range: PlanRange): Written['places'][number] {
  const minutesOn = Object.fromEntries(days.filter(() => dice.chance(15)).map((date) => [date, dice.one([0, 45, 150, 400])]));
  return {
    ...{ id, openingMinor: dice.one([0, 400, 1500, 2500]), minutesADay: dice.one(range.minutesADay) },
    ...(Object.keys(minutesOn).length === 0 ? {} : { minutesOn }),
    ...(dice.chance(50) ? { minuteMinor: dice.one([0, 2, 7]) } : {}),
    ...(dice.chance(40) ? { closed: days.filter(() => dice.chance(25)) } : {}),
  };
}

interface About {
  readonly days: readonly LocalDate[];
  readonly places: Written['places'];
  readonly access: readonly { readonly car: string; readonly id: string }[];
  readonly car: string;
  readonly range: PlanRange;
}

function task(dice: Dice, id: string, { days, places, access, car, range }: About): WrittenTask {
  const best = dice.whole(0, days.length - 1);
  const slope = dice.one([0, 40, 150, 600]);
  const cost = (at: number) => (dice.chance(range.notAllowed) ? null : Math.abs(at - best) * slope + dice.one([0, 0, 1, 250]));
  const there = places.filter(() => dice.chance(80));
  const reach = access.filter((one) => one.car === car && dice.chance(50)).map((one) => one.id);
  return {
    ...{ id, car, minutes: dice.one([0, 10, 25, 40, 60, 90]) },
    ...(reach.length === 0 && dice.chance(50) ? {} : { access: reach }),
    ...(dice.chance(range.mustDo) ? { mustDo: true } : {}),
    leftUndoneMinor: dice.one([0, 300, 1200, 2600, 5000, 8000]),
    costMinor: Object.fromEntries(there.map((one) => [one.id, days.map((_, at) => cost(at))])),
  };
}
