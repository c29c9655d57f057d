import type { Closing, ClosingCar, ClosingTask } from '../../../shared-core/views/closing-schema.ts';
import type { CostDraft } from '../../ui/form/cost-draft.ts';

export type Outcome = NonNullable<ClosingTask['outcome']>;

/** What the keeper changed of a task; what is absent stands as it is proposed. */
export interface TaskChanges {
  readonly outcome?: Outcome;
  readonly met?: boolean;
  readonly lastValidDay?: string;
  readonly paid?: string;
  readonly minutes?: string;
  readonly note?: string;
  /** The note that was proposed when the keeper wrote over it. */
  readonly noteOver?: string;
  /** Of its follow-ups, by their place, whether each is wanted. */
  readonly followUps?: Readonly<Record<string, boolean>>;
}

export interface ValueChanges {
  readonly keep?: boolean;
  readonly fresh?: boolean;
}

/** What the keeper typed of one car: tasks by their key, what is taken off the shelf by task and lot, values by their id. */
export interface CarChanges {
  readonly reading?: string;
  readonly tasks?: Readonly<Record<string, TaskChanges>>;
  readonly lots?: Readonly<Record<string, string>>;
  readonly values?: Readonly<Record<string, ValueChanges>>;
  readonly costs?: readonly CostDraft[];
  readonly printedTotal?: string;
  readonly doneBy?: string;
  readonly reference?: string;
  readonly files?: readonly File[];
  /** Photographs of it that no record takes: set aside, not kept among its papers. */
  readonly photosAside?: boolean;
  readonly note?: string;
  readonly noteOver?: string;
}

/**
 * What is typed while a session is closed. Only that is kept: what is worked on meanwhile is proposed anew, and stands wherever the keeper
 * has said nothing.
 */
export interface ClosingChanges {
  readonly date: string | null;
  readonly cars: Readonly<Record<string, CarChanges>>;
  readonly wastes: Readonly<Record<string, boolean>>;
  readonly wasteWhere: string;
  readonly sure: boolean;
}

/** A form in which nobody has typed yet. */
export const UNCHANGED: ClosingChanges = { date: null, cars: {}, wastes: {}, wasteWhere: '', sure: false };

/** A task as it is told; an obligation was met or not. */
export interface TaskDraft {
  /** Null until it is chosen, where nobody but the keeper can tell. */
  readonly outcome: Outcome | null;
  readonly met: boolean;
  readonly lastValidDay: string;
  readonly paid: string;
  readonly minutes: string;
  readonly note: string;
  readonly followUps: readonly boolean[];
}

/** A task as the keeper tells it, else as it is proposed. */
export function taskDraft(task: ClosingTask, told: TaskChanges = {}): TaskDraft {
  const whole = task.steps > 0 && task.ticked === task.steps;
  return {
    outcome: told.outcome ?? task.outcome,
    met: told.met ?? (task.task.kind === 'obligation' && whole),
    lastValidDay: told.lastValidDay ?? '',
    paid: told.paid ?? '',
    minutes: told.minutes ?? (task.minutes === null ? '' : String(task.minutes)),
    note: noteWith(task.note, told, '; '),
    followUps: task.followUps.map((_, at) => told.followUps?.[at] ?? true),
  };
}

/** The note of the car's record as it was typed, else as it is proposed. */
export function carNote({ note }: ClosingCar, told: CarChanges): string {
  return noteWith(note, told, '\n');
}

/** A note that was typed stands; what is proposed since then is added to it. */
function noteWith(proposed: string, { note, noteOver = '' }: Pick<CarChanges, 'note' | 'noteOver'>, by: string): string {
  if (note === undefined) return proposed;
  const seen = new Set(noteOver.split(by));
  return [note, ...proposed.split(by).filter((piece) => piece !== '' && !seen.has(piece))].filter((piece) => piece !== '').join(by);
}

/** What a task comes to: done in some way, not done, or not chosen yet. */
export function isToldDone(task: ClosingTask, { outcome, met }: TaskDraft): boolean {
  return task.task.kind === 'obligation' ? met : outcome !== null && outcome !== 'not-done';
}

/** What the tasks that are told as done take off the shelf, and what it does not have. */
export function takenOf(car: ClosingCar, told: CarChanges): Pick<ClosingCar, 'lots' | 'lacks'> {
  const done = doneTasks(car, told);
  return {
    lots: [...car.lots, ...car.otherwise.lots].filter((one) => done.has(one.task)),
    lacks: [...car.lacks, ...car.otherwise.lacks].filter((one) => done.has(one.task)),
  };
}

/** The leavings of the tasks that are told as done. */
export function leftOver(closing: Closing, told: ClosingChanges): Closing['wastes'] {
  const done = new Set(closing.cars.flatMap((car) => [...doneTasks(car, told.cars[car.car] ?? {})]));
  return [...closing.wastes, ...closing.otherwise].filter((one) => one.tasks.some((task) => done.has(task)));
}

/** Whether nothing is told as done or met on a car, so that neither a record nor a renewal takes its photographs. */
export function isWithoutRecord(car: ClosingCar, told: CarChanges): boolean {
  return car.tasks.every((task) => !isToldDone(task, taskDraft(task, told.tasks?.[task.key])));
}

function doneTasks(car: ClosingCar, told: CarChanges): ReadonlySet<string> {
  return new Set(car.tasks.filter((task) => isToldDone(task, taskDraft(task, told.tasks?.[task.key]))).map((task) => task.key));
}

/** One name for what a task takes of a lot. */
export function lotKey({ task, lot }: ClosingCar['lots'][number]): string {
  return `${task} ${lot}`;
}
