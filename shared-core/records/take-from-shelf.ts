import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { overlayFacts } from '../journal/overlay-facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { findLot } from '../parts/open-lot.ts';
import { parts } from '../parts/part.ts';
import { shelfTaken, shelfTakingSchema, type ShelfTaking } from '../parts/shelf-taking.ts';
import { specifications } from '../parts/specification.ts';
import { wasteKept, wasteSchema, type Waste } from '../parts/waste.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { checkUse } from './check-mixing.ts';
import { goneOfLots, leftOfLots } from './shelf-left.ts';
import { workRecords } from './work-record.ts';

const shape = shelfTakingSchema.shape;

/** A taking that a lot bears: no more than is left, not before it came, no day ahead. */
export function checkTaking(facts: Facts, taking: ShelfTaking, { today }: Pick<Moment, 'today'>): Result<unknown> {
  const lot = findLot(facts, taking.lot);
  if (!lot.ok) return lot;
  if (taking.on > today) return refuse('date-in-future', { date: taking.on }, ['on']);
  if (taking.on < lot.value.receivedOn) return refuse('before-received', { date: taking.on, received: lot.value.receivedOn }, ['on']);
  if (taking.car !== null && facts.get(cars, taking.car) === null) return refuse('unknown-car', { car: taking.car }, ['car']);
  const taken = withTaking(facts, taking);
  const most = Math.round(lot.value.quantity * 1000);
  const bears = [null, taking.on].every((by) => (goneOfLots(taken, taken.all(workRecords), by).get(taking.lot) ?? 0) <= most);
  return bears ? ok(null) : refuse('lot-used-up', { lot: taking.lot }, ['quantity']);
}

function withTaking(facts: Facts, taking: ShelfTaking): Facts {
  const taken = overlayFacts(facts);
  taken.lay(shelfTaken.apply(taking));
  return taken;
}

/** Takes something of a lot by hand: used without a record (a top-up), or lost. */
export const useLot = change({
  request: z.strictObject({ id: idSchema.optional(), lot: idSchema, quantity: shape.quantity, why: z.enum(['used', 'lost']).default('used'), on: shape.on.optional(), car: shape.car.default(null), note: shape.note.default(''), sure: z.boolean().default(false) }),
  reply: z.object({ taking: shelfTakingSchema, left: z.number() }),
  decide: (facts, { sure, ...request }, moment) => {
    const taking: ShelfTaking = { ...request, id: request.id ?? moment.newId(), on: request.on ?? moment.today };
    const sound = checkTaking(facts, taking, moment);
    if (!sound.ok) return sound;
    const used = taking.car === null || taking.why !== 'used' ? ok(null) : checkUse(facts, { car: taking.car, on: taking.on, lots: [taking.lot], lines: [], sure });
    if (!used.ok) return used;
    const left = leftOfLots(withTaking(facts, taking)).get(taking.lot) ?? 0;
    return ok({ entries: [newEntry(shelfTaken, taking)], reply: { taking, left } });
  },
});

/** Takes a lot, or some of it, off the shelf for disposal, and keeps it as waste at a place. */
export const discardLot = change({
  request: z.strictObject({ lot: idSchema, quantity: shape.quantity.optional(), on: shape.on.optional(), where: wasteSchema.shape.where.default(null), note: shape.note.default('') }),
  reply: z.object({ taking: shelfTakingSchema, waste: wasteSchema }),
  decide: (facts, request, moment) => {
    const lot = findLot(facts, request.lot);
    if (!lot.ok) return lot;
    const quantity = request.quantity ?? leftOfLots(facts).get(request.lot) ?? 0;
    if (quantity === 0) return refuse('lot-used-up', { lot: request.lot }, ['lot']);
    const on = request.on ?? moment.today;
    const taking: ShelfTaking = { id: moment.newId(), lot: request.lot, on, quantity, why: 'waste', car: null, note: request.note };
    const sound = checkTaking(facts, taking, moment);
    if (!sound.ok) return sound;
    const part = facts.get(parts, lot.value.part);
    const unit = part?.meets.map((id) => facts.get(specifications, id)?.unit ?? null)[0] ?? null;
    const waste: Waste = { id: moment.newId(), what: part?.name ?? lot.value.part, quantity, unit, since: on, where: request.where, lot: request.lot, disposed: null, note: request.note };
    return ok({ entries: [newEntry(shelfTaken, taking), newEntry(wasteKept, waste)], reply: { taking, waste } });
  },
});
