import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { accessGroupRemoved, accessGroups, accessGroupSchema, accessGroupSet, accessNamed, type AccessGroup } from './access-group.ts';

const shape = accessGroupSchema.shape;

/** States how long it takes to open something up on a car; with a name or an id that stands, states it anew. */
export const setAccessGroup = change({
  request: z.strictObject({ id: shape.id.optional(), car: z.string().min(1).max(80), name: shape.name, minutes: shape.minutes }),
  reply: z.object({ access: accessGroupSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const named = accessNamed(facts.ofCar(accessGroups, car.value.id), request.name);
    const access: AccessGroup = { ...request, id: request.id ?? named?.id ?? moment.newId(), car: car.value.id };
    if (named !== null && named.id !== access.id) return refuse('access-named-already', { access: named.name }, ['name']);
    const standing = facts.get(accessGroups, access.id);
    if (standing !== null && standing.car !== access.car) return refuse('id-taken', { id: access.id }, ['id']);
    return ok({ entries: [newEntry(accessGroupSet, access)], reply: { access } });
  },
});

/** Takes the minutes of an access away; items may go on naming it. */
export const removeAccessGroup = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ access: accessGroupSchema }),
  decide: (facts, request) => {
    const access = facts.get(accessGroups, request.id);
    if (access === null) return refuse('unknown-access', {}, ['id']);
    return ok({ entries: [newEntry(accessGroupRemoved, { id: access.id, car: access.car })], reply: { access } });
  },
});
