import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { wasteKept, wastes, wasteSchema, type Waste } from '../parts/waste.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { papers } from './paper.ts';

const shape = wasteSchema.shape;

/** Writes down something kept to be disposed of rightly, and where it stands. */
export const keepWaste = change({
  request: z.strictObject({ id: idSchema.optional(), what: shape.what, quantity: shape.quantity.default(null), unit: shape.unit.default(null), since: shape.since.optional(), where: shape.where.default(null), note: shape.note.default('') }),
  reply: z.object({ waste: wasteSchema }),
  decide: (facts, request, moment) => {
    const standing = request.id === undefined ? null : facts.get(wastes, request.id);
    const waste: Waste = { ...request, id: request.id ?? moment.newId(), since: request.since ?? standing?.since ?? moment.today, lot: standing?.lot ?? null, disposed: standing?.disposed ?? null };
    if (waste.since > moment.today) return refuse('date-in-future', { date: waste.since }, ['since']);
    return ok({ entries: [newEntry(wasteKept, waste)], reply: { waste } });
  },
});

/** Says where waste went, and when; with the paper for it where there is one. */
export const disposeWaste = change({
  request: z.strictObject({ waste: idSchema, on: shape.since.optional(), how: shape.disposed.unwrap().shape.how, paper: shape.disposed.unwrap().shape.paper.default(null) }),
  reply: z.object({ waste: wasteSchema }),
  decide: (facts, request, moment) => {
    const standing = facts.get(wastes, request.waste);
    if (standing === null) return refuse('unknown-waste', { waste: request.waste }, ['waste']);
    if (standing.disposed !== null) return refuse('waste-gone', { date: standing.disposed.on }, ['waste']);
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (on < standing.since) return refuse('disposed-before-kept', { date: on, since: standing.since }, ['on']);
    if (request.paper !== null && facts.get(papers, request.paper) === null) return refuse('unknown-paper', { paper: request.paper }, ['paper']);
    const waste: Waste = { ...standing, disposed: { on, how: request.how, paper: request.paper } };
    return ok({ entries: [newEntry(wasteKept, waste)], reply: { waste } });
  },
});
