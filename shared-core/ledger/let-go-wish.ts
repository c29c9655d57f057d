import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { wishes, wishRemoved, wishSchema, wishSet, type Wish } from './wish.ts';
import { findOpenWish, lastRank } from './wish-state.ts';

const request = z.strictObject({ wish: idSchema });
const reply = z.object({ wish: wishSchema });

/** A wish is wanted no more: what was put aside for it is free again, and its money is the others'. */
export const letGoWish = change({
  request,
  reply,
  decide: (facts, request, { today }) => {
    const found = findOpenWish(facts, request.wish);
    if (!found.ok) return found;
    if (found.value.item !== null) return refuse('wish-planned', { wish: found.value.name }, ['wish']);
    const wish: Wish = { ...found.value, letGoOn: today, lots: [] };
    return ok({ entries: [newEntry(wishSet, wish)], reply: { wish } });
  },
});

/** A wish that was let go is wanted again, and least so far. */
export const wantWishAgain = change({
  request,
  reply,
  decide: (facts, request) => {
    const before = facts.get(wishes, request.wish);
    if (before === null) return refuse('unknown-wish', {}, ['wish']);
    if (before.letGoOn === null) return refuse('wish-not-let-go', { wish: before.name }, ['wish']);
    const wish: Wish = { ...before, letGoOn: null, rank: lastRank(facts) };
    return ok({ entries: [newEntry(wishSet, wish)], reply: { wish } });
  },
});

/** Takes a wish away, where nothing hangs on it: no plan, and nothing put aside. */
export const removeWish = change({
  request,
  reply: z.object({ removed: z.string() }),
  decide: (facts, request) => {
    const wish = facts.get(wishes, request.wish);
    if (wish === null) return refuse('unknown-wish', {}, ['wish']);
    if (wish.item !== null) return refuse('wish-planned', { wish: wish.name }, ['wish']);
    if (wish.lots.length > 0) return refuse('wish-has-lots', { wish: wish.name }, ['wish']);
    return ok({ entries: [newEntry(wishRemoved, { id: wish.id, car: null })], reply: { removed: wish.id } });
  },
});
