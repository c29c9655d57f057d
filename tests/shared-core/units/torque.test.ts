import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MILLINEWTON_METRES_IN, torqueFromTyped, torqueIn, torqueUnitSchema, type TorqueUnit } from '../../../shared-core/units/torque.ts';

const whole = (value: number, unit: TorqueUnit) => {
  const torque = torqueFromTyped({ value, unit });
  if (!torque.ok) throw new Error(`refused: ${value} ${unit}`);
  return torque.value;
};

describe('factors', () => {
  test.each([
    { unit: 'lbf-ft', printed: 1.355818, digits: 6, source: 'NIST SP 811 (2008) B.8 (seen in a copy)' },
    { unit: 'lbf-ft', printed: 1.3558179483314004, digits: 15, source: 'exact product (computed)' },
    { unit: 'lbf-in', printed: 0.1129848, digits: 7, source: 'NIST SP 811 (2008) B.8 (seen in a copy)' },
    { unit: 'lbf-in', printed: 0.1129848290276167, digits: 15, source: 'exact product (computed)' },
    { unit: 'kgf-m', printed: 9.80665, digits: 12, source: 'NIST SP 811 (2008) B.8, exact (seen in a copy)' },
    { unit: 'kgf-cm', printed: 0.0980665, digits: 12, source: 'a hundredth of it (computed)' },
  ] as const)('1 $unit = $printed N m ($source)', ({ unit, printed, digits }) => {
    expect(MILLINEWTON_METRES_IN[unit] / 1000).toBeCloseTo(printed, digits);
  });
});

describe('thousandths of a newton metre of what was typed', () => {
  // Source: reference table, figures computed from the exact factors.
  test.each([
    { case: '80 lbf ft', value: 80, unit: 'lbf-ft', thousandths: 108_465 },
    { case: '100 lbf ft', value: 100, unit: 'lbf-ft', thousandths: 135_582 },
    { case: '88.5075 lbf in', value: 88.5075, unit: 'lbf-in', thousandths: 10_000 },
    { case: '3.6 kgf m', value: 3.6, unit: 'kgf-m', thousandths: 35_304 },
    { case: '110 N m', value: 110, unit: 'Nm', thousandths: 110_000 },
  ] as const)('$case = $thousandths', ({ value, unit, thousandths }) => {
    expect(torqueFromTyped({ value, unit })).toEqual({ ok: true, value: thousandths });
  });

  test('110 N m are 81.1318 lbf ft; 25 N m are 2.5493 kgf m', () => {
    expect(torqueIn(whole(110, 'Nm'), 'lbf-ft')).toBeCloseTo(81.1318, 4);
    expect(torqueIn(whole(25, 'Nm'), 'kgf-m')).toBeCloseTo(2.5493, 4);
  });

  test.each([0, -5, 0.0004, 10_000.1, Number.NaN, Infinity])('%d N m is refused', (value) => {
    expect(torqueFromTyped({ value, unit: 'Nm' })).toMatchObject({ ok: false, refusal: { code: 'not-a-torque' } });
  });
});

test('what was typed comes back, to half a thousandth of a newton metre', () => {
  fc.assert(fc.property(fc.double({ min: 0.01, max: 600, noNaN: true }), fc.constantFrom(...torqueUnitSchema.options), (value, unit: TorqueUnit) => {
    expect(Math.abs(torqueIn(whole(value, unit), unit) - value) * MILLINEWTON_METRES_IN[unit]).toBeLessThanOrEqual(0.5001);
  }));
});
