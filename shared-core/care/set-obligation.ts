import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { findCar, sameName } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse } from '../result/result.ts';
import { daysLost, lastValidAfter } from './keep-the-date.ts';
import { obligations, obligationSchema, obligationSet, type Obligation } from './obligation.ts';
import { renewalRecorded, renewals, renewalSchema, type Renewal } from './renewal.ts';
import { addMonths } from '../calendar/add-months.ts';
import { addDays, later } from '../calendar/local-date.ts';

const shape = obligationSchema.shape;

/** Adds a dated duty to a car. */
export const addObligation = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    kind: shape.kind,
    name: shape.name.default(null),
    lastValidDay: shape.lastValidDay,
    months: shape.months.default(12),
    keepsDate: z.boolean().default(false),
    noticeDays: shape.noticeDays.default(14),
    price: shape.price.default(null),
  }),
  reply: z.object({ obligation: obligationSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const obligation: Obligation = { ...request, id: request.id ?? moment.newId(), car: car.value.id };
    if (facts.get(obligations, obligation.id) !== null) return refuse('id-taken', { id: obligation.id }, ['id']);
    const twin = twinOf(facts, obligation);
    if (twin !== undefined) return refuse('obligation-there', { id: twin.id, valid: twin.lastValidDay }, ['kind']);
    return ok({ entries: [newEntry(obligationSet, obligation)], reply: { obligation } });
  },
});

/** A car has one roadworthiness test of a name: it is renewed, not added again. */
function twinOf(facts: Facts, { car, kind, name }: Obligation): Obligation | undefined {
  if (kind !== 'roadworthiness-test') return undefined;
  return facts.ofCar(obligations, car).find((one) => one.kind === kind && (one.name === null || name === null ? one.name === name : sameName(one.name, name)));
}

const renewShape = renewalSchema.shape;

/** Records that an obligation was met, and moves its last valid day on. */
export const renewObligation = change({
  request: z.strictObject({
    id: renewShape.id.optional(),
    obligation: renewShape.obligation,
    on: dateSchema.optional(),
    /** As printed on the certificate; else worked out from the interval. */
    lastValidDay: dateSchema.optional(),
    paidMinor: renewShape.paidMinor.default(null),
    reference: renewShape.reference.default(null),
    papers: renewShape.papers.default([]),
  }),
  reply: z.object({
    renewal: renewalSchema,
    obligation: obligationSchema,
    /** Days of the term in force given away by renewing before its last day is kept; 0 where none. */
    daysLost: z.int(),
  }),
  decide: (facts, request, moment) => {
    const now = facts.get(obligations, request.obligation);
    if (now === null) return refuse('unknown-obligation', { obligation: request.obligation }, ['obligation']);
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    const sameDay = facts.ofCar(renewals, now.car).find((one) => one.obligation === now.id && one.on === on);
    if (sameDay !== undefined) return refuse('renewed-that-day', { date: on, valid: sameDay.lastValidDay }, ['on']);
    const id = request.id ?? moment.newId();
    if (facts.get(renewals, id) !== null) return refuse('id-taken', { id }, ['id']);
    const lastValidDay = request.lastValidDay ?? nextLastValidDay(now, on);
    if (lastValidDay === null) return refuse('not-renewed', {}, ['lastValidDay']);
    if (lastValidDay < on) return refuse('valid-before-renewal', { date: lastValidDay }, ['lastValidDay']);
    const renewal: Renewal = { ...request, id, car: now.car, on, lastValidDay };
    const obligation: Obligation = { ...now, lastValidDay };
    return ok({ entries: [newEntry(renewalRecorded, renewal), newEntry(obligationSet, obligation)], reply: { renewal, obligation, daysLost: now.keepsDate && now.months !== null ? daysLost(now.lastValidDay, on, lastValidDay, now.months) : 0 } });
  },
});

/**
 * With *keep the date* as the published rule has it; else the interval after the old day where it still holds, or a day short
 * of it from the day of renewal. A renewal entered late, from before the term in force began, moves nothing.
 */
function nextLastValidDay(now: Obligation, on: Obligation['lastValidDay']): Obligation['lastValidDay'] | null {
  if (now.months === null) return null;
  if (now.keepsDate) return later(now.lastValidDay, lastValidAfter(now.lastValidDay, on, now.months));
  if (on <= addMonths(now.lastValidDay, -now.months)) return now.lastValidDay;
  return on <= now.lastValidDay ? addMonths(now.lastValidDay, now.months) : addDays(addMonths(on, now.months), -1);
}
