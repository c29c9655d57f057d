import type { PlanFacts, PlanSlot } from './plan-facts.ts';

/** Time is cut into so many units at most; finer times are rounded down, which can only lower what is reckoned with them. */
const MOST_UNITS = 400;

/** A task as a slot sees it. */
export interface SlotTask {
  readonly task: number;
  readonly costMinor: number;
  readonly minutes: number;
  readonly units: number;
  readonly groups: readonly number[];
}

/** A slot cut into units of time, with the tasks that may go there, car by car. */
export interface SlotKnapsack {
  readonly openingMinor: number;
  readonly minuteMinor: number;
  /** The minutes that could be used at all, the length of a unit, and how many units that makes. */
  readonly minutes: number;
  readonly unit: number;
  readonly units: number;
  readonly cars: readonly (readonly SlotTask[])[];
  readonly groupMinutes: readonly number[];
}

/** The options of a plan that still matter. */
export type Keep = (task: number, slot: number) => boolean;

/** Cuts every slot into units of time, with those options only that still matter. */
export function slotKnapsacks(facts: PlanFacts, keep: Keep): readonly SlotKnapsack[] {
  const lengths = [...facts.tasks, ...facts.groups].map(({ minutes }) => minutes);
  const shared = lengths.reduce(greatestDivisor, 0) || 1;
  const there: Omit<SlotTask, 'units'>[][] = facts.slots.map(() => []);
  facts.tasks.forEach(({ minutes, groups, options }, task) => {
    for (const { slot, costMinor } of options) if (keep(task, slot)) there[slot]?.push({ task, costMinor, minutes, groups });
  });
  return facts.slots.map((slot, at) => knapsackOf(facts, slot, there[at] ?? [], shared));
}

function knapsackOf(facts: PlanFacts, slot: PlanSlot, tasks: readonly Omit<SlotTask, 'units'>[], shared: number): SlotKnapsack {
  const groupMinutes = facts.groups.map((group) => group.minutes);
  const used = new Set(tasks.flatMap(({ groups }) => groups));
  const wanted = [...tasks.map((task) => task.minutes), ...[...used].map((group) => groupMinutes[group] ?? 0)].reduce((sum, time) => sum + time, 0);
  const minutes = Math.min(slot.minutes, wanted);
  const unit = Math.max(1, Math.ceil(minutes / shared / MOST_UNITS)) * shared;
  const cars = new Map<number, SlotTask[]>();
  for (const task of tasks) {
    const car = facts.tasks[task.task]?.car ?? -1;
    cars.set(car, [...(cars.get(car) ?? []), { ...task, units: Math.floor(task.minutes / unit) }]);
  }
  const { openingMinor, minuteMinor } = slot;
  return { openingMinor, minuteMinor, minutes, unit, units: Math.floor(minutes / unit), cars: [...cars.values()], groupMinutes };
}

/** @example greatestDivisor(240, 25) //=> 5 */
export function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
