import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { saysOnlyColour } from '../../../shared-core/parts/colour-words.ts';
import { FLUID_BASES, fluidRule, type FluidUse } from '../../../shared-core/parts/fluid.ts';
import { mixRuleOf } from '../../../shared-core/parts/mix-rule.ts';
import { formerNumbers, numberKey, successorsOf, superseded } from '../../../shared-core/parts/part-number.ts';
import { parts, statementOf } from '../../../shared-core/parts/part.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const USES = Object.keys(FLUID_BASES) as FluidUse[];
const anyFluid = fc.constantFrom(...USES).chain((use) => fc.record({ use: fc.constant(use), base: fc.constantFrom<string | null>(null, ...FLUID_BASES[use].bases) }));

describe('fluids', () => {
  // Common practice, no source: silicone and glycol brake fluids, and mineral hydraulic oil, never meet.
  test.each([
    { a: ['brake-fluid', 'glycol'], b: ['brake-fluid', 'silicone'], rule: 'never' },
    { a: ['brake-fluid', 'glycol'], b: ['brake-fluid', 'mineral-oil'], rule: 'never' },
    { a: ['brake-fluid', 'glycol'], b: ['brake-fluid', 'glycol'], rule: null },
    { a: ['brake-fluid', 'glycol'], b: ['brake-fluid', null], rule: 'ask' },
    { a: ['coolant', 'organic-acid'], b: ['coolant', 'inorganic-acid'], rule: 'ask' },
    { a: ['grease', 'lithium'], b: ['grease', 'polyurea'], rule: 'ask' },
    { a: ['coolant', 'organic-acid'], b: ['brake-fluid', 'glycol'], rule: null },
  ] as const)('$a and $b: $rule', ({ a, b, rule }) => {
    expect(fluidRule({ use: a[0], base: a[1] }, { use: b[0], base: b[1] })?.rule ?? null).toBe(rule);
  });

  test('bear each other whichever is named first', () => {
    fc.assert(fc.property(anyFluid, anyFluid, (a, b) => {
      const [one, other] = [fluidRule(a, b), fluidRule(b, a)];
      expect(one).toEqual(other);
    }));
  });

  test('have no base of another fluid', () => {
    expect(memoryHousehold().call('specification.set', { name: 'x', unit: 'litre', fluid: { use: 'coolant', base: 'glycol' } })).toMatchObject({ refusal: { code: 'base-of-no-such-fluid' } });
  });
});

describe('a colour', () => {
  test.each([
    ['pink', true], ['pink coolant', true], ['Red / brown grease', true], ['the clear brake fluid', true],
    ['organic acid coolant, pink', false], ['coolant', false], ['5W-30', false], ['Redfern sheet 4', false], ['', false],
  ] as const)('"%s" says nothing else: %s', (text, only) => expect(saysOnlyColour(text)).toBe(only));

  test('is no specification: neither as what is asked nor as the only name', () => {
    const household = memoryHousehold();
    expect(household.call('specification.set', { name: 'coolant of the camper', unit: 'litre', asks: [{ kind: 'grade', text: 'pink' }] })).toMatchObject({ refusal: { code: 'colour-is-no-specification', path: ['asks', 0, 'text'] } });
    expect(household.call('specification.set', { name: 'Pink coolant', unit: 'litre' })).toMatchObject({ refusal: { code: 'colour-is-no-specification', path: ['name'] } });
    household.must('specification.set', { name: 'Pink coolant', unit: 'litre', asks: [{ kind: 'material', text: 'organic acid' }] });
  });
});

