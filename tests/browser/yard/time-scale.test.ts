import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { SPANS } from '../../../renderer/yard/calendar-sight.ts';
import { laidUpStretches, monthTicks, timeScale, yearNames } from '../../../renderer/yard/time-scale.ts';

const day = (text: string): LocalDate => {
  const date = localDate(text);
  return must(date.ok ? date.value : null, 'date');
};
const TODAY = day('2026-11-25');
/** Source for all: worked by hand from the stated rule. */
describe('the calendar as pixels', () => {
  test.each(SPANS)('puts today after the past and the end of %i months on the right edge', (span) => {
    const scale = timeScale(TODAY, { span: span, shift: 0 }, 1000);
    expect(scale.x(TODAY)).toBe(180);
    expect(scale.x(scale.end)).toBeCloseTo(1000, 6);
    expect(scale.x(scale.start)).toBeGreaterThanOrEqual(0);
  });

  test('goes evenly, whatever the months', () => {
    const scale = timeScale(TODAY, { span: 12, shift: 0 }, 1000);
    expect(scale.x(day('2027-03-01')) - scale.x(day('2027-02-01'))).toBeCloseTo((28 * 820) / 365, 6);
  });

  test.each([
    { case: 'a wide paper', width: 2000, todayX: 240 },
    { case: 'a narrow paper', width: 200, todayX: 60 },
  ])('keeps the past within its measures: $case', ({ width, todayX }) => expect(timeScale(TODAY, { span: 12, shift: 0 }, width).todayX).toBe(todayX));
});

describe('the months over the lanes', () => {
  test.each([
    { case: 'a year on 1000 px names every month', span: 12, width: 1000, named: 14 },
    { case: 'three years on 1000 px name every second month', span: 36, width: 1000, named: 22 },
  ] as const)('$case', ({ span, width, named }) => {
    const names = monthTicks(timeScale(TODAY, { span: span, shift: 0 }, width)).filter((tick) => tick.kind !== 'minor');
    expect(names).toHaveLength(named);
    for (const [at, tick] of names.entries()) expect(tick.x - (names[at - 1]?.x ?? -100)).toBeGreaterThanOrEqual(26);
  });

  test('name each year once, clear of the word today', () => {
    for (const width of [490, 700, 1100]) {
      for (const span of SPANS) {
        const scale = timeScale(TODAY, { span: span, shift: 0 }, width);
        const names = yearNames(scale, monthTicks(scale));
        expect(new Set(names.map((one) => one.year)).size).toBe(names.length);
        for (const { x } of names) expect(Math.abs(x - scale.todayX)).toBeGreaterThan(30);
      }
    }
  });
});

describe('laid-up months', () => {
  test('are one stretch through the turn of the year, cut by the paper', () => {
    const scale = timeScale(TODAY, { span: 12, shift: 0 }, 1000);
    const [first, second] = laidUpStretches(scale, [11, 12, 1, 2, 3]);
    expect(first?.from).toBeCloseTo(scale.x(day('2026-11-01')), 6);
    expect(first?.to).toBeCloseTo(scale.x(day('2027-04-01')), 6);
    expect(second?.to).toBe(1000);
  });

  test('lay-ups of their own join them, end where they end, and go on to the edge where nobody knows', () => {
    const scale = timeScale(TODAY, { span: 12, shift: 0 }, 1000);
    const layUp = (from: string, to: string | null) => ({ from: day(from), to: to === null ? null : day(to) });
    const [joined, once, open] = laidUpStretches(scale, [1], [layUp('2027-06-01', '2027-06-10'), layUp('2027-09-01', null), layUp('2026-12-20', '2027-02-03'), layUp('2020-01-01', '2020-02-01')]);
    expect([joined?.from, joined?.to]).toEqual([scale.x(day('2026-12-20')), scale.x(day('2027-02-04'))]);
    expect([once?.from, once?.to]).toEqual([scale.x(day('2027-06-01')), scale.x(day('2027-06-11'))]);
    expect([open?.from, open?.to]).toEqual([scale.x(day('2027-09-01')), 1000]);
  });

  test('are none where the car never sleeps', () => expect(laidUpStretches(timeScale(TODAY, { span: 12, shift: 0 }, 1000), [])).toEqual([]));
});
