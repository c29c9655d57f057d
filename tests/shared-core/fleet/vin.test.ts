import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { vinCheckDigit, vinChecks, vinShapeSchema } from '../../../shared-core/fleet/vin.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

// Source of the rule: 49 CFR 565.15, tables III and IV (seen in quotation).
const TABLE_III = 'A1 B2 C3 D4 E5 F6 G7 H8 J1 K2 L3 M4 N5 P7 R9 S2 T3 U4 V5 W6 X7 Y8 Z9 00 11 22 33 44 55 66 77 88 99'.split(' ');
const TABLE_IV = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
const ALPHABET = TABLE_III.map((row) => row.charAt(0));

describe('check digit', () => {
  test.each([
    { vin: '1G4AH59H45G118341', digit: '4', source: '49 CFR 565.15 table V, its own example (seen in quotation, recomputed); sum 411' },
    { vin: '1J9RP1A36A1644345', digit: '6', source: 'NHTSA outline for new manufacturers (seen, recomputed); sum 314' },
    { vin: '1M8GDM9AXKP042788', digit: 'X', source: 'worked on two pages (seen, recomputed); sum 351' },
    { vin: '11111111111111111', digit: '1', source: 'widely published (memory, recomputed): the weights add up to 89; sum 89' },
    { vin: '5GZCZ43D13S812715', digit: '1', source: 'memory, recomputed; sum 408' },
  ])('$vin: $digit ($source)', ({ vin, digit }) => {
    expect(vinCheckDigit(vin)).toBe(digit);
    expect(vinChecks(vin)).toBe(true);
  });

  test.each([
    { case: 'another check character', vin: '1M8GDM9A1KP042788', digit: 'X', source: 'computed' },
    { case: 'last digit one more', vin: '1M8GDM9AXKP042789', digit: '1', source: 'computed: 353' },
    { case: '27 typed as 72', vin: '1M8GDM9AXKP047288', digit: '4', source: 'computed: 356' },
    { case: 'S read for 5', vin: 'SGZCZ43D13S812715', digit: 'X', source: 'memory, recomputed: 384' },
    { case: 'a European filler Z', vin: 'WP0ZZZ99ZTS392124', digit: '8', source: 'memory, recomputed' },
  ])('$case does not check ($source)', ({ vin, digit }) => {
    expect(vinCheckDigit(vin)).toBe(digit);
    expect(vinChecks(vin)).toBe(false);
  });

  // A 1 among sixteen zeros is worth its weight; each character beside it is worth its table value.
  test('gives every character its value of table III', () => {
    for (const row of TABLE_III) {
      // At position 17 with weight 2.
      const sum = 2 * Number(row.charAt(1));
      expect(`${row} ${vinCheckDigit(`${'0'.repeat(16)}${row.charAt(0)}`)}`).toBe(`${row} ${sum % 11 === 10 ? 'X' : sum % 11}`);
    }
  });

  test('gives every position its weight of table IV', () => {
    const weighed = TABLE_IV.map((_, at) => vinCheckDigit(`${'0'.repeat(at)}1${'0'.repeat(16 - at)}`));
    expect(weighed).toEqual(TABLE_IV.map((weight) => (weight === 10 ? 'X' : String(weight))));
  });

  test('finds every single wrong character that has another value, and position 9 counts for nothing in the sum', () => {
    const anyVin = fc.array(fc.constantFrom(...ALPHABET), { minLength: 17, maxLength: 17 }).map((all) => all.join(''));
    const withDigit = (vin: string) => vin.slice(0, 8) + vinCheckDigit(vin) + vin.slice(9);
    const valueOf = (character: string) => TABLE_III.find((row) => row.startsWith(character))?.charAt(1);
    fc.assert(fc.property(anyVin, fc.integer({ min: 0, max: 16 }), fc.constantFrom(...ALPHABET), (any, at, other) => {
      const vin = withDigit(any);
      expect(vinChecks(vin)).toBe(true);
      if (at === 8 || valueOf(other) === valueOf(vin.charAt(at))) return;
      expect(vinChecks(vin.slice(0, at) + other + vin.slice(at + 1))).toBe(false);
    }));
  });
});

describe('a number as typed', () => {
  // Source: 17 characters without I, O and Q: ISO 3779 and 49 CFR 565 (seen on third-party pages).
  test.each([
    { case: 'small letters and blanks around', typed: ' 1m8gdm9axkp042788 ', taken: '1M8GDM9AXKP042788' },
    { case: 'a European one', typed: 'WP0ZZZ99ZTS392124', taken: 'WP0ZZZ99ZTS392124' },
    { case: '16 characters', typed: '1M8GDM9AXKP04278', taken: null },
    { case: '18 characters', typed: '1M8GDM9AXKP0427888', taken: null },
    { case: 'an I', typed: 'IM8GDM9AXKP042788', taken: null },
    { case: 'an O', typed: '1M8GDM9AXKPO42788', taken: null },
    { case: 'a Q', typed: '1M8GDM9AXKPQ42788', taken: null },
    { case: 'a blank inside', typed: '1M8GDM9AX P042788', taken: null },
    { case: 'a letter with a mark', typed: '1M8GDM9AXKPÖ42788', taken: null },
  ])('$case', ({ typed, taken }) => {
    const parsed = vinShapeSchema.safeParse(typed);
    expect(parsed.success ? parsed.data : null).toBe(taken);
  });

  test.each([
    { case: 'that checks', vin: '1m8gdm9axkp042788', checks: true },
    { case: 'that does not check is a remark, never a refusal', vin: 'WP0ZZZ99ZTS392124', checks: false },
    { case: 'left out', vin: null, checks: null },
  ])('one $case', ({ vin, checks }) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip', vin });
    expect(household.must('car.show', { car: 'pip' }).vinChecks).toBe(checks);
  });

  test('one of another shape is refused by its own code', () => {
    expect(memoryHousehold().call('car.add', { name: 'Pip', vin: '123' })).toMatchObject({ ok: false, refusal: { code: 'not-a-vin', path: ['vin'] } });
  });
});