/** Brake fluids and coolants that do not go together, and what each asks. */
function withFluids(): MemoryHousehold {
  const household = memoryHousehold();
  const fluid = (id: string, use: FluidUse, base: string | null, asks: RequestOf<'specification.set'>['asks'] = []) => household.must('specification.set', { id, name: id, unit: 'litre', fluid: { use, base }, asks });
  fluid('glycol-4', 'brake-fluid', 'glycol');
  fluid('glycol-5', 'brake-fluid', 'glycol', [{ kind: 'approval', text: 'sheet B 17' }]);
  fluid('silicone-5', 'brake-fluid', 'silicone');
  fluid('organic', 'coolant', 'organic-acid');
  fluid('inorganic', 'coolant', 'inorganic-acid');
  return household;
}
const says = (specification: string, more: object = {}) => ({ specification, by: 'part-maker' as const, basis: 'approval' as const, source: 'data sheet 3', ...more });

describe('what a part meets', () => {
  test.each([
    { case: 'silicone never stands in for glycol, whoever says so', part: { meets: ['glycol-4', 'silicone-5'], stated: [says('glycol-4'), says('silicone-5')] }, code: 'meets-both-never' },
    { case: 'two coolants are not one until somebody says so of both', part: { meets: ['organic', 'inorganic'], stated: [says('organic')] }, code: 'meets-both-by-whom' },
    { case: 'a grade is no approval', part: { meets: ['glycol-5'], stated: [says('glycol-5', { basis: 'grade' })] }, code: 'grade-is-no-approval' },
    { case: 'a statement about something it does not meet', part: { meets: ['organic'], stated: [says('glycol-4')] }, code: 'stated-but-not-met' },
    { case: 'two statements about one thing', part: { meets: ['organic'], stated: [says('organic'), says('organic', { by: 'seller' })] }, code: 'stated-twice' },
  ])('$case: $code', ({ part, code }) => {
    const refused = withFluids().call('part.set', { id: 'p', name: 'The fluid', ...part });
    expect(refused).toMatchObject({ refusal: { code } });
    if (!refused.ok) expect(sayRefusal(refused.refusal)).toMatch(/^[^{}]*[.?]$/);
  });

  test('two coolants are one where it is said of both, by whom', () => {
    const household = withFluids();
    household.must('part.set', { id: 'both', name: 'Both', meets: ['organic', 'inorganic'], stated: [says('organic'), says('inorganic', { by: 'car-maker' })] });
    expect(statementOf(must(household.facts().get(parts, 'both'), 'part'), 'inorganic')).toMatchObject({ by: 'car-maker', source: 'data sheet 3' });
  });

  test('what nobody else states is the word of the keeper who entered it', () => {
    const household = withFluids();
    household.must('part.set', { id: 'p', name: 'P', meets: ['organic'] });
    expect(statementOf(must(household.facts().get(parts, 'p'), 'part'), 'organic')).toEqual({ specification: 'organic', by: 'keeper', basis: 'fit', source: null });
  });

  test('a specification is not changed so that a part meets what never goes together', () => {
    const household = withFluids();
    household.must('part.set', { id: 'p', name: 'P', meets: ['glycol-4', 'glycol-5'] });
    expect(household.call('specification.set', { id: 'glycol-5', name: 'glycol-5', unit: 'litre', fluid: { use: 'brake-fluid', base: 'silicone' } })).toMatchObject({ refusal: { code: 'meets-both-never', path: ['fluid'] } });
  });
});

