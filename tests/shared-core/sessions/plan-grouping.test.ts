import { describe, expect, test } from 'vitest';
import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';
import published from '../../reference/plan-programs.json' with { type: 'json' };
import { diceOf } from '../parts/order-seeds.ts';
import { bestConsecutive, bestGrouping, partitions, type Penalty } from './grouping.ts';
import { provenPlan } from './plan-written.ts';

const DAY_ZERO = '2027-01-01' as LocalDate;

/** What is to be done: each in one session, at what the time costs; the days are labels of the times. */
function grouped(count: number, times: readonly number[], setUp: number, costs: (activity: number, time: number) => number | null): PlanInstanceAsWritten {
  return {
    days: times.map((_, at) => addDays(DAY_ZERO, at)),
    places: [{ id: 'home', openingMinor: setUp, minutesADay: 0 }],
    tasks: Array.from({ length: count }, (_, i) => ({ id: `${i + 1}`, car: 'c1', minutes: 0, mustDo: true, leftUndoneMinor: 0, costMinor: { home: times.map((time) => costs(i, time)) } })),
  };
}

const groupsOf = ({ sessions }: Awaited<ReturnType<typeof provenPlan>>) => sessions.map(({ tasks }) => tasks.map((id) => Number(id) - 1));

/** Numbers from low to high, both in, in so many steps for each. */
const grid = (low: number, high: number, steps = 1) => Array.from({ length: (high - low) * steps + 1 }, (_, i) => low + i / steps);

describe('activities that share a set-up', () => {
  const { setUp, activities, ...figures } = published.grouping;

  /** Repairs expected in a time since the last preventive work. Source: minimal repair, power-law wear. */
  const repairs = ({ repair, life, shape }: (typeof activities)[number], time: number) => repair * (time / life) ** shape;
  /** The interval that costs least by the time, alone; its derivative is nothing where repairs * (shape - 1) is the cost of doing it. */
  const interval = (one: (typeof activities)[number]) => one.life * ((one.preventive + setUp) / (one.repair * (one.shape - 1))) ** (1 / one.shape);
  const rate = (one: (typeof activities)[number]) => (one.preventive + setUp + repairs(one, interval(one))) / interval(one);
  const penalty: Penalty = (i, time) => {
    const one = activities[i];
    if (one === undefined) throw new Error('no activity');
    const shift = time - one.at;
    return repairs(one, interval(one) + shift) - repairs(one, interval(one)) - shift * rate(one);
  };
  const times = grid(30, 79, 2);

  test('the formulas give the figures of the reference for A', () => {
    const [a] = activities;
    if (a === undefined) throw new Error('no A');
    expect(interval(a)).toBeCloseTo(figures.intervalOfA, 9);
    expect(rate(a)).toBeCloseTo(figures.rateOfA, 9);
    // By hand: for a shape of 2 the penalty is repair * shift² / life²: 200 * 25 / 10000.
    expect([penalty(0, 25), penalty(0, 35), penalty(0, 30)].map((h) => Math.round(h * 1e9) / 1e9)).toEqual([0.5, 0.5, 0]);
    expect([...partitions(5)].length).toBe(52);
  });

  test('the plan is the best of all 52 partitions, and saves what the reference says but for the steps of half a day', async () => {
    const best = bestGrouping(5, times, setUp, penalty);
    expect(figures.saving - best.saving).toBeGreaterThanOrEqual(0);
    expect(best.saving).toBeCloseTo(figures.saving, 1);
    expect(bestConsecutive(5, times, setUp, penalty)).toBeCloseTo(best.saving, 9);
    // A hundred thousandths: what rounding five costs can shift.
    const plan = await provenPlan(grouped(5, times, setUp * 100_000, (i, time) => Math.round(100_000 * penalty(i, time))));
    expect(Math.abs(5 * setUp - plan.totalMinor / 100_000 - best.saving)).toBeLessThanOrEqual(5e-5);
    expect(groupsOf(plan).map((group) => group.map((i) => activities[i]?.name))).toEqual(figures.groups);
    const dates = plan.sessions.map(({ day }) => times[times.findIndex((_, at) => addDays(DAY_ZERO, at) === day)] ?? NaN);
    figures.groupDates.forEach((date, at) => expect(Math.abs((dates[at] ?? NaN) - date)).toBeLessThanOrEqual(1 / 2));
  });

  test('where penalties are each activity\'s own, the best groups are not neighbours in time, and the plan finds them', async () => {
    const { at, early, late, ...known } = published.consecutiveFails;
    const linear: Penalty = (i, time) => Math.max(0, (at[i] ?? 0) - time) * (early[i] ?? 0) + Math.max(0, time - (at[i] ?? 0)) * (late[i] ?? 0);
    const best = bestGrouping(4, grid(0, 10), known.setUp, linear);
    expect([best.saving, bestConsecutive(4, grid(0, 10), known.setUp, linear)]).toEqual([known.saving, known.consecutiveSaving]);
    const plan = await provenPlan(grouped(4, grid(0, 10), known.setUp, linear));
    expect(plan.totalMinor).toBe(4 * known.setUp - known.saving);
    expect(plan.sessions).toMatchObject([{ day: DAY_ZERO, tasks: ['1', '3'] }, { day: addDays(DAY_ZERO, 10), tasks: ['2', '4'] }]);
  });

  test('penalties of one a day either way', async () => {
    const { at, setUp: each, saving } = published.sameAbsolute;
    const plan = await provenPlan(grouped(6, grid(0, 30), each, (i, time) => Math.abs(time - (at[i] ?? 0))));
    expect(6 * each - plan.totalMinor).toBe(saving);
  });

  test('seeded cases: the plan is the best of all partitions, though neighbours alone would sometimes save less', async () => {
    let missed = 0;
    for (let seed = 1; seed <= 25; seed += 1) {
      const dice = diceOf(seed);
      const [count, each] = [dice.whole(3, 6), dice.whole(5, 40)];
      const list = Array.from({ length: count }, () => ({ at: dice.whole(0, 20), ...dice.one([{ early: 100, late: 100 }, { early: 100, late: 1 }, { early: 1, late: 100 }]) })).sort((a, b) => a.at - b.at);
      const linear: Penalty = (i, time) => Math.max(0, (list[i]?.at ?? 0) - time) * (list[i]?.early ?? 0) + Math.max(0, time - (list[i]?.at ?? 0)) * (list[i]?.late ?? 0);
      const best = bestGrouping(count, grid(0, 20), each, linear);
      expect(count * each - (await provenPlan(grouped(count, grid(0, 20), each, linear))).totalMinor, `seed ${seed}`).toBe(best.saving);
      if (bestConsecutive(count, grid(0, 20), each, linear) < best.saving) missed += 1;
    }
    expect(missed).toBeGreaterThan(0);
  });
});

