import { z } from 'zod';
import type { TaskRef } from '../sessions/task-ref.ts';
import { hazardSchema } from './hazard.ts';
import { hasHighVoltage, hazardsOf, type HazardCar } from './job-hazards.ts';
import { sheetFor } from './starting-sheet.ts';
import type { TaskSheet } from './task-sheet.ts';

/** A caution by its key, in the order of reading: work that nobody has written, a car of high voltage at whose voltage nothing is done, then each hazard, the gravest first. */
export const cautionKeySchema = z.enum(['unknown', 'high-voltage-near', ...hazardSchema.options]);
export type CautionKey = z.infer<typeof cautionKeySchema>;

/** A task as its cautions are found. */
export interface CautionedTask {
  readonly ref: TaskRef;
  readonly name: string;
  readonly sheet: TaskSheet | null;
}

/** The cautions of one task on a car. */
export function cautionsOfTask(car: HazardCar, { ref, name, sheet }: CautionedTask): readonly CautionKey[] {
  const hazards = ref.kind === 'item' ? hazardsOf(car, name, sheet) : [];
  return [
    ...(ref.kind === 'item' && sheet === null && sheetFor(name, car) === null ? ['unknown' as const] : []),
    ...(hasHighVoltage(car) && !hazards.includes('high-voltage') ? ['high-voltage-near' as const] : []),
    ...hazards,
  ];
}

/** A task by its key and name, with what can hurt in it. */
export interface NamedCautions {
  readonly key: string;
  readonly name: string;
  readonly cautions: readonly CautionKey[];
}

/** A caution with the tasks that it is for. */
export interface GatheredCaution {
  readonly caution: CautionKey;
  readonly tasks: readonly Pick<NamedCautions, 'key' | 'name'>[];
}

/** The cautions of several tasks, each once, in the order of reading. */
export function gatherCautions(tasks: readonly NamedCautions[]): readonly GatheredCaution[] {
  return cautionKeySchema.options.flatMap((caution) => {
    const of = tasks.filter((task) => task.cautions.includes(caution));
    return of.length === 0 ? [] : [{ caution, tasks: of }];
  });
}
