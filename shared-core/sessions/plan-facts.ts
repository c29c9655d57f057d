import type { PlanInstance } from './plan-instance.ts';

/** A day and place on which a session could be held. */
export interface PlanSlot {
  /** Numbers of the day and the place in the instance. */
  readonly day: number;
  readonly place: number;
  readonly openingMinor: number;
  readonly minutes: number;
  readonly minuteMinor: number;
}

/** A slot that a task may go to, and what doing it then costs with the price of its own minutes. */
export interface PlanOption {
  readonly slot: number;
  readonly costMinor: number;
}

/** Something several tasks of a car share; its minutes count once in a session. */
export interface AccessGroup {
  readonly car: number;
  readonly minutes: number;
}

/** A task with everything by number. `options` stand in the order of slots. */
export interface TaskFacts {
  readonly car: number;
  readonly minutes: number;
  readonly groups: readonly number[];
  readonly mustDo: boolean;
  readonly leftMinor: number;
  readonly options: readonly PlanOption[];
}

/** A plan instance worked out for solving: closed days gone, names replaced by numbers, options that no best plan needs left out. */
export interface PlanFacts {
  readonly instance: PlanInstance;
  readonly slots: readonly PlanSlot[];
  readonly groups: readonly AccessGroup[];
  readonly tasks: readonly TaskFacts[];
  readonly cars: number;
  /** Lists of cars of which one at least stays to drive on a day on which one has a task. */
  readonly neverAll: readonly (readonly number[])[];
  /** 1 where a car is not there to drive on a day, by `day * cars + car`. */
  readonly away: Uint8Array;
  /** More than any plan costs. */
  readonly ceilingMinor: number;
}

/** The cars of a list whose work a day bounds, and of how many of them it may hold work: all but one of those that are there; none where none is. */
export function boundOnDay({ away, cars }: PlanFacts, list: readonly number[], day: number): { readonly cars: readonly number[]; readonly most: number } {
  const there = list.filter((car) => away[day * cars + car] !== 1);
  return there.length === 0 ? { cars: list, most: 0 } : { cars: there, most: there.length - 1 };
}

/** Where each task goes: the number of its slot, or LEFT. */
export type Placement = Int32Array;
/** In a placement: the task is left out. */
export const LEFT = -1;
