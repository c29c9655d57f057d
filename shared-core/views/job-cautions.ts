import type { z } from 'zod';
import type { Car } from '../fleet/car.ts';
import { say } from '../result/words/say.ts';
import { disposalsInOrder } from '../work/disposal.ts';
import { hazardSchema, whoMay, type Hazard } from '../work/hazard.ts';
import { hasHighVoltage, hazardsOf } from '../work/job-hazards.ts';
import { sheetFor } from '../work/starting-sheet.ts';
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
  const found = new Map<Hazard, string[]>();
  const [unwritten, nearHighVoltage]: [CarTask[], string[]] = [[], []];
  for (const { car, tasks } of cars) {
    for (const task of tasks.filter((one) => !one.done)) {
      const hazards = task.ref.kind === 'item' ? hazardsOf(car, task.name, task.sheet) : [];
      for (const hazard of hazards) found.set(hazard, [...(found.get(hazard) ?? []), task.key]);
      if (task.ref.kind === 'item' && task.sheet === null && sheetFor(task.name, car) === null) unwritten.push(task);
      if (hasHighVoltage(car) && !hazards.includes('high-voltage')) nearHighVoltage.push(task.key);
    }
  }
  const general = (key: string, tasks: readonly string[], values = {}): Caution => ({ hazard: null, name: null, by: 'anyone', said: said({ key, values }), tasks: [...tasks].sort() });
  return [
    general('caution-maker-first', []),
    ...(unwritten.length === 0 ? [] : [general('caution-unknown', unwritten.map((one) => one.key), { tasks: unwritten.map((one) => one.name).sort().join(', ') })]),
    ...(nearHighVoltage.length === 0 ? [] : [general('caution-high-voltage-near', nearHighVoltage)]),
    ...hazardSchema.options.flatMap((hazard): Caution[] => {
      const tasks = found.get(hazard);
      return tasks === undefined ? [] : [{ hazard, name: say({ key: `hazard-${hazard}`, values: {} }), by: whoMay(hazard), said: said({ key: `caution-${hazard}`, values: {} }), tasks: [...tasks].sort() }];
    }),
  ];
}

/** What is left over and belongs to an authorised place, with the tasks it comes from; of a task without a sheet, as its starting sheet has it. */
export function jobDisposal(cars: readonly CarTasks[]): JobSheet['disposal'] {
  const found = new Map<JobSheet['disposal'][number]['what'], string[]>();
  for (const { car, tasks } of cars) {
    for (const task of tasks.filter((one) => !one.done && one.ref.kind === 'item')) {
      const steps = (task.sheet ?? sheetFor(task.name, car))?.steps ?? [];
      for (const what of disposalsInOrder(steps.flatMap((step) => step.disposal))) found.set(what, [...(found.get(what) ?? []), task.key]);
    }
  }
  return disposalsInOrder(found.keys()).map((what) => ({ what, said: said({ key: `disposal-${what}`, values: {} }), tasks: [...(found.get(what) ?? [])].sort() }));
}
