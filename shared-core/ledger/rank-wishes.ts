import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { wishSchema, wishSet } from './wish.ts';
import { findOpenWish, openWishes } from './wish-state.ts';

/** Puts all wishes that are still to come true into an order of preference, in one step: ranks from 1 on. */
export const rankWishes = change({
  request: z.strictObject({ wishes: z.array(idSchema).min(1).max(999) }),
  reply: z.object({ wishes: z.array(wishSchema) }),
  decide: (facts, request) => {
    const twice = request.wishes.findIndex((id, at) => request.wishes.indexOf(id) < at);
    if (twice >= 0) return refuse('wish-ranked-twice', {}, ['wishes', twice]);
    const found = request.wishes.map((id) => findOpenWish(facts, id, ['wishes']));
    const refused = found.find((one) => !one.ok);
    if (refused?.ok === false) return refused;
    const missing = openWishes(facts).find((wish) => !request.wishes.includes(wish.id));
    if (missing !== undefined) return refuse('wish-not-ranked', { wish: missing.name }, ['wishes']);
    const ranked = found.flatMap((one, at) => (one.ok ? [{ before: one.value, after: { ...one.value, rank: at + 1 } }] : []));
    return ok({ entries: ranked.filter(({ before, after }) => before.rank !== after.rank).map(({ after }) => newEntry(wishSet, after)), reply: { wishes: ranked.map(({ after }) => after) } });
  },
});
