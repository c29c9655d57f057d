import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { priceSchema } from '../units/money.ts';
import { taskRefSchema, taskReference } from './task-ref.ts';

/**
 * A task worth doing while another is being done on the same car: the garage has it for its test, the gearbox is out. While the one
 * is to be done within a plan, leaving the other for later counts what it will then cost to begin again: `savesMinor`, or, where that
 * is null, the cheapest opening of a place where it can be done.
 */
export const worthWhileSchema = z.strictObject({ id: idSchema, car: idSchema, when: taskRefSchema, also: taskRefSchema, savesMinor: priceSchema.nullable() });
export type WorthWhile = z.infer<typeof worthWhileSchema>;

export const worthWhiles = family('worth-while', 'sessions', worthWhileSchema);
export const worthWhileSet = factEntry('worth-while-set', worthWhiles, {
  car: (pair) => pair.car,
  refersTo: (pair) => [...refers(cars, pair.car), taskReference(pair.when), taskReference(pair.also)],
});
export const worthWhileRemoved = factRemoval('worth-while-removed', worthWhiles);
