import { expect, test } from 'vitest';
import { nameOrder, tiesByName } from '../../../renderer/ui/name-order.ts';

test.each([
  { case: 'numbers by their size', locale: 'en-GB', names: ['10 seals', '9 plugs', '2 seals'], order: ['2 seals', '9 plugs', '10 seals'] },
  { case: 'numbers within names too', locale: 'en-GB', names: ['wheel 12', 'wheel 3', 'axle 20'], order: ['axle 20', 'wheel 3', 'wheel 12'] },
  { case: 'whatever their case', locale: 'en-GB', names: ['Belt', 'air filter', 'clutch'], order: ['air filter', 'Belt', 'clutch'] },
  // Source: CLDR collation; German sorts a with diaeresis beside a, Swedish after z.
  { case: 'letters as German has them', locale: 'de', names: ['zink', 'äkta'], order: ['äkta', 'zink'] },
  { case: 'letters as Swedish has them', locale: 'sv', names: ['äkta', 'zink'], order: ['zink', 'äkta'] },
])('names stand in order: $case', ({ locale, names, order }) => {
  expect([...names].sort(nameOrder(locale))).toEqual(order);
});

test('only neighbours that tie are put in the order of their names', () => {
  const list = [['late', '2 b'], ['soon', '10 a'], ['soon', '9 a'], ['soon', '1 c'], ['late', '1 z'], ['late', '1 a']] as const;
  const sorted = tiesByName(list, { tie: ([state]) => state, name: ([, name]) => name, order: nameOrder('en-GB') });
  expect(sorted.map(([state, name]) => `${state} ${name}`)).toEqual(['late 2 b', 'soon 1 c', 'soon 9 a', 'soon 10 a', 'late 1 a', 'late 1 z']);
});
