import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceUnitSchema, metresSchema, typedDistanceSchema } from '../../../shared-core/units/distance-schema.ts';
import { addMetres, fromTyped, inUnit, LARGEST_METRES, metres, metresFromKilometres, METRES_IN, toKilometres, type DistanceUnit, type Metres } from '../../../shared-core/units/distance.ts';

function whole(value: number, unit: DistanceUnit): Metres {
  const distance = fromTyped({ value, unit });
  if (!distance.ok) throw new Error(`refused: ${value} ${unit}`);
  return distance.value;
}

describe('metres of what was typed', () => {
  // 1 mi = 1.609 344 km exactly. Source: NIST SP 811 (2008) B.8 (seen in a copy); the products worked out by hand.
  test.each([
    { case: '10 000 mi', value: 10_000, unit: 'mi', metres: 16_093_440, source: 'reference copy of SP 811: 16 093.44 km' },
    { case: '1 mi', value: 1, unit: 'mi', metres: 1609, source: '1609.344 m to the whole metre' },
    { case: '3000 mi', value: 3000, unit: 'mi', metres: 4_828_032, source: 'computed: 4828.032 km' },
    { case: '12 000 mi', value: 12_000, unit: 'mi', metres: 19_312_128, source: 'computed: 19 312.128 km' },
    { case: '15 000 km', value: 15_000, unit: 'km', metres: 15_000_000, source: 'by hand' },
    { case: '0.5 m up', value: 0.0005, unit: 'km', metres: 1, source: 'by hand' },
    { case: 'tenths of a trip counter', value: 1234.5, unit: 'km', metres: 1_234_500, source: 'by hand' },
    { case: 'nothing', value: 0, unit: 'mi', metres: 0, source: 'by hand' },
    { case: 'the most km', value: 10_000_000, unit: 'km', metres: LARGEST_METRES, source: 'our own limit' },
    { case: 'the most mi', value: 6_213_711.92, unit: 'mi', metres: 9_999_999_996, source: 'computed: 6 213 711.92 x 1609.344 = 9 999 999 996.18' },
  ] as const)('$case = $metres m ($source)', ({ value, unit, metres: expected }) => {
    expect(fromTyped({ value, unit })).toEqual({ ok: true, value: expected });
    expect(typedDistanceSchema.parse({ value, unit })).toEqual({ value, unit });
  });

  test.each([
    { case: 'below 0', value: -1 },
    { case: 'below 0 by less than half a metre', value: -0.0001 },
    { case: 'over the most', value: 10_000_000.001 },
    { case: 'infinite', value: Infinity },
    { case: 'no number', value: Number.NaN },
    { case: 'beyond exact whole numbers', value: 1e300 },
  ])('$case is refused', ({ value }) => {
    expect(fromTyped({ value, unit: 'km' })).toMatchObject({ ok: false, refusal: { code: 'not-a-distance' } });
    expect(typedDistanceSchema.safeParse({ value, unit: 'km' }).success).toBe(false);
  });

  test('other units, texts and missing ones are refused', () => {
    expect(['mile', 'MI', 'm', '', null].map((unit) => distanceUnitSchema.safeParse(unit).success)).toEqual([false, false, false, false, false]);
    expect(typedDistanceSchema.safeParse({ value: '12', unit: 'km' }).success).toBe(false);
    expect(typedDistanceSchema.safeParse({ value: 12 }).success).toBe(false);
  });
});

describe('metres', () => {
  test.each([
    { value: 0, taken: true }, { value: LARGEST_METRES, taken: true }, { value: LARGEST_METRES + 1, taken: false },
    { value: -1, taken: false }, { value: 0.5, taken: false }, { value: Number.NaN, taken: false }, { value: 2 ** 53, taken: false },
  ])('$value: $taken', ({ value, taken }) => {
    expect(metres(value).ok).toBe(taken);
    expect(metresSchema.safeParse(value).success).toBe(taken);
  });

  test('a negative zero is a zero', () => {
    expect(metres(-0)).toEqual({ ok: true, value: 0 });
    expect(fromTyped({ value: -0, unit: 'mi' })).toEqual({ ok: true, value: 0 });
  });

  test('from a formula never lie below 0', () => {
    expect([metresFromKilometres(1.0004), metresFromKilometres(1.0006), metresFromKilometres(-3)]).toEqual([1000, 1001, 0]);
  });

  test('add up', () => {
    expect(addMetres(whole(1, 'km'), whole(10_000, 'mi'))).toBe(16_094_440);
  });
});

describe('units shown', () => {
  // Source: NIST SP 811 (2008) B.8; quotients worked out: 15 000 / 1.609344 = 9320.5679, 20 000 / 1.609344 = 12 427.4238.
  test.each([
    { case: '15 000 km in mi', km: 15_000, unit: 'mi', shown: 9321 },
    { case: '20 000 km in mi', km: 20_000, unit: 'mi', shown: 12_427 },
    { case: '15 000 km in km', km: 15_000, unit: 'km', shown: 15_000 },
  ] as const)('$case: $shown', ({ km, unit, shown }) => {
    expect(inUnit(whole(km, 'km'), unit)).toBe(shown);
  });

  test('any whole odometer value comes back as it was typed', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 6_213_711 }), fc.constantFrom<DistanceUnit>('km', 'mi'), (value, unit) => {
      expect(inUnit(whole(value, unit), unit)).toBe(value);
    }));
  });

  test('more typed is never less in metres, and rounding is within half a metre', () => {
    const anyValue = fc.double({ min: 0, max: 6_000_000, noNaN: true });
    fc.assert(fc.property(anyValue, anyValue, fc.constantFrom<DistanceUnit>('km', 'mi'), (one, other, unit) => {
      const [less, more] = one < other ? [one, other] : [other, one];
      expect(whole(less, unit)).toBeLessThanOrEqual(whole(more, unit));
      expect(Math.abs(whole(one, unit) - one * METRES_IN[unit])).toBeLessThanOrEqual(0.5);
      expect(metresFromKilometres(toKilometres(whole(one, unit)))).toBe(whole(one, unit));
    }));
  });
});
