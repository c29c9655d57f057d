import type { LocalDate } from '../calendar/local-date.ts';
import type { AccessGroup } from './access-group.ts';
import type { CarDays } from './car-days.ts';
import type { HouseholdTask } from './household-task.ts';
import type { PlaceDays } from './place-days.ts';
import type { StandingPlace } from './place.ts';
import type { PlanInstance } from './plan-instance.ts';
import type { PlanSettings } from './plan-settings.ts';
import type { Session } from './session.ts';
import type { WorthWhile } from './worth-while.ts';

/** All that a household's plan is made of. */
export interface PlanInput {
  readonly today: LocalDate;
  readonly horizonDays: number;
  readonly settings: PlanSettings;
  readonly places: readonly StandingPlace[];
  readonly placeDays: readonly PlaceDays[];
  readonly carDays: readonly CarDays[];
  readonly accessGroups: readonly AccessGroup[];
  readonly pairs: readonly WorthWhile[];
  /** Cars of which one at least must be left to drive. */
  readonly everyday: readonly string[];
  /** Sessions that stay where they are, with those of their tasks that are still to be done. */
  readonly pinned: readonly Session[];
  /** Kept sessions whose day has passed without a word of how it went, with those of their tasks that are neither done nor kept for another day. */
  readonly passed: readonly Session[];
  /** Everything that could be done. */
  readonly tasks: readonly HouseholdTask[];
  /** The cars, by name, of items that are not among the tasks because nobody knows when they are due: once for each. */
  readonly unknownItems: readonly string[];
  /** Keys of tasks that are asked about, though nothing may speak for doing them now. */
  readonly asked: readonly string[];
}

/** What a task costs on a day at a place, term by term, in minor units: they add up to its cost there. */
export interface TaskTerms {
  /** What this place asks more than the cheapest. */
  readonly priceMinor: number;
  readonly earlyMinor: number;
  readonly lateMinor: number;
  readonly totalMinor: number;
  /** Expected days early and late. */
  readonly earlyDays: number;
  readonly lateDays: number;
}

/** What leaving a task out costs: the lateness just past the horizon, and what beginning later will cost. */
export interface LeftTerms {
  readonly lateMinor: number;
  readonly openingMinor: number;
  readonly totalMinor: number;
  readonly lateDays: number;
}

/** The bare problem of a household and what it was made of. Task ids in the instance are the tasks' keys. */
export interface PlanProblem {
  readonly input: PlanInput;
  readonly lastDay: LocalDate;
  readonly instance: PlanInstance;
  /** The tasks of the instance by key. */
  readonly tasks: ReadonlyMap<string, HouseholdTask>;
  readonly left: ReadonlyMap<string, LeftTerms>;
}
