import { must } from '../result/assert.ts';
import { LEFT, type Placement, type PlanFacts, type TaskFacts } from './plan-facts.ts';

/** Tasks on their slots, with what a change would cost at hand. Changed by `putTask` and `takeTask` alone. */
export interface Board {
  readonly facts: PlanFacts;
  /** Where each task now is. */
  readonly placement: Placement;
  /** The number of the option by which each task is where it is, or LEFT. */
  readonly option: Int32Array;
  /** Minutes and number of tasks of each slot. */
  readonly minutes: Float64Array;
  readonly held: Int32Array;
  /** How many tasks of a slot need a group, by `slot * groups + group`. */
  readonly opened: Int32Array;
  /** How many tasks a car has on a day, by `day * cars + car`. */
  readonly working: Int32Array;
  /** For each car the other cars of each list of which one must stay to drive. */
  readonly partners: readonly (readonly (readonly number[])[])[];
  /** What the plan now costs; a must-do task that is left out costs the ceiling. */
  totalMinor: number;
}

/** A board on which everything is left out. */
export function emptyBoard(facts: PlanFacts): Board {
  const { slots, groups, tasks, cars, neverAll, instance } = facts;
  return {
    facts,
    placement: new Int32Array(tasks.length).fill(LEFT),
    option: new Int32Array(tasks.length).fill(LEFT),
    minutes: new Float64Array(slots.length),
    held: new Int32Array(slots.length),
    opened: new Int32Array(slots.length * groups.length),
    working: new Int32Array(instance.days.length * cars),
    partners: Array.from({ length: cars }, (_, car) => neverAll.filter((list) => list.includes(car)).map((list) => list.filter((other) => other !== car))),
    totalMinor: tasks.reduce((sum, task) => sum + leftCost(facts, task), 0),
  };
}

/** What leaving a task out costs on a board. */
export function leftCost(facts: PlanFacts, task: TaskFacts): number {
  return task.mustDo ? facts.ceilingMinor : task.leftMinor;
}

/** What putting a left-out task onto the slot of an option adds to the total; Infinity where it does not fit. */
export function costOfPutting(board: Board, number: number, option: number): number {
  const { facts, opened } = board;
  const task = must(facts.tasks[number], 'task');
  const { slot, costMinor } = must(task.options[option], 'option');
  const { day, openingMinor, minutes, minuteMinor } = must(facts.slots[slot], 'slot');
  let access = 0;
  for (const group of task.groups) if (opened[slot * facts.groups.length + group] === 0) access += facts.groups[group]?.minutes ?? 0;
  if ((board.minutes[slot] ?? 0) + task.minutes + access > minutes || wouldBeAll(board, task.car, day)) return Infinity;
  return costMinor + access * minuteMinor + (board.held[slot] === 0 ? openingMinor : 0) - leftCost(facts, task);
}

/** Whether no car of some list would stay to drive if this car were worked on as well. */
function wouldBeAll({ working, facts, partners }: Board, car: number, day: number): boolean {
  const worksOn = (other: number) => (working[day * facts.cars + other] ?? 0) > 0;
  return !worksOn(car) && (partners[car] ?? []).some((others) => others.every((other) => worksOn(other) || facts.away[day * facts.cars + other] === 1));
}

/** Puts a left-out task onto the slot of an option; it must fit. */
export function putTask(board: Board, number: number, option: number): void {
  const task = must(board.facts.tasks[number], 'task');
  const { slot } = must(task.options[option], 'option');
  board.totalMinor += costOfPutting(board, number, option);
  board.placement[number] = slot;
  board.option[number] = option;
  use(board, task, slot, 1);
}

/** Leaves a task out; nothing changes where it is left out already. */
export function takeTask(board: Board, number: number): void {
  const [slot, option] = [board.placement[number] ?? LEFT, board.option[number] ?? LEFT];
  if (slot === LEFT) return;
  use(board, must(board.facts.tasks[number], 'task'), slot, -1);
  board.placement[number] = LEFT;
  board.option[number] = LEFT;
  board.totalMinor -= costOfPutting(board, number, option);
}

/** Adds or takes away what a task uses of its slot. */
function use(board: Board, task: TaskFacts, slot: number, sign: 1 | -1): void {
  const { facts, opened, working } = board;
  const [unused, day] = [sign === 1 ? 0 : 1, must(facts.slots[slot], 'slot').day];
  let minutes = task.minutes;
  for (const group of task.groups) {
    const key = slot * facts.groups.length + group;
    if (opened[key] === unused) minutes += facts.groups[group]?.minutes ?? 0;
    opened[key] = (opened[key] ?? 0) + sign;
  }
  board.minutes[slot] = (board.minutes[slot] ?? 0) + sign * minutes;
  board.held[slot] = (board.held[slot] ?? 0) + sign;
  working[day * facts.cars + task.car] = (working[day * facts.cars + task.car] ?? 0) + sign;
}

/** Puts a left-out task by an option where it fits; LEFT always does. */
export function tryPutting(board: Board, task: number, option: number): boolean {
  if (option === LEFT) return true;
  if (costOfPutting(board, task, option) === Infinity) return false;
  putTask(board, task, option);
  return true;
}

/** The option by which a task may go to a slot; LEFT where there is none. */
export function optionTo(board: Board, task: number, slot: number): number {
  return slot === LEFT ? LEFT : must(board.facts.tasks[task], 'task').options.findIndex((option) => option.slot === slot);
}

/** The tasks on a slot, in order. */
export function tasksOn(board: Board, slot: number): readonly number[] {
  return [...board.placement.keys()].filter((task) => board.placement[task] === slot);
}
