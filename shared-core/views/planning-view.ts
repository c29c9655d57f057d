import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { obligations } from '../care/obligation.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import { carsHere } from '../fleet/departure.ts';
import { findHousehold, sameName } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { compareNames } from '../result/compare-names.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { accessGroups, accessGroupSchema } from '../sessions/access-group.ts';
import { carDays, carDaysSchema } from '../sessions/car-days.ts';
import { placeDays, placeDaysSchema } from '../sessions/place-days.ts';
import { placeSchema, standingPlaces } from '../sessions/place.ts';
import { planSettings, planSettingsSchema } from '../sessions/plan-settings.ts';
import { taskKey, taskRefSchema } from '../sessions/task-ref.ts';
import { worthWhiles, worthWhileSchema } from '../sessions/worth-while.ts';

const namedTaskSchema = z.object({ task: taskRefSchema, name: z.string() });

const planningCarSchema = z.object({
  id: z.string(),
  name: z.string(),
  /** Days that have not passed, the next first. */
  days: z.array(carDaysSchema),
  /** What is opened up on it, with the items that need it. */
  access: z.array(accessGroupSchema.extend({ items: z.array(z.string()) })),
  /** What its items name as opened up, though nobody has said how many minutes that takes. */
  accessUnstated: z.array(z.string()),
  pairs: z.array(worthWhileSchema.extend({ whenName: z.string(), alsoName: z.string() })),
  /** What can be made a pair of. */
  tasks: z.array(namedTaskSchema),
});
export type PlanningCar = z.infer<typeof planningCarSchema>;

const planningPlaceSchema = placeSchema.extend({
  assumed: z.boolean(),
  /** Days that have not passed, the next first. */
  days: z.array(placeDaysSchema),
});
export type PlanningPlace = z.infer<typeof planningPlaceSchema>;

export const planningViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  settings: planSettingsSchema,
  /** The settings are our defaults: nobody has stated any. */
  assumed: z.boolean(),
  places: z.array(planningPlaceSchema),
  cars: z.array(planningCarSchema),
});
export type PlanningView = z.infer<typeof planningViewSchema>;

/** Everything that a plan is made of and that the keeper may say. */
export const showPlanning = ask({
  request: z.strictObject({}),
  reply: planningViewSchema,
  answer: (facts, _request, { today }) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const { settings, assumed } = planSettings(facts);
    return ok({
      today,
      currency: household.value.currency,
      settings,
      assumed,
      places: standingPlaces(facts).map((one) => ({ ...one.place, assumed: one.assumed, days: ahead(facts.all(placeDays).filter((days) => days.place === one.place.id), today) })),
      cars: [...carsHere(facts)].sort((a, b) => compareNames(a.name, b.name)).map((car) => planningCar(facts, car, today)),
    });
  },
});

function planningCar(facts: Facts, car: Car, today: LocalDate): PlanningCar {
  const items = facts.ofCar(serviceItems, car.id);
  const groups = facts.ofCar(accessGroups, car.id);
  const tasks = tasksOf(facts, car);
  const nameOf = (key: string) => tasks.find((one) => taskKey(one.task) === key)?.name ?? key;
  const named = [...new Map(items.flatMap((item) => item.access).map((name) => [name.toLowerCase(), name])).values()];
  return {
    id: car.id,
    name: car.name,
    days: ahead(facts.ofCar(carDays, car.id), today),
    access: groups.map((group) => ({ ...group, items: items.filter((item) => item.access.some((name) => sameName(name, group.name))).map((item) => item.name) })),
    accessUnstated: named.filter((name) => !groups.some((group) => sameName(group.name, name))),
    pairs: facts.ofCar(worthWhiles, car.id).map((pair) => ({ ...pair, whenName: nameOf(taskKey(pair.when)), alsoName: nameOf(taskKey(pair.also)) })),
    tasks,
  };
}

/** Its items, and the tests that a garage does with it. */
function tasksOf(facts: Facts, car: Car): PlanningCar['tasks'] {
  const tests = facts.ofCar(obligations, car.id).filter((one) => one.kind === 'roadworthiness-test');
  const named = [
    ...facts.ofCar(serviceItems, car.id).map(({ id, name }) => ({ task: { kind: 'item' as const, id }, name })),
    ...tests.map(({ id, kind, name }) => ({ task: { kind: 'obligation' as const, id }, name: name ?? say({ key: `obligation-${kind}`, values: {} }) })),
  ];
  return named.sort((a, b) => compareNames(a.name, b.name));
}

function ahead<Days extends { readonly from: LocalDate; readonly to: LocalDate }>(all: readonly Days[], today: LocalDate): Days[] {
  return all.filter((one) => one.to >= today).sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
}
