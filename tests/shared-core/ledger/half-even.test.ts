import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { halfEven, timeValue } from '../../../shared-core/ledger/own-time.ts';

describe('halves to even', () => {
  // The table of IEEE 754 roundTiesToEven as Python's decimal prints it (computed; reference "trade and law", section 7), in tenths.
  test.each([[55, 6], [25, 2], [16, 2], [11, 1], [10, 1], [-10, -1], [-11, -1], [-16, -2], [-25, -2], [-55, -6]])('%i tenths are %i', (tenths, whole) => {
    expect(halfEven(tenths, 10)).toBe(whole);
  });

  // To two places: 0.125, 0.135, 0.025, 0.035, 1.005, 2.675, 10.045, 10.055 (the same table; binary floats miss 2.675), in thousandths.
  test.each([[125, 12], [135, 14], [25, 2], [35, 4], [1005, 100], [2675, 268], [10_045, 1004], [10_055, 1006]])('%i thousandths are %i hundredths', (thousandths, hundredths) => {
    expect(halfEven(thousandths, 10)).toBe(hundredths);
  });

  // The fraction of a tax within a gross price (reference M4: 20 % is 1/6, 17.5 % 7/47, 15 % 3/23, 5 % 1/21), in pence.
  test.each([[12_000, 20, 120, 2000], [11_750, 7, 47, 1750], [11_500, 3, 23, 1500], [8000, 1, 21, 381], [6000, 1, 6, 1000]])('of %i, %i in %i is %i', (gross, numerator, denominator, tax) => {
    expect(halfEven(gross * numerator, denominator)).toBe(tax);
  });

  test('never further than half from what was divided, and even where it is just half', () => {
    fc.assert(fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), fc.integer({ min: 1, max: 10_000 }), (numerator, denominator) => {
      const rounded = halfEven(numerator, denominator);
      const twice = Math.abs(2 * (rounded * denominator - numerator));
      expect(twice).toBeLessThanOrEqual(denominator);
      if (twice === denominator) expect(Math.abs(rounded % 2)).toBe(0);
    }));
  });

  // By hand: 90 minutes at 15.01 an hour are 22.515, which is 22.52; 30 at 15.01 are 7.505, which is 7.50.
  test.each([[90, 1501, 2252], [30, 1501, 750], [45, 0, 0], [0, 9999, 0]])('%i minutes at %i an hour count %i', (minutes, hour, minor) => {
    expect(timeValue(minutes, hour)).toBe(minor);
  });
});
