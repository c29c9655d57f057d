import type { CarJob, JobSheet } from '../../../shared-core/views/job-sheet-view-schema.ts';
import type { Task } from './sheet-types.ts';

/** What of a session's sheet is for one car. */
export interface CarPart {
  readonly job: CarJob;
  readonly session: JobSheet['session'];
  readonly partsFrom: JobSheet['partsFrom'];
  readonly cautions: JobSheet['cautions'];
  readonly tools: JobSheet['tools'];
  readonly parts: JobSheet['parts'];
  readonly disposal: JobSheet['disposal'];
  readonly openTasks: readonly Task[];
}

/** One car's own part of the sheet, so that it can be taken to that car alone; what holds for all work stands with each. */
export function partOfCar(sheet: JobSheet, job: CarJob): CarPart {
  const openTasks = job.tasks.filter((task) => !task.done);
  const own = new Set(openTasks.map((task) => task.key));
  const ofOwn = ({ tasks }: { readonly tasks: readonly string[] }) => tasks.some((task) => own.has(task));
  return {
    job, openTasks,
    session: sheet.session,
    partsFrom: sheet.partsFrom,
    cautions: sheet.cautions.filter((one) => one.tasks.length === 0 || ofOwn(one)),
    tools: sheet.tools.filter(ofOwn),
    parts: sheet.parts.filter((part) => own.has(part.task)),
    disposal: sheet.disposal.filter(ofOwn),
  };
}

/** The fluids to have in hand: one that a later step tops up stands with its quantity only; one of which nothing is known is a tool's or a part's matter. */
export function fluidsInHand(fluids: CarJob['fluids']): CarJob['fluids'] {
  const named = fluids.filter((one) => one.specification !== null || one.quantity !== null);
  return named.filter((one) => one.quantity !== null || !named.some((other) => other.quantity !== null && other.name === one.name && other.specification?.figure === one.specification?.figure));
}

/** Names of a car's tasks by their keys; tasks of other cars are left out. */
export function taskNames(job: CarJob, keys: readonly string[]): string {
  return job.tasks.filter((task) => keys.includes(task.key)).map((task) => task.name).join(', ');
}
