import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { intervalSchema } from './limit.ts';
import { serviceItems, serviceItemSchema, serviceItemSet, type ServiceItem } from './service-item.ts';
import { checkItemMeasure } from './set-wear-limit.ts';

const shape = serviceItemSchema.shape;
const addRequest = z.strictObject({
  id: shape.id.optional(),
  car: z.string().min(1).max(80),
  name: shape.name,
  work: shape.work.default('replace'),
  harm: shape.harm.default('damage'),
  /** The repeat interval; the first one is the same unless given. */
  interval: z.strictObject({ first: intervalSchema.shape.first.optional(), repeat: intervalSchema.shape.repeat }),
  anchor: shape.anchor.default({ kind: 'completion' }),
  history: shape.history.default('unknown'),
  printedDate: shape.printedDate.default(null),
  source: shape.source.default(null),
  confirmed: z.boolean().default(false),
  minutes: shape.minutes.default(null),
  access: shape.access.default([]),
  needs: shape.needs.default([]),
  place: shape.place.default('either'),
  garagePrice: shape.garagePrice.default(null),
  measure: shape.measure.default(null),
});

/** Adds a service item to a car. Unless said otherwise its history is unknown, and nothing is invented for it. */
export const addItem = change({
  request: addRequest,
  reply: z.object({ item: serviceItemSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const { repeat, first } = request.interval;
    const item: ServiceItem = { ...request, id: request.id ?? moment.newId(), car: car.value.id, interval: { first: first ?? repeat, repeat } };
    if (facts.get(serviceItems, item.id) !== null) return refuse('id-taken', { id: item.id }, ['id']);
    const sound = checkAdded(facts, item);
    return sound.ok ? ok({ entries: [newEntry(serviceItemSet, item)], reply: { item } }) : sound;
  },
});

/** Changes a service item: only the fields given. */
export const changeItem = change({
  request: z.strictObject({ ...serviceItemSchema.omit({ car: true }).partial().shape, id: shape.id, interval: intervalSchema.optional() }),
  reply: z.object({ item: serviceItemSchema }),
  decide: (facts, request) => {
    const now = facts.get(serviceItems, request.id);
    if (now === null) return refuse('unknown-item', { item: request.id }, ['id']);
    const item = serviceItemSchema.parse({ ...now, ...request });
    // What is not changed may be from before this was asked for.
    const sound = request.needs === undefined ? checkItem(facts, item) : checkAdded(facts, item);
    return sound.ok ? ok({ entries: [newEntry(serviceItemSet, item)], reply: { item } }) : sound;
  },
});

/** A specification that is needed is named once, with its whole quantity. */
function checkAdded(facts: Facts, item: ServiceItem): Result<ServiceItem> {
  const twice = item.needs.findIndex(({ specification }, at) => item.needs.findIndex((other) => other.specification === specification) < at);
  if (twice >= 0) return refuse('need-twice', { specification: item.needs[twice]?.specification ?? '' }, ['needs', twice, 'specification']);
  return checkItem(facts, item);
}

/** A calendar or certificate anchor counts months alone; what an item is measured by must be sound. */
function checkItem(facts: Facts, item: ServiceItem): Result<ServiceItem> {
  const counted = item.anchor.kind === 'completion';
  if (!counted && item.interval.repeat.months === null) return refuse('anchor-needs-months', {}, ['interval', 'repeat', 'months']);
  if (!counted && item.interval.repeat.distance !== null) return refuse('anchor-has-no-distance', {}, ['interval', 'repeat', 'distance']);
  const measured = item.measure === null ? ok(null) : checkItemMeasure(facts, item.car, item.measure);
  return measured.ok ? ok(item) : measured;
}
