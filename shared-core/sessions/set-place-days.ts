import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { placeDays, placeDaysRemoved, placeDaysSchema, placeDaysSet, type PlaceDays } from './place-days.ts';
import { ensurePlace } from './ensure-place.ts';

const shape = placeDaysSchema.shape;

/** Closes a place for a stretch of days, or opens it against its habit; with the id of a stretch that stands, states it anew. */
export const setPlaceDays = change({
  request: z.strictObject({ id: shape.id.optional(), place: shape.place, from: shape.from, to: shape.to.optional(), open: z.boolean().default(false), reason: shape.reason }),
  reply: z.object({ days: placeDaysSchema }),
  decide: (facts, request, moment) => {
    const place = ensurePlace(facts, request.place);
    if (!place.ok) return place;
    const days: PlaceDays = { ...request, id: request.id ?? moment.newId(), to: request.to ?? request.from };
    if (days.to < days.from) return refuse('days-end-before', { from: days.from, to: days.to }, ['to']);
    return ok({ entries: [...place.value.entries, newEntry(placeDaysSet, days)], reply: { days } });
  },
});

/** Takes a stretch back: the place is open as ever. */
export const removePlaceDays = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ days: placeDaysSchema }),
  decide: (facts, request) => {
    const days = facts.get(placeDays, request.id);
    if (days === null) return refuse('unknown-days', {}, ['id']);
    return ok({ entries: [newEntry(placeDaysRemoved, { id: days.id, car: null })], reply: { days } });
  },
});
