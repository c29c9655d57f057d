import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nineDueDays } from '../../../shared-core/care/nine-due-days.ts';
import { dayNumber } from '../../../shared-core/calendar/local-date.ts';
import { dueDayAt, FORESEEABLE_DAYS, probabilityDueBy } from '../../../shared-core/fleet/odometer-forecast.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { intervalDays, waitingCost } from '../../../shared-core/sessions/waiting-cost.ts';
import { day } from '../calendar/day.ts';
import { seededChance } from '../care/line-examples.ts';
import { usageOfVector, usageVectors } from '../fleet/usage-examples.ts';
import { taskDue } from './task-examples.ts';

const number = (date: string) => dayNumber(day(date));
const TODAY = number('2026-11-25');
const on = (task: ReturnType<typeof taskDue>, date: string) => waitingCost(task, number(date), TODAY);
/** Nine due days: some days on from today. */
const spread = (...days: readonly number[]) => days.map((one) => TODAY + one);

describe('what waiting costs', () => {
  test.each([
    { case: 'on the day itself, nothing', task: taskDue('2026-12-05'), date: '2026-12-05', early: 0, late: 0, source: 'by hand' },
    { case: '10 days early of 100: a tenth of its worth', task: taskDue('2026-12-15'), date: '2026-12-05', early: 500, late: 0, source: 'by hand: 5000 * 10 / 100' },
    { case: '3 days late at 60', task: taskDue('2026-12-05'), date: '2026-12-08', early: 0, late: 180, source: 'by hand: 3 * 60' },
    { case: 'late for a year: only from today', task: taskDue('2025-11-25', { late: true }), date: '2026-11-28', early: 0, late: 180, source: 'by hand: 3 * 60; before today is sunk' },
    { case: 'an interval under 30 days counts as 30', task: taskDue('2026-12-15', { countedFrom: number('2026-12-05') }), date: '2026-12-05', early: 1667, late: 0, source: 'by hand: 5000 * 10 / 30 = 1666.67' },
    { case: 'counted from nobody knows when: a year', task: taskDue('2026-12-15', { countedFrom: null }), date: '2026-12-05', early: 137, late: 0, source: 'by hand: 5000 * 10 / 365 = 136.99' },
    { case: 'nine days spread: half of each', task: taskDue('2026-12-05', { dueDays: spread(6, 7, 8, 9, 10, 11, 12, 13, 14), countedFrom: TODAY - 90 }), date: '2026-12-05', early: 56, late: 67, source: 'by hand: (1+2+3+4)/9 = 1.11 days either way; 5000 * 1.11 / 100 = 55.56, 60 * 1.11 = 66.67' },
    { case: 'halves go up', task: taskDue('2026-12-06', { valueMinor: 150 }), date: '2026-12-05', early: 2, late: 0, source: 'by hand: 150 / 100 = 1.5' },
    { case: 'no due day at all', task: taskDue('2026-12-05', { dueDays: [] }), date: '2027-12-05', early: 0, late: 0, source: 'by hand' },
    { case: 'a certificate within the window that keeps its date', task: taskDue('2026-12-20', { legal: { lastDay: day('2026-12-20'), opens: day('2026-11-21'), notBefore: null } }), date: '2026-12-05', early: 0, late: 0, source: 'reference section 1c: nothing is lost in the last month' },
    { case: 'and before it', task: taskDue('2027-01-04', { legal: { lastDay: day('2027-01-04'), opens: day('2026-12-05'), notBefore: null } }), date: '2026-12-04', early: 1550, late: 0, source: 'by hand: 5000 * 31 / 100' },
  ])('$case ($source)', ({ task, date, early, late }) => {
    expect(on(task, date)).toMatchObject({ earlyMinor: early, lateMinor: late });
  });

  test('each later day is never earlier nor less late', () => {
    const days = fc.array(fc.integer({ min: -400, max: 400 }), { minLength: 9, maxLength: 9 });
    fc.assert(fc.property(days, fc.integer({ min: 0, max: 300 }), (due, at) => {
      const task = taskDue('2026-12-05', { dueDays: spread(...due) });
      const [now, then] = [waitingCost(task, TODAY + at, TODAY), waitingCost(task, TODAY + at + 1, TODAY)];
      expect(then.earlyMinor <= now.earlyMinor && then.lateMinor >= now.lateMinor && then.lateDays >= now.lateDays).toBe(true);
    }));
  });
});

