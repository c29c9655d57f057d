import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { lots, lotSchema, lotSet, type Lot } from './lot.ts';

/** The lot of an id. */
export function findLot(facts: Facts, id: string): Result<Lot> {
  const lot = facts.get(lots, id);
  return lot === null ? refuse('unknown-lot', { lot: id }, ['lot']) : ok(lot);
}

/** Says when a lot was opened, and how long it keeps from then on. */
export const openLot = change({
  request: z.strictObject({ lot: idSchema, on: lotSchema.shape.receivedOn.optional(), keepsOpenedDays: lotSchema.shape.keepsOpenedDays.optional() }),
  reply: z.object({ lot: lotSchema }),
  decide: (facts, request, moment) => {
    const found = findLot(facts, request.lot);
    if (!found.ok) return found;
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (on < found.value.receivedOn) return refuse('before-received', { date: on, received: found.value.receivedOn }, ['on']);
    const lot: Lot = { ...found.value, openedOn: on, keepsOpenedDays: request.keepsOpenedDays === undefined ? found.value.keepsOpenedDays : request.keepsOpenedDays };
    return ok({ entries: [newEntry(lotSet, lot)], reply: { lot } });
  },
});

/** Puts a lot to another place. */
export const moveLot = change({
  request: z.strictObject({ lot: idSchema, where: lotSchema.shape.where }),
  reply: z.object({ lot: lotSchema }),
  decide: (facts, request) => {
    const found = findLot(facts, request.lot);
    if (!found.ok) return found;
    const lot: Lot = { ...found.value, where: request.where };
    return ok({ entries: [newEntry(lotSet, lot)], reply: { lot } });
  },
});
