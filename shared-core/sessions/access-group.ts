import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { sameName } from '../fleet/find-car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';

/**
 * What must be opened up on a car to reach several items ("front wheels off"), and its minutes there and back, counted once for all
 * items of a session that name it. An item's own minutes are without it.
 */
export const accessGroupSchema = z.strictObject({ id: idSchema, car: idSchema, name: plainText(40), minutes: z.int().min(0).max(1440) });
export type AccessGroup = z.infer<typeof accessGroupSchema>;

export const accessGroups = family('access-group', 'sessions', accessGroupSchema);
export const accessGroupSet = factEntry('access-group-set', accessGroups, { car: (group) => group.car, refersTo: (group) => refers(cars, group.car) });
export const accessGroupRemoved = factRemoval('access-group-removed', accessGroups);

/** The group of a name among those of one car; null where its minutes were never stated. */
export function accessNamed(groups: readonly AccessGroup[], name: string): AccessGroup | null {
  return groups.find((group) => sameName(group.name, name)) ?? null;
}