describe('expectations over the window', () => {
  const usage = usageOfVector(must(usageVectors[0], 'vector A'));
  const target = usage.lastKm + 5000;
  const limit = usage.lastDay + 175;
  const dueDays = must(nineDueDays({ time: null, printedDate: null, distanceAt: (z) => Math.min(limit, dueDayAt(usage, target, z) ?? Infinity), wear: null, unforeseen: usage.lastDay + FORESEEABLE_DAYS }), 'due days');
  const task = taskDue('2026-12-05', { dueDays, countedFrom: usage.lastDay - 60 });
  const today = usage.lastDay + 40;
  const DRAWS = 20_000;

  /** Days early and late on a day, drawn: the mean, and its standard error. */
  function drawn(draw: () => number, at: number, now = today) {
    const samples = Array.from({ length: DRAWS }, () => {
      const x = draw();
      return { early: Math.max(0, x - at), late: Math.max(0, at - Math.max(x, now)) };
    });
    return (['early', 'late'] as const).map((which) => {
      const mean = samples.reduce((sum, one) => sum + one[which], 0) / DRAWS;
      return { mean, error: Math.sqrt(samples.reduce((sum, one) => sum + (one[which] - mean) ** 2, 0) / DRAWS / DRAWS) };
    });
  }

  test.each([60, 100, 140, 164, 180, 220].map((ahead) => ({ ahead })))('$ahead days after the last reading: what nine days say is what drawing them says, within its error', ({ ahead }) => {
    const chance = seededChance(1000 + ahead);
    const { earlyDays, lateDays } = waitingCost(task, usage.lastDay + ahead, today);
    const [early, late] = drawn(() => must(dueDays[Math.floor(chance() * 9)], 'due day'), usage.lastDay + ahead);
    expect(Math.abs(earlyDays - must(early, 'early').mean)).toBeLessThanOrEqual(4 * must(early, 'early').error + 1e-9);
    expect(Math.abs(lateDays - must(late, 'late').mean)).toBeLessThanOrEqual(4 * must(late, 'late').error + 1e-9);
  });

  test('on a day within the window it may be early and may be late, so that both are weighed', () => {
    for (const ahead of [140, 164]) {
      const { earlyDays, lateDays } = waitingCost(task, usage.lastDay + ahead, today);
      expect(Math.min(earlyDays, lateDays), `${ahead} days after`).toBeGreaterThan(0.5);
    }
  });

  test.each([150, 160, 170].flatMap((now) => [1, 12, 60].map((ahead) => ({ now, ahead }))))('today within the window, $now days after the last reading, and $ahead days on: lateness before today is sunk', ({ now, ahead }) => {
    const [chance, at] = [seededChance(3000 + now + ahead), usage.lastDay + now + ahead];
    const { lateDays } = waitingCost(task, at, usage.lastDay + now);
    const late = must(drawn(() => must(dueDays[Math.floor(chance() * 9)], 'due day'), at, usage.lastDay + now)[1], 'late');
    expect(dueDays.filter((x) => x < usage.lastDay + now).length, 'some are due before today').toBeGreaterThan(0);
    expect(Math.abs(lateDays - late.mean)).toBeLessThanOrEqual(4 * late.error + 1e-9);
    expect(lateDays).toBeLessThanOrEqual(ahead);
  });

  /** The first day by which the target is reached with a probability: by the forecaster's probability, not by its quantiles. */
  function firstDayWith(probability: number): number {
    let [low, high] = [0, FORESEEABLE_DAYS];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (probabilityDueBy(usage, target, usage.lastDay + middle) >= probability) high = middle;
      else low = middle + 1;
    }
    return usage.lastDay + low;
  }

  test.each([60, 100, 140, 164, 180, 220].map((ahead) => ({ ahead })))('$ahead days after: and what drawing the whole law of the odometer says, within its error and the step of nine', ({ ahead }) => {
    const chance = seededChance(2000 + ahead);
    const { earlyDays, lateDays } = waitingCost(task, usage.lastDay + ahead, today);
    const [early, late] = drawn(() => Math.min(limit, firstDayWith(chance())), usage.lastDay + ahead);
    // Nine cases stand for a continuum: the tails beyond 1 in 18 are not drawn out. Measured: a day at most.
    expect(Math.abs(earlyDays - must(early, 'early').mean)).toBeLessThanOrEqual(4 * must(early, 'early').error + 1);
    expect(Math.abs(lateDays - must(late, 'late').mean)).toBeLessThanOrEqual(4 * must(late, 'late').error + 1);
  });

  test('the interval is from when it was last done to the mean due day', () => {
    expect(intervalDays(task)).toBeCloseTo(dueDays.reduce((sum, one) => sum + one, 0) / 9 - (usage.lastDay - 60), 9);
  });
});
