import { describe, expect, test } from 'vitest';
import { verifyPlan } from '../../../shared-core/sessions/plan-verify.ts';
import { laggards, seededPlan, type SeededPlan } from './plan-storm.ts';

/** A twentieth of the storm's households with every test run; any number by STORM_HOUSEHOLDS. */
const HOUSEHOLDS = Number(process.env['STORM_HOUSEHOLDS'] ?? 25);
const plans: SeededPlan[] = [];
const solved = () => plans.flatMap((plan) => ('answer' in plan ? [plan] : []));

describe('plans of seeded households', () => {
  test(`${HOUSEHOLDS} are planned, and those refused are refused for a legal date`, { timeout: 3_600_000 }, async () => {
    for (let seed = 1; seed <= HOUSEHOLDS; seed += 1) plans.push(await seededPlan(seed));
    const refused = plans.flatMap((plan) => ('refused' in plan ? [plan.refused] : []));
    expect(refused.filter((code) => !code.startsWith('plan-legal') && code !== 'plan-must-do-not-all')).toEqual([]);
    expect(refused.length).toBeLessThan(HOUSEHOLDS / 5);
    expect(solved().filter(({ answer }) => answer.status === 'optimal').length).toBe(solved().length);
    // The households are such that something is at stake.
    expect(solved().filter(({ problem }) => [...problem.tasks.values()].some((task) => task.late)).length).toBeGreaterThan(HOUSEHOLDS / 2);
    expect(solved().filter(({ view }) => (view.savingMinor ?? 0) > 0).length).toBeGreaterThan(HOUSEHOLDS / 3);
  });

  test('every plan passes its verifier, and its headings sum to its total', () => {
    for (const { problem, answer, view } of solved()) {
      expect(verifyPlan(problem.instance, answer)).toEqual([]);
      expect(Object.values(view.cost).reduce((sum, minor) => sum + minor, 0)).toBe(answer.totalMinor);
    }
  });

  test('no plan costs more than doing each task by itself', () => {
    for (const { view } of solved()) expect(view.savingMinor ?? 0).toBeGreaterThanOrEqual(0);
  });

  test('every late item stands in the first session that can hold it, unless the plan is cheaper so', () => {
    const all = solved().flatMap((plan, at) => laggards(plan).map((one) => ({ at, ...one })));
    expect(all.filter((one) => one.deltaMinor <= 0)).toEqual([]);
    // There are late items that an earlier session could hold, so that this says something.
    expect(all.length).toBeGreaterThan(HOUSEHOLDS / 10);
  });

  test('every placed task has a reason that says something of it, and every sentence is whole', () => {
    for (const { view } of solved()) {
      const texts = [...view.sessions.flatMap((session) => session.tasks.map((task) => task.why.text)), ...view.left.map((task) => task.why.text), ...view.summary.map((one) => one.text), ...view.notes.map((one) => one.text)];
      for (const text of texts) expect(text).toMatch(/^[A-Z][^{}]*\.$/);
      for (const text of texts) expect(text).not.toMatch(/undefined|null|NaN|Infinity/);
    }
  });
});
