import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PASCALS_IN, pressureFromTyped, pressureIn, pressureUnitSchema, type PressureUnit } from '../../../shared-core/units/pressure.ts';

const whole = (value: number, unit: PressureUnit) => {
  const pressure = pressureFromTyped({ value, unit });
  if (!pressure.ok) throw new Error(`refused: ${value} ${unit}`);
  return pressure.value;
};

describe('pascals of what was typed', () => {
  test.each([
    { case: '1000 psi', value: 1000, unit: 'psi', pascals: 6_894_757, source: 'NIST SP 811 (2008) B.8: 6 894.757 Pa (seen in a copy)' },
    { case: '32 psi', value: 32, unit: 'psi', pascals: 220_632, source: 'reference table: 220.6322 kPa (computed)' },
    { case: '2.2 bar', value: 2.2, unit: 'bar', pascals: 220_000, source: 'a bar is 100 kPa (seen in a handbook)' },
    { case: '230 kPa', value: 230, unit: 'kPa', pascals: 230_000, source: 'by hand' },
    { case: '2 kgf/cm2', value: 2, unit: 'kgf-cm2', pascals: 196_133, source: 'NIST SP 811 (2008) B.8: 98 066.5 Pa (from memory)' },
  ] as const)('$case = $pascals ($source)', ({ value, unit, pascals }) => {
    expect(pressureFromTyped({ value, unit })).toEqual({ ok: true, value: pascals });
  });

  test.each([
    { value: 2.2, psi: 31.908302 }, { value: 2.5, psi: 36.259434 }, { value: 1, psi: 14.503774 },
  ])('$value bar = $psi psi', ({ value, psi }) => {
    // Source: reference table (computed; 14.5038 for one bar seen in a handbook).
    expect(pressureIn(whole(value, 'bar'), 'psi')).toBeCloseTo(psi, 5);
  });

  test.each([0, -1, 0.000001, 200.1, Number.NaN, Infinity])('%d bar is refused', (value) => {
    expect(pressureFromTyped({ value, unit: 'bar' })).toMatchObject({ ok: false, refusal: { code: 'not-a-pressure' } });
  });
});

test('what was typed comes back, to half a pascal', () => {
  fc.assert(fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), fc.constantFrom(...pressureUnitSchema.options), (value, unit: PressureUnit) => {
    expect(Math.abs(pressureIn(whole(value, unit), unit) - value) * PASCALS_IN[unit]).toBeLessThanOrEqual(0.5001);
  }));
});
