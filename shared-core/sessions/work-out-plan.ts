import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { AccessGroup, PlanFacts, PlanOption, PlanSlot, TaskFacts } from './plan-facts.ts';
import type { PlanInstance, PlanTask } from './plan-instance.ts';

/** Sums up to here, once for each task, are exact in the 64ths of a minor unit that bounds are reckoned in. */
const LARGEST_EXACT = 2 ** 36;

/**
 * Works a read instance out. An option is left out where it is closed, where the task with its own access does not fit into the empty day,
 * and where leaving the task out costs no more than the option alone. Refuses `figures-too-large`, and `plan-must-do-no-day` or
 * `plan-must-do-too-long` where a task that must be done has no option at all.
 *
 * @example workOutPlan(instance).value.slots.length //=> 51 for 26 days at two places of which one is closed once
 */
export function workOutPlan(instance: PlanInstance): Result<PlanFacts> {
  const slots = slotsOf(instance);
  const numbers = numberNames(instance);
  const groups = instance.access.map(({ car, minutes }): AccessGroup => ({ car: numbers.car(car), minutes }));
  const tasks = instance.tasks.map((task) => taskFacts(task, { instance, slots, groups, numbers }));
  const neverAll = instance.neverAll.map((cars) => [...new Set(cars)].map((car) => numbers.car(car)));
  const homeless = tasks.findIndex(({ mustDo, options }) => mustDo && options.length === 0);
  if (homeless !== -1) return refuseHomeless(instance, slots, homeless);
  const away = awayOn(instance, numbers);
  const ceilingMinor = 1 + ceilingOf(slots, groups, tasks);
  const facts: PlanFacts = { instance, slots, groups, tasks, cars: numbers.cars(), neverAll, away, ceilingMinor };
  return ceilingMinor <= LARGEST_EXACT ? ok(facts) : refuse('figures-too-large');
}

/** Says why a task that must be done has no option: every day that would take it is too short for it, or no day takes it. */
function refuseHomeless({ days, places, tasks, access, cars }: PlanInstance, slots: readonly PlanSlot[], at: number): Result<never> {
  const task = must(tasks[at], 'task');
  const away = cars.flatMap(({ id, closed }) => (id === task.car ? closed : []));
  const taking = slots.filter(({ day, place }) => (task.costMinor[places[place]?.id ?? '']?.[day] ?? null) !== null && !away.includes(must(days[day], 'day')));
  const needs = access.reduce((sum, { car, id, minutes }) => sum + (car === task.car && task.access.includes(id) ? minutes : 0), task.minutes);
  if (taking.length === 0) return refuse('plan-must-do-no-day', { task: task.id }, ['tasks', at, 'costMinor']);
  return refuse('plan-must-do-too-long', { task: task.id, minutes: needs, most: Math.max(...taking.map(({ minutes }) => minutes)) }, ['tasks', at, 'minutes']);
}

function slotsOf({ days, places }: PlanInstance): readonly PlanSlot[] {
  return days.flatMap((date, day) =>
    places.flatMap(({ openingMinor, minuteMinor, minutesADay, minutesOn, closed }, place): readonly PlanSlot[] =>
      closed.includes(date) ? [] : [{ day, place, openingMinor, minuteMinor, minutes: minutesOn[date] ?? minutesADay }],
    ),
  );
}

interface Numbers {
  car(id: string): number;
  cars(): number;
  group(car: string, id: string): number;
}

function numberNames({ access }: PlanInstance): Numbers {
  const cars = new Map<string, number>();
  const groups = new Map(access.map(({ car, id }, at) => [JSON.stringify([car, id]), at]));
  return {
    car: (id) => {
      const known = cars.get(id) ?? cars.size;
      cars.set(id, known);
      return known;
    },
    cars: () => cars.size,
    group: (car, id) => must(groups.get(JSON.stringify([car, id])), `access ${id}`),
  };
}

/** Every car with a task or in a list has its number by now; of others it matters nothing where they are. */
function awayOn({ days, cars, tasks, neverAll }: PlanInstance, numbers: Numbers): Uint8Array {
  const known = new Set([...tasks.map((task) => task.car), ...neverAll.flat()]);
  const away = new Uint8Array(days.length * numbers.cars());
  for (const { id, away: gone } of cars) {
    if (!known.has(id)) continue;
    days.forEach((date, day) => {
      if (gone.includes(date)) away[day * numbers.cars() + numbers.car(id)] = 1;
    });
  }
  return away;
}

interface Worked {
  readonly instance: PlanInstance;
  readonly slots: readonly PlanSlot[];
  readonly groups: readonly AccessGroup[];
  readonly numbers: Numbers;
}

function taskFacts(task: PlanTask, worked: Worked): TaskFacts {
  const groups = [...new Set(task.access)].map((id) => worked.numbers.group(task.car, id)).sort((a, b) => a - b);
  const needs = task.minutes + groups.reduce((sum, group) => sum + must(worked.groups[group], 'group').minutes, 0);
  const options = optionsOf(task, worked, needs).filter(({ costMinor }) => task.mustDo || costMinor < task.leftUndoneMinor);
  return { car: worked.numbers.car(task.car), minutes: task.minutes, groups, mustDo: task.mustDo, leftMinor: task.leftUndoneMinor, options };
}

function optionsOf(task: PlanTask, { instance, slots }: Worked, needs: number): readonly PlanOption[] {
  const away = new Set(instance.cars.flatMap(({ id, closed }) => (id === task.car ? closed : [])));
  return slots.flatMap(({ day, place, minutes, minuteMinor }, slot): readonly PlanOption[] => {
    const price = task.costMinor[must(instance.places[place], 'place').id]?.[day] ?? null;
    const closed = price === null || needs > minutes || away.has(must(instance.days[day], 'day'));
    return closed ? [] : [{ slot, costMinor: price + minuteMinor * task.minutes }];
  });
}

/** What it would cost to do everything at its dearest, each alone, and to leave it out as well. */
function ceilingOf(slots: readonly PlanSlot[], groups: readonly AccessGroup[], tasks: readonly TaskFacts[]): number {
  const most = (values: readonly number[]) => values.reduce((largest, value) => Math.max(largest, value), 0);
  const opening = most(slots.map(({ openingMinor }) => openingMinor));
  const minute = most(slots.map(({ minuteMinor }) => minuteMinor));
  return tasks.reduce((sum, task) => {
    const access = task.groups.reduce((minutes, group) => minutes + (groups[group]?.minutes ?? 0), 0);
    return sum + most(task.options.map(({ costMinor }) => costMinor)) + task.leftMinor + opening + access * minute;
  }, 0);
}
