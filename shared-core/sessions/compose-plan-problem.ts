import { addDays, dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { accessNamed } from './access-group.ts';
import { isAway } from './car-days.ts';
import type { HouseholdTask } from './household-task.ts';
import { longerDays } from './longer-days.ts';
import { openDays } from './open-days.ts';
import type { Place } from './place.ts';
import type { PlanInstance, PlanPlace, PlanTask } from './plan-instance.ts';
import type { LeftTerms, PlanInput, PlanProblem, TaskTerms } from './plan-problem.ts';
import { taskKey } from './task-ref.ts';
import { waitingCost } from './waiting-cost.ts';
import { minutesOf, whyNotThere } from './why-not-there.ts';

/**
 * The bare problem of a household: its candidate days from today to the horizon, the places with what they ask, and each task that it
 * could be worth doing. Pinned tasks may stand on their own day and place only, and must.
 */
export function composePlanProblem(input: PlanInput): PlanProblem {
  const lastDay = addDays(input.today, input.horizonDays);
  const days = candidateDays(input, lastDay);
  const pins = pinsOf(input);
  const wanted = wantedKeys(input, lastDay, pins);
  const tasks = input.tasks.filter((task) => wanted.has(task.key));
  const left = new Map(tasks.map((task) => [task.key, leftTerms(input, task, lastDay, wanted)]));
  const planned = tasks.map((task) => planTask(input, task, { days, lastDay, pin: pins.get(task.key) ?? null, leftMinor: left.get(task.key)?.totalMinor ?? 0 }));
  const instance: PlanInstance = {
    days: [...days],
    places: input.places.map(({ place }) => planPlace(input, place, days, planned)),
    tasks: planned,
    access: accessOf(input, tasks),
    cars: carsAway(input, days),
    neverAll: input.everyday.length === 0 ? [] : [[...input.everyday]],
  };
  return { input, lastDay, instance, tasks: new Map(tasks.map((task) => [task.key, task])), left };
}

/** What a task costs on a day at a place, whether or not it is allowed there; the price counts as nothing where none is known. */
export function taskTerms(input: PlanInput, task: HouseholdTask, day: LocalDate, place: string): TaskTerms {
  const cheapest = Math.min(...task.prices.values());
  const priceMinor = task.prices.size === 0 ? 0 : (task.prices.get(place) ?? cheapest) - cheapest;
  const { earlyMinor, lateMinor, earlyDays, lateDays } = waitingCost(task, dayNumber(day), dayNumber(input.today));
  return { priceMinor, earlyMinor, lateMinor, totalMinor: priceMinor + earlyMinor + lateMinor, earlyDays, lateDays };
}

/** Whether a task must be done within the horizon by law; what is late by law must be done too, the sooner the better. */
export function isLegalNow(task: HouseholdTask, lastDay: LocalDate): boolean {
  return task.legal !== null && task.legal.lastDay <= lastDay;
}

interface Pin {
  readonly day: LocalDate;
  readonly place: string;
}

function pinsOf(input: PlanInput): ReadonlyMap<string, Pin> {
  return new Map(input.pinned.flatMap(({ day, place, tasks }) => tasks.map((ref) => [taskKey(ref), { day, place }] as const)));
}

/** Days on which some place is open, and those of pinned sessions, however far. */
function candidateDays(input: PlanInput, lastDay: LocalDate): readonly LocalDate[] {
  const open = input.places.flatMap(({ place }) =>
    openDays({ place, stretches: input.placeDays.filter((one) => one.place === place.id), workWeekdays: input.settings.workWeekdays, today: input.today }, input.today, lastDay));
  return [...new Set([...open, ...input.pinned.map((one) => one.day)])].sort();
}

/**
 * What could be worth doing: leaving it costs something, it must be done, or it is pinned; and its partner in a pair, where that one is
 * to be done within the horizon anyway.
 */
function wantedKeys(input: PlanInput, lastDay: LocalDate, pins: ReadonlyMap<string, Pin>): ReadonlySet<string> {
  const anyway = new Set(input.tasks.filter((task) => pins.has(task.key) || isLegalNow(task, lastDay) || (task.likely !== null && task.likely <= lastDay) || task.late).map((task) => task.key));
  const paired = input.pairs.flatMap(({ when, also }) => [[when, also], [also, when]] as const).filter(([one]) => anyway.has(taskKey(one))).map(([, other]) => taskKey(other));
  const costly = input.tasks.filter((task) => leftTerms(input, task, lastDay, anyway).totalMinor > 0).map((task) => task.key);
  return new Set([...input.asked, ...anyway, ...paired, ...costly]);
}

/**
 * Lateness just past the horizon; where it is likely due within, the cheapest way to begin it comes on top, an opening and the minutes
 * that a place charges for: these must be paid one day, and what is late is not left because they are dear. Worth doing beside another,
 * the opening that this spares.
 */
function leftTerms(input: PlanInput, task: HouseholdTask, lastDay: LocalDate, wanted: ReadonlySet<string>): LeftTerms {
  const { lateMinor, lateDays } = waitingCost(task, dayNumber(lastDay) + 1, dayNumber(input.today));
  const possible = input.places.flatMap(({ place }) => (task.prices.has(place.id) ? [place] : []));
  const cheapest = leastOf(possible.map((place) => place.openingMinor));
  const begun = leastOf(possible.map((place) => place.openingMinor + task.minutes * place.minuteMinor));
  const due = task.late || (task.likely !== null && task.likely <= lastDay);
  const openingMinor = Math.max(due ? begun : 0, ...pairSavings(input, task, wanted, cheapest));
  return { lateMinor, openingMinor, totalMinor: lateMinor + openingMinor, lateDays };
}

function leastOf(sums: readonly number[]): number {
  return sums.length === 0 ? 0 : Math.min(...sums);
}

function pairSavings(input: PlanInput, task: HouseholdTask, wanted: ReadonlySet<string>, cheapest: number): readonly number[] {
  return input.pairs.flatMap(({ when, also, savesMinor }) => {
    const other = taskKey(when) === task.key ? taskKey(also) : taskKey(also) === task.key ? taskKey(when) : null;
    return other !== null && wanted.has(other) ? [savesMinor ?? cheapest] : [];
  });
}

function planPlace(input: PlanInput, place: Place, days: readonly LocalDate[], tasks: readonly PlanTask[]): PlanPlace {
  const minutesOn = Object.fromEntries(longerDays(input, place, days, tasks));
  return { id: place.id, openingMinor: place.openingMinor, minutesADay: minutesOf(input, place), minutesOn, minuteMinor: place.minuteMinor, closed: [] };
}

interface TaskPlan {
  readonly days: readonly LocalDate[];
  readonly lastDay: LocalDate;
  readonly pin: Pin | null;
  readonly leftMinor: number;
}

function planTask(input: PlanInput, task: HouseholdTask, { days, lastDay, pin, leftMinor }: TaskPlan): PlanTask {
  const groups = input.accessGroups.filter((group) => group.car === task.car);
  const cell = (place: Place, day: LocalDate): number | null => {
    const allowed = pin === null ? isAllowed(input, task, place, day, lastDay) : pin.day === day && pin.place === place.id;
    return allowed ? taskTerms(input, task, day, place.id).totalMinor : null;
  };
  const costMinor = Object.fromEntries(input.places.map(({ place }) => [place.id, days.map((day) => cell(place, day))]));
  const hasDay = Object.values(costMinor).flat().some((cost) => cost !== null);
  // What is late by law and can be done nowhere yet must not stop the rest.
  const mustDo = pin !== null || (isLegalNow(task, lastDay) && (hasDay || !task.late));
  return {
    id: task.key,
    car: task.car,
    minutes: task.minutes,
    access: [...new Set(task.access.flatMap((name) => accessNamed(groups, name)?.id ?? []))],
    mustDo,
    leftUndoneMinor: mustDo ? 0 : leftMinor,
    costMinor,
  };
}

function isAllowed(input: PlanInput, task: HouseholdTask, place: Place, day: LocalDate, lastDay: LocalDate): boolean {
  return day <= lastDay && whyNotThere(input, task, place, day) === null;
}

/** The everyday cars that are away on some of the days: then they are not there to drive. On what day a car can be worked on stands with its tasks. */
function carsAway({ everyday, carDays }: PlanInput, days: readonly LocalDate[]): PlanInstance['cars'] {
  return everyday.flatMap((car) => {
    const away = days.filter((day) => isAway(carDays, car, day));
    return away.length === 0 ? [] : [{ id: car, closed: [], away }];
  });
}

function accessOf(input: PlanInput, tasks: readonly HouseholdTask[]): PlanInstance['access'] {
  const named = tasks.flatMap((task) => task.access.flatMap((name) => accessNamed(input.accessGroups.filter((group) => group.car === task.car), name) ?? []));
  return [...new Map(named.map((group) => [group.id, group])).values()].map(({ car, id, minutes }) => ({ car, id, minutes }));
}
