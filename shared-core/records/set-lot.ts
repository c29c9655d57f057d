import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { lots, lotSchema, lotSet, type Lot } from '../parts/lot.ts';
import { parts, type Part } from '../parts/part.ts';
import { allOf, known, newId, setWhole } from '../parts/set-whole.ts';
import { specifications } from '../parts/specification.ts';
import { earliest, type LocalDate } from '../calendar/local-date.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { lotMovements, sum, thousandths } from './lot-movements.ts';
import { workRecords } from './work-record.ts';

const shape = lotSchema.shape;

/** States a lot on the shelf; one that was used stays of its part and holds at least what was used. What had expired when it came is kept, and `parts.show` names it. */
export const setLot = setWhole(
  lotSet,
  z.strictObject({
    ...shape,
    id: newId,
    openedOn: shape.openedOn.default(null),
    expires: shape.expires.default(null),
    keepsOpenedDays: shape.keepsOpenedDays.default(null),
    where: shape.where.default(null),
    paidMinor: shape.paidMinor.default(null),
    order: shape.order.default(null),
  }),
  lotSchema,
  (facts, lot, moment) => allOf(() => known(facts, parts, lot.part, 'part'), () => checkDays(lot, moment), () => checkPart(facts, lot), () => checkOrder(facts, lot), () => checkUsed(facts, lot)),
);

function checkDays({ receivedOn, openedOn }: Lot, { today }: Pick<Moment, 'today'>): Result<unknown> {
  if (receivedOn > today) return refuse('date-in-future', { date: receivedOn }, ['receivedOn']);
  if (openedOn !== null && openedOn > today) return refuse('date-in-future', { date: openedOn }, ['openedOn']);
  return openedOn !== null && openedOn < receivedOn ? refuse('opened-before-received', { date: openedOn, received: receivedOn }, ['openedOn']) : ok(null);
}

function checkPart(facts: Facts, { part: id, quantity }: Lot): Result<unknown> {
  const part = facts.get(parts, id);
  if (part === null) return ok(null);
  if (part.contains.length > 0) return refuse('kit-is-no-lot', { part: part.name }, ['part']);
  return isCounted(facts, part) && !Number.isInteger(quantity) ? refuse('counted-whole', { part: part.name }, ['quantity']) : ok(null);
}

/** Filters and the like come in whole ones. */
function isCounted(facts: Facts, part: Part): boolean {
  const units = part.meets.map((id) => facts.get(specifications, id)?.unit);
  return units.some((unit) => unit === 'each' || unit === 'set');
}

/** What a lot of an order cost is its share of the order, and only a delivery makes one: else money would come or go that nobody paid. */
function checkOrder(facts: Facts, lot: Lot): Result<unknown> {
  const before = facts.get(lots, lot.id);
  if ((before?.order ?? null) !== lot.order) return refuse('lot-of-an-order', { part: facts.get(parts, lot.part)?.name ?? lot.part }, ['order']);
  return lot.order !== null && before?.paidMinor !== lot.paidMinor ? refuse('lot-paid-with-order', { part: facts.get(parts, lot.part)?.name ?? lot.part }, ['paidMinor']) : ok(null);
}

function checkUsed(facts: Facts, lot: Lot): Result<unknown> {
  const before = facts.get(lots, lot.id);
  const moved = lotMovements(facts, facts.all(workRecords)).get(lot.id);
  if (before === null || moved === undefined) return ok(null);
  if (lot.part !== before.part) return refuse('lot-of-its-part', { part: facts.get(parts, before.part)?.name ?? before.part }, ['part']);
  const first = [...moved.uses, ...moved.counts].reduce<LocalDate | null>((soonest, { on }) => earliest(soonest, on), null);
  if (first !== null && first < lot.receivedOn) return refuse('used-before-received', { date: first, received: lot.receivedOn }, ['receivedOn']);
  const used = sum(moved.uses);
  // Where it was counted, that says what is left, whatever it held.
  return moved.counts.length === 0 && thousandths(lot.quantity) < used ? refuse('less-than-used', { used: used / 1000 }, ['quantity']) : ok(null);
}
