import { must } from '../result/assert.ts';
import type { SlotKnapsack, SlotTask } from './plan-knapsack.ts';

/** Access groups of one car that are tried together; more are taken to be free, which can only lower what is reckoned. */
const MOST_GROUPS = 5;

/** The cheapest content of a slot under prices: what it costs with its opening (0 where it is best left closed), and its tasks. */
export interface PricedSession {
  readonly value: number;
  readonly tasks: readonly number[];
}

/**
 * The cheapest session of a slot where each task brings its price. Never dearer than the true one; exact but for more than MOST_GROUPS
 * groups of a car, and times that were rounded to units. Car by car; within a car, by the access that is opened; then each task is taken or not.
 *
 * Source: dynamic programming for a knapsack with set-ups, common practice.
 * @param prices what having each task in the session is worth
 */
export function cheapestSession(sack: SlotKnapsack, prices: Float64Array): PricedSession {
  const steps: CarStep[] = [];
  let best: Float64Array = new Float64Array(sack.units + 1);
  for (const tasks of sack.cars) {
    const wanted = wantedOf(tasks, prices);
    if (wanted.length === 0) continue;
    const step = stepOverCar(sack, wanted, prices, best, null);
    steps.push(step);
    best = step.after;
  }
  const value = sack.openingMinor + (best[sack.units] ?? 0);
  return value < 0 ? { value, tasks: tasksOf(steps, sack.units) } : { value: 0, tasks: [] };
}

/** The tasks that are worth more than they cost. */
export function wantedOf(tasks: readonly SlotTask[], prices: Float64Array): readonly SlotTask[] {
  return tasks.filter(({ task, costMinor }) => costMinor < (prices[task] ?? 0));
}

/** Everything tried for one car: `after[w]` is the cheapest of the cars so far within w units, `chosen[w]` the way that gave it. */
interface CarStep {
  readonly after: Float64Array;
  readonly chosen: Uint8Array;
  readonly ways: readonly Way[];
}

/** One choice of access to open, with the tasks it reaches; `taken[i * (units + 1) + w]` is 1 where task i is taken within w units. */
interface Way {
  readonly setUpUnits: number;
  readonly tasks: readonly SlotTask[];
  readonly values: Float64Array;
  readonly taken: Uint8Array;
}

/** Adds a car's wanted tasks to what is cheapest without it. A forced task is taken in any case. */
export function stepOverCar(sack: SlotKnapsack, wanted: readonly SlotTask[], prices: Float64Array, before: Float64Array, forced: SlotTask | null): CarStep {
  const after = new Float64Array(before.length).fill(Infinity);
  const chosen = new Uint8Array(before.length);
  const ways = waysOf(sack, wanted, prices, before, forced);
  ways.forEach(({ values }, way) => {
    for (let w = 0; w < after.length; w += 1) {
      if ((values[w] ?? 0) >= (after[w] ?? 0)) continue;
      after[w] = values[w] ?? 0;
      chosen[w] = way;
    }
  });
  return { after, chosen, ways };
}

function waysOf(sack: SlotKnapsack, wanted: readonly SlotTask[], prices: Float64Array, before: Float64Array, forced: SlotTask | null): readonly Way[] {
  const groups = groupsTried(sack, forced === null ? wanted : [...wanted, forced]);
  const masks = Array.from({ length: 1 << groups.length }, (_, mask) => mask);
  return masks.flatMap((mask): readonly Way[] => {
    const open = groups.filter((_, at) => (mask & (1 << at)) !== 0);
    const reached = (task: SlotTask) => task.groups.every((group) => open.includes(group) || !groups.includes(group));
    if (forced !== null && !reached(forced)) return [];
    const setUpUnits = open.reduce((sum, group) => sum + Math.floor((sack.groupMinutes[group] ?? 0) / sack.unit), forced?.units ?? 0);
    const setUpMinor = open.reduce((sum, group) => sum + (sack.groupMinutes[group] ?? 0) * sack.minuteMinor, forced === null ? 0 : worthOf(forced, prices));
    if (setUpUnits > sack.units) return [];
    return [fillWay(wanted.filter(reached), prices, setUpUnits, setUpMinor, before)];
  });
}

function groupsTried(sack: SlotKnapsack, tasks: readonly SlotTask[]): readonly number[] {
  const used = [...new Set(tasks.flatMap(({ groups }) => groups))];
  if (used.length <= MOST_GROUPS) return used;
  return used.sort((a, b) => (sack.groupMinutes[b] ?? 0) - (sack.groupMinutes[a] ?? 0) || a - b).slice(0, MOST_GROUPS);
}

function worthOf({ task, costMinor }: SlotTask, prices: Float64Array): number {
  return costMinor - (prices[task] ?? 0);
}

/** Each task taken or not; the largest time first, so that none is taken twice. */
function fillWay(tasks: readonly SlotTask[], prices: Float64Array, setUpUnits: number, setUpMinor: number, before: Float64Array): Way {
  const size = before.length;
  const values = new Float64Array(size).fill(Infinity);
  for (let w = setUpUnits; w < size; w += 1) values[w] = (before[w - setUpUnits] ?? 0) + setUpMinor;
  const taken = new Uint8Array(tasks.length * size);
  tasks.forEach((task, at) => {
    const worth = worthOf(task, prices);
    for (let w = size - 1; w >= task.units; w -= 1) {
      const value = (values[w - task.units] ?? 0) + worth;
      if (value >= (values[w] ?? 0)) continue;
      values[w] = value;
      taken[at * size + w] = 1;
    }
  });
  return { setUpUnits, tasks, values, taken };
}

function tasksOf(steps: readonly CarStep[], units: number): readonly number[] {
  const found: number[] = [];
  let w = units;
  for (const step of [...steps].reverse()) {
    const way = must(step.ways[step.chosen[w] ?? 0], 'way');
    for (let at = way.tasks.length - 1; at >= 0; at -= 1) {
      if (way.taken[at * (units + 1) + w] !== 1) continue;
      const { task, units: time } = must(way.tasks[at], 'task');
      found.push(task);
      w -= time;
    }
    w -= way.setUpUnits;
  }
  return found;
}

/** For each task that may go to a slot: what the cheapest session of the slot that holds it costs, with its opening; never dearer than the true one. */
export function cheapestSessionsWith(sack: SlotKnapsack, prices: Float64Array): readonly { readonly task: number; readonly value: number }[] {
  const wanted = sack.cars.map((tasks) => wantedOf(tasks, prices));
  return sack.cars.flatMap((tasks, car) => {
    let others: Float64Array = new Float64Array(sack.units + 1);
    for (const theirs of wanted) {
      if (theirs !== wanted[car] && theirs.length > 0) others = stepOverCar(sack, theirs, prices, others, null).after;
    }
    return tasks.map((forced) => {
      const mates = (wanted[car] ?? []).filter((mate) => mate !== forced);
      const { after } = stepOverCar(sack, mates, prices, others, forced);
      return { task: forced.task, value: sack.openingMinor + (after[sack.units] ?? Infinity) };
    });
  });
}
