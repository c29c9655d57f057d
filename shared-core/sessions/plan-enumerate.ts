import { must } from '../result/assert.ts';
import type { PlanBound } from './plan-bound.ts';
import type { PlanFacts } from './plan-facts.ts';
import type { SlotKnapsack, SlotTask } from './plan-knapsack.ts';
import { patternOf, type PlanPattern } from './plan-pattern.ts';
import { stepOverCar, wantedOf } from './plan-session-price.ts';

/**
 * Every session that can stand in a plan of which the bound says that it costs no more than `gap` above it; null where there are more than
 * `most`. Nothing cheaper is left out: a plan that holds any other session costs more than the bound and the gap.
 */
export function sessionsWithin(facts: PlanFacts, sacks: readonly SlotKnapsack[], bound: PlanBound, gap: number, most: number): readonly PlanPattern[] | null {
  const found: PlanPattern[] = [];
  for (const [slot, sack] of sacks.entries()) {
    const highest = (bound.sessions[slot]?.value ?? 0) + gap - sack.openingMinor;
    const chosen = choicesWithin(sack, bound.prices, highest, most - found.length);
    if (chosen === null) return null;
    for (const tasks of chosen) found.push(must(patternOf(facts, slot, tasks), 'room for a session'));
  }
  return found;
}

interface Walk {
  readonly sack: SlotKnapsack;
  readonly prices: Float64Array;
  readonly highest: number;
  readonly most: number;
  /** For each car, the cheapest that it and the cars after it can add within w units. */
  readonly rest: readonly Float64Array[];
  readonly found: (readonly number[])[];
}

/** Where a walk stands: which task is next, what is chosen so far, its minutes and its value under the prices. */
interface Stand {
  readonly car: number;
  readonly at: number;
  readonly chosen: readonly number[];
  readonly open: ReadonlySet<number>;
  readonly minutes: number;
  readonly value: number;
}

/** The choices of tasks, none empty, whose value without the opening is at most `highest`; null where there are more than `most`. */
function choicesWithin(sack: SlotKnapsack, prices: Float64Array, highest: number, most: number): readonly (readonly number[])[] | null {
  const rest: Float64Array[] = [new Float64Array(sack.units + 1)];
  for (const tasks of [...sack.cars].reverse()) {
    const after = must(rest[0], 'rest');
    const wanted = wantedOf(tasks, prices);
    rest.unshift(wanted.length === 0 ? after : stepOverCar(sack, wanted, prices, after, null).after);
  }
  const walk: Walk = { sack, prices, highest, most, rest, found: [] };
  return walkOn(walk, { car: 0, at: 0, chosen: [], open: new Set(), minutes: 0, value: 0 }) ? walk.found : null;
}

/** Goes on from a stand with the next task and without it; false as soon as there is too much. */
function walkOn(walk: Walk, stand: Stand): boolean {
  const tasks = walk.sack.cars[stand.car];
  if (tasks === undefined) return keepChoice(walk, stand);
  if (leastFrom(walk, stand, tasks) > walk.highest) return true;
  const task = tasks[stand.at];
  if (task === undefined) return walkOn(walk, { ...stand, car: stand.car + 1, at: 0, open: new Set() });
  const without = walkOn(walk, { ...stand, at: stand.at + 1 });
  const taken = withTask(walk, stand, task);
  return without && (taken.minutes > walk.sack.minutes || walkOn(walk, taken));
}

function keepChoice({ highest, found, most }: Walk, { value, chosen }: Stand): boolean {
  if (value <= highest && chosen.length > 0) found.push(chosen);
  return found.length <= most;
}

/** No choice that goes on from here comes to less. */
function leastFrom({ sack, prices, rest }: Walk, { car, at, minutes, value }: Stand, tasks: readonly SlotTask[]): number {
  const units = Math.floor((sack.minutes - minutes) / sack.unit);
  if (at === 0) return value + (rest[car]?.[units] ?? 0);
  let least = value + (rest[car + 1]?.[units] ?? 0);
  for (let next = at; next < tasks.length; next += 1) {
    const { task, costMinor } = must(tasks[next], 'task');
    least += Math.min(0, costMinor - (prices[task] ?? 0));
  }
  return least;
}

function withTask({ sack, prices }: Walk, stand: Stand, { task, costMinor, minutes, groups }: SlotTask): Stand {
  const fresh = groups.filter((group) => !stand.open.has(group));
  const access = fresh.reduce((sum, group) => sum + (sack.groupMinutes[group] ?? 0), 0);
  return {
    car: stand.car,
    at: stand.at + 1,
    chosen: [...stand.chosen, task],
    open: fresh.length === 0 ? stand.open : new Set([...stand.open, ...fresh]),
    minutes: stand.minutes + minutes + access,
    value: stand.value + costMinor - (prices[task] ?? 0) + access * sack.minuteMinor,
  };
}
