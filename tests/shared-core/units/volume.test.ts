import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MICROLITRES_IN, volumeFromTyped, volumeIn, volumeUnitSchema, type VolumeUnit } from '../../../shared-core/units/volume.ts';

describe('microlitres of what was typed', () => {
  // The gallons are the basis, the rest quarters, eighths, 128ths and 160ths of them; each row says how its figure is known.
  test.each([
    { case: 'a litre', value: 1, unit: 'l', microlitres: 1_000_000, source: 'by hand' },
    { case: 'millilitres', value: 4300, unit: 'ml', microlitres: 4_300_000, source: 'by hand' },
    { case: 'a US gallon', value: 1, unit: 'us-gal', microlitres: 3_785_412, source: 'NIST SP 811 (2008) B.8: 3.785 412 L (seen in a copy)' },
    { case: '231 cubic inches', value: 1, unit: 'us-gal', microlitres: Math.round(231 * 25.4 ** 3), source: 'definition of the US gallon (computed, 1 in = 25.4 mm)' },
    { case: 'an imperial gallon', value: 1, unit: 'imp-gal', microlitres: 4_546_090, source: 'NIST SP 811 (2008) B.8 and Units of Measurement Regulations 1995: 4.546 09 L (from memory)' },
    { case: '5 US quarts', value: 5, unit: 'us-qt', microlitres: 4_731_765, source: 'reference table: 4.731 764 73 L (computed)' },
    { case: '4 imperial quarts', value: 4, unit: 'imp-qt', microlitres: 4_546_090, source: 'reference table: 4.546 09 L (computed)' },
    { case: 'a US pint', value: 1, unit: 'us-pt', microlitres: 473_176, source: 'reference table: 0.473 176 473 L (computed)' },
    { case: 'an imperial pint', value: 1, unit: 'imp-pt', microlitres: 568_261, source: 'reference table: 0.568 261 25 L (0.568 seen)' },
    { case: '1000 US fluid ounces', value: 1000, unit: 'us-fl-oz', microlitres: 29_573_530, source: 'reference table: 29.573 529 562 5 mL (2.957353E-05 m3 seen)' },
    { case: 'an imperial fluid ounce', value: 1, unit: 'imp-fl-oz', microlitres: 28_413, source: 'reference table: 28.413 062 5 mL (computed)' },
  ] as const)('$case = $microlitres ($source)', ({ value, unit, microlitres }) => {
    expect(volumeFromTyped({ value, unit })).toEqual({ ok: true, value: microlitres });
  });

  test('an imperial gallon is 1.200 949 925 5 of the other', () => {
    // Source: reference table (computed; 1.201 seen).
    expect(MICROLITRES_IN['imp-gal'] / MICROLITRES_IN['us-gal']).toBeCloseTo(1.2009499255, 9);
  });

  test.each([0, -1, 0.0000004, 1000.1, Number.NaN, Infinity])('%d litres are refused', (value) => {
    expect(volumeFromTyped({ value, unit: 'l' })).toMatchObject({ ok: false, refusal: { code: 'not-a-volume' } });
  });
});

test('what was typed comes back, to a millionth of a litre', () => {
  fc.assert(fc.property(fc.double({ min: 0.001, max: 200, noNaN: true }), fc.constantFrom(...volumeUnitSchema.options), (value, unit: VolumeUnit) => {
    const volume = volumeFromTyped({ value, unit });
    if (!volume.ok) throw new Error(`refused: ${value} ${unit}`);
    expect(Math.abs(volumeIn(volume.value, unit) - value) * MICROLITRES_IN[unit]).toBeLessThanOrEqual(0.5001);
  }));
});
