import { z } from 'zod';
import type { Car } from '../fleet/car.ts';
import { findCar, sameName } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { serviceItems } from './service-item.ts';
import { servicePlanLineSchema, servicePlanRemoved, servicePlans, servicePlanSchema, servicePlanSet, type ServicePlan, type ServicePlanLine } from './service-plan.ts';

const shape = servicePlanSchema.shape;
const line = servicePlanLineSchema.shape;

const lineRequest = z.strictObject({
  item: line.item.default(null),
  /** A line on an item takes the item's name and kind of work unless given. */
  name: line.name.optional(),
  work: line.work.optional(),
});

/** Names a service and its lines; with the id of one that stands, states it anew. */
export const setServicePlan = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    name: shape.name,
    from: shape.from.optional(),
    to: shape.to.default(null),
    lines: z.array(lineRequest).min(1).max(80),
  }),
  reply: z.object({ plan: servicePlanSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const lines = request.lines.map((asked, at) => lineOf(facts, car.value, asked, at));
    const refused = lines.find((one) => !one.ok);
    if (refused?.ok === false) return refused;
    const plan: ServicePlan = { ...request, id: request.id ?? moment.newId(), car: car.value.id, from: request.from ?? moment.today, lines: lines.flatMap((one) => (one.ok ? [one.value] : [])) };
    const sound = checkPlan(facts, plan);
    return sound.ok ? ok({ entries: [newEntry(servicePlanSet, plan)], reply: { plan } }) : sound;
  },
});

/** Takes a service away; what was done stays recorded. */
export const removeServicePlan = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ plan: servicePlanSchema }),
  decide: (facts, request) => {
    const plan = facts.get(servicePlans, request.id);
    if (plan === null) return refuse('unknown-service', { service: request.id }, ['id']);
    return ok({ entries: [newEntry(servicePlanRemoved, { id: plan.id, car: plan.car })], reply: { plan } });
  },
});

function lineOf(facts: Facts, car: Car, asked: z.infer<typeof lineRequest>, at: number): Result<ServicePlanLine> {
  const item = asked.item === null ? null : facts.get(serviceItems, asked.item);
  if (asked.item !== null && item?.car !== car.id) return refuse('unknown-item', { item: asked.item }, ['lines', at, 'item']);
  const name = asked.name ?? item?.name;
  if (name === undefined) return refuse('line-without-name', {}, ['lines', at, 'name']);
  return ok({ item: asked.item, name, work: asked.work ?? item?.work ?? 'check' });
}

function checkPlan(facts: Facts, plan: ServicePlan): Result<ServicePlan> {
  const standing = facts.get(servicePlans, plan.id);
  if (standing !== null && standing.car !== plan.car) return refuse('id-taken', { id: plan.id }, ['id']);
  const namesake = facts.ofCar(servicePlans, plan.car).find((one) => one.id !== plan.id && sameName(one.name, plan.name));
  if (namesake !== undefined) return refuse('service-name-taken', { name: namesake.name, from: namesake.from }, ['name']);
  if (plan.to !== null && plan.to < plan.from) return refuse('service-ends-before', { from: plan.from, to: plan.to }, ['to']);
  const twice = plan.lines.find((one, at) => plan.lines.findIndex((other) => sameLine(one, other)) !== at);
  return twice === undefined ? ok(plan) : refuse('line-twice', { line: twice.name }, ['lines']);
}

function sameLine(one: ServicePlanLine, other: ServicePlanLine): boolean {
  return one.item === null || other.item === null ? sameName(one.name, other.name) : one.item === other.item;
}
