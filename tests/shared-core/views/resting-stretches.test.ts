import { expect, test } from 'vitest';
import type { LayUp } from '../../../shared-core/fleet/lay-up.ts';
import { restingStretches } from '../../../shared-core/views/resting-stretches.ts';
import { day } from '../calendar/day.ts';

const layUp = (from: string, to: string | null) => ({ id: 'a', car: 'pip', from: day(from), to: to === null ? null : day(to), note: '' }) satisfies LayUp;

/** Source for all: worked by hand from the stated rule. */
test.each([
  { case: 'none', months: [], layUps: [], stretches: [] },
  { case: 'months, cut at both ends and joined over the new year', months: [11, 12, 1], layUps: [], stretches: [['2025-11-20', '2026-01-31'], ['2026-11-01', '2026-11-25']] },
  { case: 'a lay-up that goes on', months: [], layUps: [layUp('2026-10-01', null)], stretches: [['2026-10-01', '2026-11-25']] },
  { case: 'a lay-up that touches a month', months: [3], layUps: [layUp('2026-04-01', '2026-04-20')], stretches: [['2026-03-01', '2026-04-20']] },
  { case: 'a lay-up inside a month', months: [3], layUps: [layUp('2026-03-05', '2026-03-10')], stretches: [['2026-03-01', '2026-03-31']] },
  { case: 'a lay-up before the first day', months: [], layUps: [layUp('2024-03-05', '2025-03-10')], stretches: [] },
])('a car rests: $case', ({ months, layUps, stretches }) => {
  expect(restingStretches({ laidUpMonths: months, layUps }, day('2025-11-20'), day('2026-11-25')).map(({ from, to }) => [from, to])).toEqual(stretches);
});
