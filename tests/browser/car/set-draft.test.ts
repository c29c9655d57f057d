import { describe, expect, test } from 'vitest';
import { chosenSet, FITTING, intervalOf, itemsOf, startOf } from '../../../renderer/car/start/set-draft.ts';
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
    { case: 'another set and history', power: 'petrol', draft: { set: 'camper', history: 'from-purchase', omit: [] }, chosen: { set: 'camper', history: 'from-purchase', omit: [] } },
    { case: 'left out of a set that fitted before', power: 'petrol', draft: { ...FITTING, omit: ['glow-plugs', 'coolant'] }, chosen: { set: 'petrol', history: 'unknown', omit: ['coolant'] } },
  ] as const)('$case', ({ power, draft, chosen }) => {
    expect(chosenSet(draft, shown(power))).toEqual(chosen);
  });

  test.each([
    { case: 'nothing chosen: the car decides', draft: FITTING, asked: { set: 'fitting', omit: [] } },
    { case: 'no set', draft: { ...FITTING, set: 'none' }, asked: { set: null, omit: [] } },
    { case: 'all chosen', draft: { set: 'diesel', history: 'never-done', omit: ['glow-plugs'] }, asked: { set: 'diesel', history: 'never-done', omit: ['glow-plugs'] } },
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
