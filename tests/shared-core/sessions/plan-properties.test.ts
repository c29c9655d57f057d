import { describe, expect, test } from 'vitest';
import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { PlanInstance } from '../../../shared-core/sessions/plan-instance.ts';
import { diceOf, type Dice } from '../parts/order-seeds.ts';
import { middlePlan, smallPlan } from './plan-seeds.ts';
import { answered, planInstanceOf, provenPlan } from './plan-written.ts';

/** Plans with seeds of their own, small and larger; the seed is in the name of each test. */
const plans = [
  ...Array.from({ length: 10 }, (_, i) => ({ seed: 7001 + i, plan: planInstanceOf(smallPlan(7001 + i)) })),
  ...Array.from({ length: 2 }, (_, i) => ({ seed: 8001 + i, plan: planInstanceOf(middlePlan(8001 + i)) })),
];

/** What a plan costs; Infinity where what must be done cannot be. */
async function costOf(plan: PlanInstance): Promise<number> {
  const answer = await answered(plan);
  if (!answer.ok) return Infinity;
  expect(answer.value.status).toBe('optimal');
  return answer.value.totalMinor;
}

function shuffled<Item>(dice: Dice, items: readonly Item[]): Item[] {
  return items.map((item) => ({ item, at: dice.whole(0, 1_000_000) })).sort((a, b) => a.at - b.at).map(({ item }) => item);
}

/** Other names for everything, and another order of every list, the days included. */
function relabelled(dice: Dice, plan: PlanInstance): PlanInstance {
  const [place, task, car, group] = [(id: string) => `__proto__ ${id}`, (id: string) => `"${id}" é`, (id: string) => `of ${id}`, (id: string) => `a, ${id}`];
  const days = shuffled(dice, plan.days.map((date, at) => ({ date, at })));
  return {
    days: days.map(({ date }) => date),
    places: shuffled(dice, plan.places.map((each) => ({ ...each, id: place(each.id) }))),
    tasks: shuffled(dice, plan.tasks.map((each) => ({
      ...{ ...each, id: task(each.id), car: car(each.car), access: shuffled(dice, each.access.map(group)) },
      costMinor: Object.fromEntries(Object.entries(each.costMinor).map(([id, costs]) => [place(id), days.map(({ at }) => costs[at] ?? null)])),
    }))),
    access: shuffled(dice, plan.access.map((each) => ({ ...each, car: car(each.car), id: group(each.id) }))),
    cars: shuffled(dice, plan.cars.map((each) => ({ ...each, id: car(each.id) }))),
    neverAll: shuffled(dice, plan.neverAll.map((list) => shuffled(dice, list.map(car)))),
  };
}

/** All days moved. */
function shifted(by: number, plan: PlanInstance): PlanInstance {
  const move = (date: LocalDate) => addDays(date, by);
  return {
    ...{ ...plan, days: plan.days.map(move) },
    places: plan.places.map((each) => ({ ...each, closed: each.closed.map(move), minutesOn: Object.fromEntries(Object.entries(each.minutesOn).map(([date, minutes]) => [move(date as LocalDate), minutes])) })),
    cars: plan.cars.map((each) => ({ ...each, closed: each.closed.map(move) })),
  };
}

const withPlaces = (plan: PlanInstance, change: (place: PlanInstance['places'][number]) => Partial<PlanInstance['places'][number]>): PlanInstance => ({ ...plan, places: plan.places.map((each) => ({ ...each, ...change(each) })) });