describe('what is not mixed', () => {
  const rule = (household: MemoryHousehold, a: string, b: string) => {
    const facts = household.facts();
    return mixRuleOf(facts, must(facts.get(parts, a), a), must(facts.get(parts, b), b))?.rule ?? null;
  };
  const withParts = () => {
    const household = withFluids();
    for (const [id, ...meets] of [['clear', 'glycol-4'], ['amber', 'glycol-4', 'glycol-5'], ['purple', 'silicone-5'], ['pink', 'organic'], ['blue', 'inorganic'], ['filter']] as const) household.must('part.set', { id, name: id, meets: [...meets] });
    return household;
  };

  test.each([
    ['clear', 'amber', null], ['clear', 'purple', 'never'], ['amber', 'purple', 'never'], ['pink', 'blue', 'ask'], ['pink', 'clear', null], ['filter', 'pink', null], ['pink', 'pink', null],
  ] as const)('%s and %s: %s', (a, b, expected) => {
    const household = withParts();
    expect([rule(household, a, b), rule(household, b, a)]).toEqual([expected, expected]);
  });

  test("a keeper's pair comes before the table: between two specifications, or with everything on a base", () => {
    const household = withParts();
    household.must('never-mix.set', { id: 'pair', between: [{ kind: 'specification', id: 'organic' }, { kind: 'fluid', fluid: { use: 'coolant', base: 'inorganic-acid' } }], rule: 'never', why: 'the handbook of the camper says so' });
    expect(rule(household, 'blue', 'pink')).toBe('never');
    household.must('never-mix.remove', { id: 'pair' });
    expect(rule(household, 'blue', 'pink')).toBe('ask');
  });

  test('is a pair of two', () => {
    const side = { kind: 'specification', id: 'organic' } as const;
    expect(withParts().call('never-mix.set', { between: [side, side], rule: 'ask', why: 'x' })).toMatchObject({ refusal: { code: 'mix-with-itself' } });
    expect(withParts().call('never-mix.set', { between: [side, { kind: 'specification', id: 'none' }], rule: 'ask', why: 'x' })).toMatchObject({ refusal: { code: 'unknown-specification' } });
  });
});

describe('superseded numbers', () => {
  const chain = (...pairs: readonly (readonly [string, string])[]) => {
    const household = memoryHousehold();
    for (const [old, next] of pairs) household.must('number.supersede', { id: `n-${numberKey(old).toLowerCase()}`, old, new: next });
    return household;
  };

  test('lead from the oldest to the present one, however they are written', () => {
    const list = chain(['OV 1001', 'OV 1002'], ['ov-1002', 'OV 1005'], ['CL 7', 'CL 8']).facts().all(superseded);
    expect(successorsOf(list, 'ov1001')).toEqual(['OV 1002', 'OV 1005']);
    expect(successorsOf(list, 'OV 1005')).toEqual([]);
    expect(formerNumbers(list, 'OV-1005')).toEqual(['OV 1001', 'ov-1002']);
  });

  test.each([
    { case: 'itself', pair: ['X 1', 'x-1'], code: 'number-loop' },
    { case: 'back to where it began', pair: ['C 1', 'A 1'], code: 'number-loop' },
    { case: 'a second successor', pair: ['A.1', 'X'], code: 'superseded-already' },
  ] as const)('$case is refused: $code', ({ pair, code }) => {
    expect(chain(['A 1', 'B 1'], ['B 1', 'C 1']).call('number.supersede', { old: pair[0], new: pair[1] })).toMatchObject({ refusal: { code } });
  });

  test('never run in a circle, in whatever order they are entered', () => {
    const number = fc.constantFrom('A', 'B', 'C', 'D', 'E');
    fc.assert(fc.property(fc.array(fc.tuple(number, number), { maxLength: 12 }), (pairs) => {
      const household = memoryHousehold();
      for (const [old, next] of pairs) household.call('number.supersede', { old, new: next });
      const list = household.facts().all(superseded);
      for (const { old } of list) expect(successorsOf(list, old)).not.toContain(old);
    }));
  });
});

describe('a preference', () => {
  test('names parts that meet it, each once', () => {
    const household = withFluids();
    household.must('part.set', { id: 'pink', name: 'pink', meets: ['organic'] });
    household.must('part.set', { id: 'blue', name: 'blue', meets: ['inorganic'] });
    expect(household.call('part-preference.set', { id: 'organic', parts: ['pink', 'blue'] })).toMatchObject({ refusal: { code: 'preferred-does-not-meet', path: ['parts', 1] } });
    expect(household.call('part-preference.set', { id: 'organic', parts: ['pink', 'pink'] })).toMatchObject({ refusal: { code: 'id-twice' } });
    household.must('part-preference.set', { id: 'organic', parts: ['pink'] });
    household.must('part-preference.remove', { id: 'organic' });
    expect(household.call('part-preference.remove', { id: 'organic' })).toMatchObject({ refusal: { code: 'unknown-preference' } });
  });
});
