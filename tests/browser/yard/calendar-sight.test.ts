import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween } from '../../../shared-core/calendar/local-date.ts';
import { A_YEAR, mostShift, movedSight, quarterOf, spanHolding, steppedSight, STEPS } from '../../../renderer/yard/calendar-sight.ts';
import { monthTicks, timeScale } from '../../../renderer/yard/time-scale.ts';
import { day } from '../../shared-core/calendar/day.ts';

const TODAY = day('2026-11-25');
const WIDTH = 900;
const sights = fc.record({ span: fc.constantFrom(...STEPS), shift: fc.nat(1100) }).map(({ span, shift }) => movedSight(TODAY, { span, shift: 0 }, shift));

/** Source for all: our own rule of what may be seen, worked by hand. */
describe('the part of the calendar that is seen', () => {
  test('goes from a month to three years, each step wider than the one before', () => {
    expect([STEPS[0], STEPS.at(-1)]).toEqual([1, 36]);
    for (const [at, step] of STEPS.entries()) expect(step).toBeGreaterThan(STEPS[at - 1] ?? 0);
  });

  test.each([
    { case: 'nearer from a year', sight: A_YEAR, step: -1, is: { span: 8, shift: 0 } },
    { case: 'wider from a year', sight: A_YEAR, step: 1, is: { span: 18, shift: 0 } },
    { case: 'never nearer than a month', sight: { span: 1, shift: 40 }, step: -1, is: { span: 1, shift: 40 } },
    { case: 'never wider than three years', sight: { span: 36, shift: 0 }, step: 1, is: { span: 36, shift: 0 } },
    { case: 'wider at the far end comes back', sight: { span: 24, shift: 365 }, step: 1, is: { span: 36, shift: 0 } },
  ] as const)('$case', ({ sight, step, is }) => expect(steppedSight(TODAY, sight, step)).toEqual(is));

  test('keeps the day that is pointed at under the pointer, to a day, where the ends allow it', () => {
    fc.assert(
      fc.property(sights, fc.constantFrom(-1 as const, 1 as const), fc.integer({ min: 170, max: 880 }), (sight, step, x) => {
        const next = steppedSight(TODAY, sight, step, { x, width: WIDTH });
        const [before, after] = [timeScale(TODAY, sight, WIDTH), timeScale(TODAY, next, WIDTH)];
        const atEnd = next.shift === 0 || next.shift === mostShift(TODAY, next.span);
        const dayAt = (scale: typeof before) => (x - scale.todayX) / scale.pixelsADay;
        // A month more or less has up to three days more or less, wherever it begins.
        if (!atEnd) expect(Math.abs(dayAt(before) - dayAt(after))).toBeLessThanOrEqual(3.5);
      }),
    );
  });

  test('never goes before today, nor past three years, by more days than months differ in', () => {
    fc.assert(
      fc.property(sights, fc.array(fc.integer({ min: -400, max: 400 }), { maxLength: 6 }), (start, moves) => {
        const sight = moves.reduce((now, days) => movedSight(TODAY, now, days), start);
        expect(sight.shift).toBeGreaterThanOrEqual(0);
        expect(daysBetween(addMonths(TODAY, 36), timeScale(TODAY, sight, WIDTH).end)).toBeLessThanOrEqual(3);
      }),
    );
  });

  test('today is where the sight begins until one moves ahead, and left of the paper after a quarter at most', () => {
    for (const span of STEPS.filter((one) => one < 36)) {
      expect(timeScale(TODAY, { span, shift: 0 }, WIDTH).todayX).toBe(162);
      expect(timeScale(TODAY, movedSight(TODAY, { span, shift: 0 }, quarterOf(TODAY, { span, shift: 0 })), WIDTH).todayX).toBeLessThan(0);
    }
  });

  test('a plan is never shown by a month alone', () => expect(spanHolding(TODAY, addDays(TODAY, 5))).toBe(3));
});

describe('weeks on the line of months', () => {
  test('are its Mondays, where a month fills the paper, and none where a year does', () => {
    // Source: the calendar of 2026; 30 November and 7, 14 and 21 December are Mondays.
    const near = monthTicks(timeScale(TODAY, { span: 1, shift: 0 }, WIDTH)).filter((tick) => tick.kind === 'week').map((tick) => tick.date);
    expect(near).toEqual(expect.arrayContaining(['2026-12-07', '2026-12-14', '2026-12-21']));
    expect(near).not.toContain('2026-11-30');
    expect(monthTicks(timeScale(TODAY, A_YEAR, WIDTH)).some((tick) => tick.kind === 'week')).toBe(false);
  });
});
