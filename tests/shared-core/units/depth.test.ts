import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthFromTyped, depthIn, depthUnitSchema, NANOMETRES_IN, type DepthUnit } from '../../../shared-core/units/depth.ts';

const whole = (value: number, unit: DepthUnit) => {
  const depth = depthFromTyped({ value, unit });
  if (!depth.ok) throw new Error(`refused: ${value} ${unit}`);
  return depth.value;
};

describe('nanometres of what was typed', () => {
  test.each([
    { case: '2/32 in', value: 2, unit: '32nds', nanometres: 1_587_500, source: 'reference table: 1.5875 mm exactly (computed)' },
    { case: '1.5875 mm', value: 1.5875, unit: 'mm', nanometres: 1_587_500, source: 'the same by hand' },
    { case: '0.0625 in', value: 0.0625, unit: 'in', nanometres: 1_587_500, source: 'the same by hand' },
    { case: '1.6 mm', value: 1.6, unit: 'mm', nanometres: 1_600_000, source: 'by hand' },
    { case: '0.028 in', value: 0.028, unit: 'in', nanometres: 711_200, source: 'reference table: 0.7112 mm (computed)' },
    { case: '0.035 in', value: 0.035, unit: 'in', nanometres: 889_000, source: 'reference table: 0.889 mm (computed)' },
    { case: 'an inch', value: 1, unit: 'in', nanometres: 25_400_000, source: 'NIST SP 811 (2008) B.8, exact (seen in a table)' },
    { case: 'nothing left', value: -0, unit: 'mm', nanometres: 0, source: 'by hand' },
  ] as const)('$case = $nanometres ($source)', ({ value, unit, nanometres }) => {
    expect(depthFromTyped({ value, unit })).toEqual({ ok: true, value: nanometres });
  });

  test('one law\'s limit lies below the other\'s', () => {
    expect(whole(2, '32nds')).toBeLessThan(whole(1.6, 'mm'));
    // Source: reference table: 1.6 mm = 2.0157/32 in (computed).
    expect(depthIn(whole(1.6, 'mm'), '32nds')).toBeCloseTo(2.0157, 4);
  });

  test.each([-0.0000001, -1, 2000.1, Number.NaN, Infinity])('%d mm is refused', (value) => {
    expect(depthFromTyped({ value, unit: 'mm' })).toMatchObject({ ok: false, refusal: { code: 'not-a-depth' } });
  });
});

test('what was typed comes back, to half a nanometre', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 60, noNaN: true }), fc.constantFrom(...depthUnitSchema.options), (value, unit: DepthUnit) => {
    expect(Math.abs(depthIn(whole(value, unit), unit) - value) * NANOMETRES_IN[unit]).toBeLessThanOrEqual(0.5001);
  }));
});
