import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COST_KINDS, sumOf, type Cost } from '../../../shared-core/ledger/posting.ts';
import { costsByYear } from '../../../shared-core/ledger/years.ts';
import { anyDate, day } from '../calendar/day.ts';

const cost = (on: string, kind: Cost['kind'], minor: number): Cost => ({ on: day(on), kind, minor, side: { kind: 'car', car: 'pip' }, source: { kind: 'record', id: 'r' }, of: null });

describe('costs by year', () => {
  // By hand.
  test.each([
    { case: 'nothing', costs: [], years: [] },
    { case: 'the latest first, each by kind', costs: [cost('2025-12-31', 'parts', 100), cost('2026-01-01', 'labour', 20), cost('2026-07-01', 'insurance', 5485), cost('2026-08-01', 'labour', -5)], years: [{ year: 2026, totalMinor: 5500, byKind: { labour: 15, insurance: 5485 } }, { year: 2025, totalMinor: 100, byKind: { parts: 100 } }] },
  ])('$case', ({ costs, years }) => {
    expect(costsByYear(costs)).toEqual(years);
  });

  test('every year is the sum of its kinds, and all years that of all costs', () => {
    const anyCost = fc.record({ on: anyDate(day('2015-01-01'), day('2026-12-31')), kind: fc.constantFrom(...COST_KINDS), minor: fc.integer({ min: -1_000_000, max: 1_000_000 }) }).map(({ on, kind, minor }) => cost(on, kind, minor));
    fc.assert(fc.property(fc.array(anyCost, { maxLength: 40 }), (costs) => {
      const years = costsByYear(costs);
      for (const one of years) expect(Object.values(one.byKind).reduce((sum, minor) => sum + minor, 0)).toBe(one.totalMinor);
      expect(years.reduce((sum, one) => sum + one.totalMinor, 0)).toBe(sumOf(costs));
    }));
  });
});
