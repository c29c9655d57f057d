import { describe, expect, test } from 'vitest';
import { chosenSet, FITTING, intervalOf, itemsOf, leftOut, missingOf, startOf } from '../../../renderer/car/start/set-draft.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { memoryHousehold } from '../../shared-core/contract/memory-household.ts';

const shown = (power: 'petrol' | 'other') => {
  const request: RequestOf<'starting-sets.show'> = { power, year: null, firstRegistered: null, keptSince: null };
  return memoryHousehold().must('starting-sets.show', request);
};

/** Source for all: worked by hand from the stated rule. */
describe('the choice of a starting set', () => {
  test.each([
    { case: 'nothing chosen: what fits', power: 'petrol', draft: FITTING, chosen: { set: 'petrol', history: 'unknown', omit: [] } },
    { case: 'nothing chosen and nothing fits', power: 'other', draft: FITTING, chosen: { set: null, history: 'unknown', omit: [] } },
    { case: 'no set', power: 'petrol', draft: { ...FITTING, set: 'none' }, chosen: { set: null, history: 'unknown', omit: [] } },
    { case: 'another set and history', power: 'petrol', draft: { ...FITTING, set: 'camper', history: 'from-purchase' }, chosen: { set: 'camper', history: 'from-purchase', omit: [] } },
    { case: 'left out of a set that fitted before', power: 'petrol', draft: { ...FITTING, omit: ['glow-plugs', 'coolant'] }, chosen: { set: 'petrol', history: 'unknown', omit: ['coolant'] } },
  ] as const)('$case', ({ power, draft, chosen }) => {
    expect(chosenSet(draft, shown(power))).toEqual(chosen);
  });

  test.each([
    { case: 'nothing chosen: the car decides', draft: FITTING, asked: { set: 'fitting', omit: [] } },
    { case: 'no set', draft: { ...FITTING, set: 'none' }, asked: { set: null, omit: [] } },
    { case: 'all chosen', draft: { ...FITTING, set: 'diesel', history: 'never-done', omit: ['glow-plugs'] }, asked: { set: 'diesel', history: 'never-done', omit: ['glow-plugs'] } },
  ] as const)('is sent: $case', ({ draft, asked }) => {
    expect(startOf(draft, shown('petrol'))).toEqual(asked);
    expect(startOf(draft, null)).toEqual({ ...asked, omit: [] });
  });

  test('its intervals in the unit of the car', () => {
    const oil = itemsOf('petrol', shown('petrol')).find(({ key }) => key === 'engine-oil-and-filter');
    const both = oil === undefined ? [] : [intervalOf(oil, 'mi').repeat.distance, intervalOf(oil, 'km').repeat.distance];
    expect(both).toEqual([{ value: 10_000, unit: 'mi' }, { value: 15_000, unit: 'km' }]);
    expect(itemsOf(null, shown('petrol'))).toEqual([]);
  });
});

/** Source for all: worked by hand from the stated rule. */
describe('what a car has not of a set', () => {
  /** What a set offers a car that has items of these names. */
  const offered = (set: 'petrol' | 'before-1980', names: readonly string[]) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol' });
    for (const name of names) household.must('item.add', { car: 'pip', name, interval: { repeat: { months: 24, distance: null } } });
    return itemsOf(set, household.must('starting-sets.show', { car: 'pip' }));
  };
  const nearOf = (names: readonly string[]) => missingOf(offered('petrol', names)).near.map(({ item, there }) => [item.name, there]);

  test('is new to it, or perhaps there under a near name', () => {
    expect(nearOf(['air filter', 'Coolant', 'horn'])).toEqual([['Engine air filter', 'air filter']]);
    const petrol = offered('petrol', ['air filter']);
    expect(missingOf(petrol).fresh).toHaveLength(petrol.length - 1);
  });

  test('a name of the car that the set has too is that item, and near to no other', () => {
    const near = (names: readonly string[]) => missingOf(offered('before-1980', names)).near.map(({ item }) => item.name);
    expect(near(['brake fluid'])).not.toContain('Oil, water and brake fluid levels');
    expect(near(['brake fluid level'])).toContain('Oil, water and brake fluid levels');
  });

  test('what is near is left out until it is said to be another thing', () => {
    const missing = missingOf(offered('petrol', ['air filter']));
    const chosen = { set: 'petrol', history: 'unknown', omit: ['coolant'] } as const;
    const out = (besides: readonly string[]) => leftOut({ ...chosen, omit: [...chosen.omit] }, missing, { ...FITTING, besides });
    const key = missing.near[0]?.item.key ?? '';
    expect(out([])).toEqual(['coolant', key]);
    expect(out([key])).toEqual(['coolant']);
  });
});
