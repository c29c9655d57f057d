import type { z } from 'zod';
import type { Car } from '../fleet/car.ts';
import { say } from '../result/words/say.ts';
import { cautionsOfTask, gatherCautions, type GatheredCaution } from '../work/caution-key.ts';
import { disposalsInOrder } from '../work/disposal.ts';
import { whoMay } from '../work/hazard.ts';
import { disposalOf } from '../work/job-hazards.ts';
import type { CarTask } from './job-of-car.ts';
import type { cautionSchema, JobSheet } from './job-sheet-view-schema.ts';
import { said } from './plan-said.ts';

type Caution = z.infer<typeof cautionSchema>;

/** A car and its tasks in a session. */
export interface CarTasks {
  readonly car: Car;
  readonly tasks: readonly CarTask[];
}

/** What is read before the first step: the maker and local rules first, what no sheet covers, then each hazard once, the gravest first. */
export function jobCautions(cars: readonly CarTasks[]): Caution[] {
  const open = cars.flatMap(({ car, tasks }) => tasks.filter((task) => !task.done).map((task) => ({ key: task.key, name: task.name, cautions: cautionsOfTask(car, task) })));
  return [{ hazard: null, name: null, by: 'anyone', said: said({ key: 'caution-maker-first', values: {} }), tasks: [] }, ...gatherCautions(open).map(cautionView)];
}

/** A caution in words, with the tasks that it is for. */
export function cautionView({ caution, tasks }: GatheredCaution): Caution {
  const hazard = caution === 'unknown' || caution === 'high-voltage-near' ? null : caution;
  const values = caution === 'unknown' ? { tasks: tasks.map((one) => one.name).sort().join(', ') } : {};
  return {
    hazard,
    name: hazard === null ? null : say({ key: `hazard-${hazard}`, values: {} }),
    by: hazard === null ? 'anyone' : whoMay(hazard),
    said: said({ key: `caution-${caution}`, values }),
    tasks: tasks.map((one) => one.key).sort(),
  };
}

/** What is left over and belongs to an authorised place, with the tasks it comes from; a sheet of the keeper's own takes nothing away. */
export function jobDisposal(cars: readonly CarTasks[]): JobSheet['disposal'] {
  const found = new Map<JobSheet['disposal'][number]['what'], string[]>();
  for (const { car, tasks } of cars) {
    for (const task of tasks.filter((one) => !one.done && one.ref.kind === 'item')) {
      for (const what of disposalOf(car, task.name, task.sheet)) found.set(what, [...(found.get(what) ?? []), task.key]);
    }
  }
  return disposalsInOrder(found.keys()).map((what) => ({ what, said: said({ key: `disposal-${what}`, values: {} }), tasks: [...(found.get(what) ?? [])].sort() }));
}
