import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inTurn, longestRise } from '../../../../shared-core/views/import/import-turns.ts';

/** The longest run that never falls, by trying every one: for at most 12 values. */
function longestByTrying(values: readonly number[]): number {
  let longest = 0;
  for (let chosen = 0; chosen < 2 ** values.length; chosen += 1) {
    const run = values.filter((_, at) => (chosen >> at) & 1);
    if (run.every((value, at) => value >= (run[at - 1] ?? value))) longest = Math.max(longest, run.length);
  }
  return longest;
}

describe('the longest rise', () => {
  test('never falls, and none is longer', () => {
    fc.assert(fc.property(fc.array(fc.nat(9), { maxLength: 11 }), (values) => {
      const run = [...longestRise(values)].sort((a, b) => a - b).map((at) => values[at] ?? 0);
      expect(run.every((value, at) => value >= (run[at - 1] ?? value))).toBe(true);
      expect(run).toHaveLength(longestByTrying(values));
    }));
  });

  test('holds every place without a value', () => {
    expect([...longestRise([null, 9, null, 1, 2])].sort()).toEqual([0, 2, 3, 4]);
  });
});

describe('rows in turn', () => {
  const row = (car: string, date: string, metres: number | null) => ({ car, date, metres });

  test('a slip in the first row is decided on last', () => {
    const rows = [row('a', '2026-01-01', 90), row('a', '2026-01-03', 12), row('a', '2026-01-02', 11)];
    expect(inTurn(rows).map(({ date }) => date)).toEqual(['2026-01-02', '2026-01-03', '2026-01-01']);
  });

  test('cars do not disturb each other, and no row is lost', () => {
    const dates = fc.integer({ min: 1, max: 28 }).map((day) => `2026-01-${String(day).padStart(2, '0')}`);
    fc.assert(fc.property(fc.array(fc.record({ car: fc.constantFrom('a', 'b'), date: dates, metres: fc.option(fc.nat(50)) }), { maxLength: 20 }), (rows) => {
      const turned = inTurn(rows);
      expect(new Set(turned)).toEqual(new Set(rows));
      for (const car of ['a', 'b']) expect(turned.filter((one) => one.car === car)).toEqual(inTurn(rows.filter((one) => one.car === car)));
    }));
  });
});
