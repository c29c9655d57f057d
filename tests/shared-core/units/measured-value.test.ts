import { describe, expect, test } from 'vitest';
import { canonicalPerUnit, canonicalUnit, canonicalValue, dimensionOf, measuredUnitSchema, type MeasuredUnit } from '../../../shared-core/units/measured-value.ts';

const value = (typed: number, unit: MeasuredUnit) => {
  const canonical = canonicalValue({ value: typed, unit });
  return canonical.ok ? canonical.value : canonical.refusal.code;
};

describe('a measured value', () => {
  // Source: 1 in = 25.4 mm exactly, C = (F - 32) / 1.8 (NIST SP 811 B.8; from memory); 2/32 in = 1.5875 mm (computed).
  test.each([
    { typed: 2, unit: '32nds', canonical: 1.5875 },
    { typed: 4, unit: '32nds', canonical: 3.175 },
    { typed: 1, unit: '32nds', canonical: 0.79375 },
    { typed: 0.0625, unit: 'in', canonical: 1.5875 },
    { typed: 1.5875, unit: 'mm', canonical: 1.5875 },
    { typed: 1.6, unit: 'mm', canonical: 1.6 },
    { typed: -34, unit: 'F', canonical: -36.666667 },
    { typed: 32, unit: 'F', canonical: 0 },
    { typed: -37, unit: 'C', canonical: -37 },
    { typed: 12.4, unit: 'V', canonical: 12.4 },
    { typed: 2.5, unit: '%', canonical: 2.5 },
    { typed: 3, unit: 'grade', canonical: 3 },
    { typed: 0.1 + 0.2, unit: '1', canonical: 0.3 },
    { typed: -0, unit: 'mm', canonical: 0 },
  ] as const)('$typed $unit is $canonical', ({ typed, unit, canonical }) => {
    expect(Object.is(value(typed, unit), canonical)).toBe(true);
  });

  test.each([Number.NaN, Infinity, 1e7, -1e7])('%s is none', (typed) => {
    expect(value(typed, 'mm')).toBe('not-a-measured-value');
  });

  test('its rate is that of its canonical unit, whatever the zero', () => {
    for (const unit of measuredUnitSchema.options) {
      const [at0, at10] = [value(0, unit), value(10, unit)];
      expect(Number(at10) - Number(at0)).toBeCloseTo(10 * canonicalPerUnit(unit), 5);
      expect(dimensionOf(canonicalUnit(dimensionOf(unit)))).toBe(dimensionOf(unit));
      expect(canonicalPerUnit(canonicalUnit(dimensionOf(unit)))).toBe(1);
    }
  });
});
