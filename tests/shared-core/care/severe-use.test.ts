import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { underSevereUse } from '../../../shared-core/care/severe-use.ts';

const km = (value: number) => ({ value, unit: 'km' as const });

describe('severe use', () => {
  // Source: our own rule: months floor(f m), at least 1; distance f D. By hand.
  test.each([
    { case: 'ordinary use changes nothing', factor: 1, limit: { months: 12, distance: km(10_000) }, out: { months: 12, distance: km(10_000) } },
    { case: '0.7 of 12 months is 8', factor: 0.7, limit: { months: 12, distance: null }, out: { months: 8, distance: null } },
    { case: '0.7 of 10 months is 7, not 6 by floating point', factor: 0.7, limit: { months: 10, distance: null }, out: { months: 7, distance: null } },
    { case: '0.58 of 50 months is 29, not 28 by floating point', factor: 0.58, limit: { months: 50, distance: null }, out: { months: 29, distance: null } },
    { case: 'never under a month', factor: 0.4, limit: { months: 1, distance: null }, out: { months: 1, distance: null } },
    { case: 'distance alone, in its unit', factor: 0.4, limit: { months: null, distance: { value: 6000, unit: 'mi' as const } }, out: { months: null, distance: { value: 2400, unit: 'mi' } } },
    { case: 'a distance that floating point blurs', factor: 0.7, limit: { months: null, distance: km(10_000.1) }, out: { months: null, distance: km(7000.07) } },
  ])('$case', ({ factor, limit, out }) => {
    expect(underSevereUse(limit, factor)).toEqual(out);
  });

  test('equals whole-number arithmetic for every factor in hundredths and every interval', () => {
    for (let hundredths = 40; hundredths <= 100; hundredths += 1) {
      const wrong = Array.from({ length: 600 }, (_, at) => at + 1).filter((months) => underSevereUse({ months, distance: null }, hundredths / 100).months !== Math.max(1, Math.floor((hundredths * months) / 100)));
      expect({ hundredths, wrong }).toEqual({ hundredths, wrong: [] });
    }
  });

  test('harder use never lengthens, and nothing ever grows', () => {
    const anyFactor = fc.double({ min: 0.4, max: 1, noNaN: true });
    fc.assert(fc.property(anyFactor, anyFactor, fc.integer({ min: 1, max: 600 }), fc.integer({ min: 1, max: 100_000 }), (one, other, months, distance) => {
      const limit = { months, distance: km(distance) };
      const [harder, softer] = [underSevereUse(limit, Math.min(one, other)), underSevereUse(limit, Math.max(one, other))];
      expect(harder.months).toBeLessThanOrEqual(softer.months ?? 0);
      expect(softer.months).toBeLessThanOrEqual(months);
      expect(harder.distance?.value).toBeLessThanOrEqual(softer.distance?.value ?? 0);
      expect(softer.distance?.value).toBeLessThanOrEqual(distance);
    }));
  });
});
