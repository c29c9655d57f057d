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
  /** Lists of cars of which one at least has no task on any one day. */
  readonly neverAll: readonly (readonly number[])[];
  /** More than any plan costs. */
  readonly ceilingMinor: number;
}

/** Where each task goes: the number of its slot, or LEFT. */
export type Placement = Int32Array;
/** In a placement: the task is left out. */
export const LEFT = -1;
