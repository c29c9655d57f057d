import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { sumTooLarge } from './plan-sums.ts';
import { findTask, taskKey } from './task-ref.ts';
import { worthWhileRemoved, worthWhiles, worthWhileSchema, worthWhileSet, type WorthWhile } from './worth-while.ts';

const shape = worthWhileSchema.shape;

/** States that a task is worth doing while another is done on the same car; with an id that stands, states it anew. */
export const setWorthWhile = change({
  request: z.strictObject({ id: shape.id.optional(), when: shape.when, also: shape.also, savesMinor: shape.savesMinor.default(null) }),
  reply: z.object({ pair: worthWhileSchema }),
  decide: (facts, request, moment) => {
    const [when, also] = [findTask(facts, request.when), findTask(facts, request.also)];
    if (!when.ok) return when;
    if (!also.ok) return also;
    if (taskKey(request.when) === taskKey(request.also)) return refuse('pair-with-itself', {}, ['also']);
    if (when.value.car !== also.value.car) return refuse('pair-of-two-cars', {}, ['also']);
    const tooLarge = sumTooLarge(facts, [{ kind: 'saving', minor: request.savesMinor ?? 0, path: ['savesMinor'] }]);
    if (tooLarge !== null) return tooLarge;
    const pair: WorthWhile = { ...request, id: request.id ?? moment.newId(), car: when.value.car };
    const others = facts.all(worthWhiles).filter((one) => one.id !== pair.id);
    if (others.some((one) => samePair(one, pair))) return refuse('pair-stands', {}, ['also']);
    const standing = facts.get(worthWhiles, pair.id);
    if (standing !== null && standing.car !== pair.car) return refuse('id-taken', { id: pair.id }, ['id']);
    return ok({ entries: [newEntry(worthWhileSet, pair)], reply: { pair } });
  },
});

/** Takes such a pair away. */
export const removeWorthWhile = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ pair: worthWhileSchema }),
  decide: (facts, request) => {
    const pair = facts.get(worthWhiles, request.id);
    if (pair === null) return refuse('unknown-pair', {}, ['id']);
    return ok({ entries: [newEntry(worthWhileRemoved, { id: pair.id, car: pair.car })], reply: { pair } });
  },
});

/** Two tasks make one pair, whichever of them is named first. */
function samePair(one: WorthWhile, other: WorthWhile): boolean {
  const key = (pair: WorthWhile) => [taskKey(pair.when), taskKey(pair.also)].sort().join(' ');
  return key(one) === key(other);
}
