import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { emptyBoard } from '../../../shared-core/sessions/plan-board.ts';
import { boundOf, penaltiesOf, soundPrices } from '../../../shared-core/sessions/plan-bound.ts';
import { sessionsWithin } from '../../../shared-core/sessions/plan-enumerate.ts';
import type { PlanFacts } from '../../../shared-core/sessions/plan-facts.ts';
import { slotKnapsacks } from '../../../shared-core/sessions/plan-knapsack.ts';
import { raiseBound } from '../../../shared-core/sessions/plan-ascent.ts';
import { dropOptions, startQuest } from '../../../shared-core/sessions/plan-quest.ts';
import { workOutPlan } from '../../../shared-core/sessions/work-out-plan.ts';
import { diceOf } from '../parts/order-seeds.ts';
import { bruteForcePlan } from './plan-brute-force.ts';
import { smallPlan } from './plan-seeds.ts';
import { planInstanceOf, provenPlan } from './plan-written.ts';

/** Small plans that can be done, with prices of their own for each task: what a proof is made of. */
const plans = Array.from({ length: 80 }, (_, i) => 20_001 + i).flatMap((seed) => {
  const [written, dice] = [smallPlan(seed), diceOf(seed + 5)];
  const facts = workOutPlan(planInstanceOf(written));
  const least = bruteForcePlan(written);
  if (!facts.ok || least === null) return [];
  const prices = soundPrices(facts.value, Float64Array.from(written.tasks, () => dice.whole(0, 4000)));
  return [{ seed, written, facts: facts.value, least, prices }];
});

/** A session by the numbers of its tasks, and what it costs less what its tasks are worth; only sessions that fit, tried one by one. */
function everySession(facts: PlanFacts, slot: number, prices: Float64Array): readonly { readonly tasks: readonly number[]; readonly value: number }[] {
  const { day, place } = must(facts.slots[slot], 'slot');
  const { instance } = facts;
  const at = must(instance.places[place], 'place');
  const going = [...facts.tasks.keys()].filter((task) => must(facts.tasks[task], 'task').options.some((option) => option.slot === slot));
  return Array.from({ length: 2 ** going.length - 1 }, (_, i) => i + 1).flatMap((mask) => {
    const tasks = going.filter((_, bit) => ((mask >> bit) & 1) === 1);
    const held = tasks.map((task) => must(instance.tasks[task], 'task'));
    const opened = instance.access.filter((group) => held.some((task) => task.car === group.car && task.access.includes(group.id)));
    const minutes = [...held, ...opened].reduce((sum, one) => sum + one.minutes, 0);
    if (minutes > (at.minutesOn[must(instance.days[day], 'day')] ?? at.minutesADay)) return [];
    const cost = held.reduce((sum, task) => sum + must(task.costMinor[at.id]?.[day] ?? null, 'cost'), at.openingMinor + minutes * at.minuteMinor);
    return [{ tasks, value: tasks.reduce((value, task) => value - (prices[task] ?? 0), cost) }];
  });
}

describe('what prices prove of small plans', () => {
  test('the cheapest session of each slot is the cheapest of all that fit, tried one by one', () => {
    let opened = 0;
    for (const { seed, facts, prices } of plans) {
      const { sessions } = boundOf(facts, slotKnapsacks(facts, () => true), prices);
      sessions.forEach(({ value }, slot) => {
        const all = everySession(facts, slot, prices).map((one) => one.value);
        expect(value, `seed ${seed}, slot ${slot}`).toBeCloseTo(Math.min(0, ...all), 6);
        if (value < 0) opened += 1;
      });
    }
    expect(opened).toBeGreaterThan(50);
  });

  test('no plan costs less than the bound, whatever the prices', () => {
    for (const { seed, facts, prices, least } of plans) expect(boundOf(facts, slotKnapsacks(facts, () => true), prices).minor, `seed ${seed}`).toBeLessThanOrEqual(least);
  });

  test('how far a session with a task is above the bound is what trying them one by one gives', () => {
    for (const { seed, facts, prices } of plans) {
      const sacks = slotKnapsacks(facts, () => true);
      const bound = boundOf(facts, sacks, prices);
      const penalties = penaltiesOf(facts, sacks, bound);
      facts.tasks.forEach(({ options }, task) => options.forEach(({ slot }) => {
        const holding = everySession(facts, slot, prices).filter(({ tasks }) => tasks.includes(task)).map((one) => one.value);
        expect(penalties[slot * facts.tasks.length + task], `seed ${seed}, task ${task}, slot ${slot}`).toBeCloseTo(Math.min(...holding) - must(bound.sessions[slot], 'session').value, 6);
      }));
    }
  });

  test('the sessions within a way of the bound are all that are so, tried one by one', () => {
    let counted = 0;
    for (const { seed, facts, prices } of plans) {
      const sacks = slotKnapsacks(facts, () => true);
      const bound = boundOf(facts, sacks, prices);
      const found = must(sessionsWithin(facts, sacks, bound, 1500, 100_000), 'sessions').map(({ slot, tasks }) => `${slot}: ${tasks.join()}`);
      const all = facts.slots.flatMap((_, slot) => everySession(facts, slot, prices).filter(({ value }) => value <= must(bound.sessions[slot], 'session').value + 1500).map(({ tasks }) => `${slot}: ${tasks.join()}`));
      expect([...found].sort(), `seed ${seed}`).toEqual(all.sort());
      counted += all.length;
    }
    expect(counted).toBeGreaterThan(300);
  });

  test('of the best plan no option is dropped, as long as a dearer one is known', async () => {
    let dropped = 0;
    for (const { seed, written, facts, least } of plans) {
      const empty = emptyBoard(facts);
      const quest = startQuest(facts, { ...empty, totalMinor: least + 300 });
      await raiseBound(quest, { rounds: 60, step: 1, planEvery: 1000 }, {});
      dropOptions(quest);
      const best = await provenPlan(written);
      for (const { day, place, tasks } of best.sessions) {
        const slot = facts.slots.findIndex((one) => facts.instance.days[one.day] === day && facts.instance.places[one.place]?.id === place);
        for (const id of tasks) expect(quest.keep(facts.instance.tasks.findIndex((task) => task.id === id), slot), `seed ${seed}: ${id} on ${day}`).toBe(true);
      }
      dropped += facts.tasks.reduce((count, { options }, task) => count + options.filter(({ slot }) => !quest.keep(task, slot)).length, 0);
    }
    expect(dropped).toBeGreaterThan(50);
  });
});