describe.each(plans)('the plan of seed $seed', ({ seed, plan }) => {
  test('names and the order of lists do not matter', async () => {
    expect(await costOf(relabelled(diceOf(seed), plan))).toBe(await costOf(plan));
  });

  test('the calendar does not matter, only which day is which', async () => {
    const [before, after] = [await answered(plan), await answered(shifted(423, plan))];
    if (!before.ok || !after.ok) expect(after).toEqual(before);
    else expect(after.value).toEqual({ ...before.value, sessions: before.value.sessions.map((one) => ({ ...one, day: addDays(one.day, 423) })) });
  });

  test('it is the same each time', async () => {
    expect(await answered(plan)).toEqual(await answered(plan));
  });

  test('a closed day, a car away, fewer minutes and one more list of cars never lower it', async () => {
    const [dice, cost] = [diceOf(seed + 1), await costOf(plan)];
    const [date, { id }] = [dice.one(plan.days), dice.one(plan.places)];
    expect(await costOf(withPlaces(plan, (place) => (place.id === id ? { closed: [...place.closed, date] } : {})))).toBeGreaterThanOrEqual(cost);
    const first = plan.cars.find((car) => car.id === 'c1') ?? { id: 'c1', closed: [], away: [] };
    for (const key of ['closed', 'away'] as const) expect(await costOf({ ...plan, cars: [...plan.cars.filter((car) => car !== first), { ...first, [key]: [...plan.days] }] })).toBeGreaterThanOrEqual(cost);
    expect(await costOf(withPlaces(plan, ({ minutesADay }) => ({ minutesADay: minutesADay - 30 })))).toBeGreaterThanOrEqual(cost);
    expect(await costOf({ ...plan, neverAll: [...plan.neverAll, ['c1', 'c2']] })).toBeGreaterThanOrEqual(cost);
  });

  test('a lower fee, a cheaper minute and a cheaper task never raise it', async () => {
    const [dice, cost] = [diceOf(seed + 2), await costOf(plan)];
    const { id } = dice.one(plan.places);
    expect(await costOf(withPlaces(plan, (place) => (place.id === id ? { openingMinor: place.openingMinor >> 1 } : {})))).toBeLessThanOrEqual(cost);
    expect(await costOf(withPlaces(plan, ({ minuteMinor }) => ({ minuteMinor: minuteMinor >> 1 })))).toBeLessThanOrEqual(cost);
    const cheaper = plan.tasks.map((task) => ({ ...task, costMinor: Object.fromEntries(Object.entries(task.costMinor).map(([at, costs]) => [at, costs.map((one) => (one === null ? null : one >> 1))])) }));
    expect(await costOf({ ...plan, tasks: cheaper })).toBeLessThanOrEqual(cost);
  });

  test('all money times 7: the total times 7', async () => {
    const tasks = plan.tasks.map((task) => ({ ...task, leftUndoneMinor: 7 * task.leftUndoneMinor, costMinor: Object.fromEntries(Object.entries(task.costMinor).map(([at, costs]) => [at, costs.map((one) => (one === null ? null : 7 * one))])) }));
    expect(await costOf({ ...withPlaces(plan, (place) => ({ openingMinor: 7 * place.openingMinor, minuteMinor: 7 * place.minuteMinor })), tasks })).toBe(7 * (await costOf(plan)));
  });

  test('one task more never lowers it, and one that costs nothing to leave changes nothing', async () => {
    const cost = await costOf(plan);
    const extra = { id: 'extra', car: 'c1', minutes: 10, access: [], mustDo: false, costMinor: Object.fromEntries(plan.places.map(({ id }) => [id, plan.days.map(() => 5)])) };
    expect(await costOf({ ...plan, tasks: [...plan.tasks, { ...extra, leftUndoneMinor: 0 }] })).toBe(cost);
    expect(await costOf({ ...plan, tasks: [...plan.tasks, { ...extra, leftUndoneMinor: 900 }] })).toBeGreaterThanOrEqual(cost);
  });
});

describe('an access that is no longer shared', () => {
  /**
   * Every task must be done, on the one day there is, at the one place, which has room for all: the plan is forced, so that only the minutes
   * of the access can change what it costs. Taken apart, each task has an access of its own with the same minutes.
   */
  test.each(Array.from({ length: 12 }, (_, i) => i + 1))('costs exactly its minutes once more for each further task, seed %i', async (seed) => {
    const dice = diceOf(seed);
    const [minutes, minuteMinor, sharing] = [dice.whole(0, 60), dice.whole(0, 9), dice.whole(1, 6)];
    const tasks = Array.from({ length: sharing + dice.whole(0, 3) }, (_, i) => ({
      ...{ id: `t${i}`, car: 'c1', minutes: dice.whole(0, 90), mustDo: true, leftUndoneMinor: 0, costMinor: { home: [dice.whole(0, 900)] } },
      access: i < sharing ? ['airbox'] : [],
    }));
    const plan = { days: ['2027-01-09'], places: [{ id: 'home', openingMinor: 1500, minutesADay: 10_000, minuteMinor }], tasks, access: [{ car: 'c1', id: 'airbox', minutes }] };
    const apart = { ...plan, tasks: tasks.map((task) => ({ ...task, access: task.access.map((id) => `${id} of ${task.id}`) })), access: tasks.slice(0, sharing).map(({ id }) => ({ car: 'c1', id: `airbox of ${id}`, minutes })) };
    const [together, alone] = [await provenPlan(plan), await provenPlan(apart)];
    expect(alone.totalMinor - together.totalMinor).toBe((sharing - 1) * minutes * minuteMinor);
    expect((alone.sessions[0]?.minutes ?? 0) - (together.sessions[0]?.minutes ?? 0)).toBe((sharing - 1) * minutes);
    // By hand: what the rules say it comes to.
    const own = tasks.reduce((sum, task) => sum + (task.costMinor.home[0] ?? 0) + task.minutes * minuteMinor, 0);
    expect(together.totalMinor).toBe(1500 + own + minutes * minuteMinor);
  });
});
