import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DueState } from '../../../shared-core/care/due-window.ts';
import { bySoonest } from '../../../shared-core/views/soonest-first.ts';
import { anyDate, day } from '../calendar/day.ts';

const of = (name: string, state: DueState, likely: string | null = null, days: number | null = null, earliest: string | null = likely) =>
  ({ name, state, likely: likely === null ? null : day(likely), earliest: earliest === null ? null : day(earliest), lateBy: days === null ? null : { days } });

describe('soonest first', () => {
  test('late ones, the latest of them foremost, then by state, date and name; nothing known last', () => {
    const order = [
      of('late a year', 'late', '2025-11-25', 365), of('late a day', 'late', '2026-11-24', 1), of('late by distance', 'late', '2026-11-20', 0),
      of('probably', 'probably-due', '2026-11-20'), of('open', 'open', '2026-12-10'), of('open, later', 'open', '2028-01-10'),
      of('a ahead', 'ahead', '2027-03-01'), of('b ahead', 'ahead', '2027-03-01'), of('y early edge only', 'ahead', null, null, '2030-01-01'), of('x early edge only', 'ahead', null, null, '2030-01-02'), of('never', 'ahead'), of('unknown', 'unknown'),
    ];
    const shuffled = [3, 9, 0, 7, 5, 1, 11, 10, 8, 2, 6, 4].flatMap((at) => order[at] ?? []);
    expect(shuffled.sort(bySoonest).map((one) => one.name)).toEqual(order.map((one) => one.name));
  });

  test('a car with nothing comes last', () => {
    const one = of('x', 'unknown');
    expect([bySoonest(undefined, undefined), bySoonest(undefined, one) > 0, bySoonest(one, undefined) < 0]).toEqual([0, true, true]);
  });

  test('is an order: the same both ways round, and passed on', () => {
    const any = fc
      .record({ name: fc.constantFrom('a', 'b'), state: fc.constantFrom<DueState>('late', 'probably-due', 'open', 'ahead', 'unknown'), likely: fc.option(anyDate(day('2026-01-01'), day('2026-01-05'))), days: fc.integer({ min: 1, max: 3 }) })
      .map(({ name, state, likely, days }) => of(name, state, likely, state === 'late' ? days : null));
    fc.assert(fc.property(any, any, any, (a, b, c) => {
      expect(Math.sign(bySoonest(a, b)) + Math.sign(bySoonest(b, a))).toBe(0);
      if (bySoonest(a, b) <= 0 && bySoonest(b, c) <= 0) expect(bySoonest(a, c)).toBeLessThanOrEqual(0);
    }), { numRuns: 500 });
  });
});