describe('fewest sessions, so that each task falls into its window', () => {
  type Window = readonly [number, number];

  /** By the earliest end, a session on that day, and on to the first window that it misses. Source: as plan-programs.json, stabbing. */
  function fewestByEnd(windows: readonly Window[]): number {
    let [count, last] = [0, -Infinity];
    for (const [from, to] of [...windows].sort((a, b) => a[1] - b[1])) {
      if (from <= last) continue;
      [count, last] = [count + 1, to];
    }
    return count;
  }

  const sessionsFor = async (windows: readonly Window[]) => {
    const times = grid(0, Math.max(...windows.map(([, to]) => to)));
    return (await provenPlan(grouped(windows.length, times, 1, (i, time) => (time >= (windows[i]?.[0] ?? 0) && time <= (windows[i]?.[1] ?? 0) ? 0 : null)))).totalMinor;
  };

  test.each(published.stabbing.cases)('$windows take $fewest', async ({ windows, fewest }) => {
    const pairs = windows.map(([from = 0, to = 0]): Window => [from, to]);
    expect([await sessionsFor(pairs), fewestByEnd(pairs)]).toEqual([fewest, fewest]);
  });

  test('seeded windows take as many as choosing by the earliest end', async () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const dice = diceOf(seed);
      const windows = Array.from({ length: dice.whole(5, 15) }, (): Window => {
        const from = dice.whole(0, 30);
        return [from, from + dice.whole(0, 9)];
      });
      expect(await sessionsFor(windows), `seed ${seed}`).toBe(fewestByEnd(windows));
    }
  });
});
