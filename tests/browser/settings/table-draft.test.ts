import { describe, expect, test } from 'vitest';
import { broughtTo, sizeWords } from '../../../renderer/settings/import/count-words.ts';
import { cutBy, holdColumn, startChoices, takeFor } from '../../../renderer/settings/import/table-draft.ts';

const START = startChoices('pip');

describe('what is said of a table', () => {
  test.each([
    { case: 'a meaning goes to another column', before: null, holds: 'reading', at: { reading: 3 }, source: 'by hand' },
    { case: 'what the column held is then nowhere', before: 'note', holds: 'reading', at: { note: null, reading: 3 }, source: 'by hand' },
    { case: 'a column may hold nothing', before: 'cost', holds: null, at: { cost: null }, source: 'by hand' },
  ] as const)('$case', ({ before, holds, at }) => expect(holdColumn(START, before, 3, holds).columns).toEqual(at));

  test('columns chosen go where the table is cut anew', () => expect(cutBy(holdColumn(START, null, 3, 'reading'), ';')).toEqual({ ...START, delimiter: ';' }));

  test('one text may mean an item of each of two cars, and the last word on one car leaves the other', () => {
    const both = takeFor(takeFor(START, 'oil', 'oil-pip', ['oil-pip', 'fluid-pip']), 'oil', 'oil-alder', ['oil-alder']);
    expect(both.items).toEqual([{ text: 'oil', item: 'oil-alder' }, { text: 'oil', item: 'oil-pip' }]);
    expect(takeFor(both, 'oil', 'fluid-pip', ['oil-pip', 'fluid-pip']).items).toEqual([{ text: 'oil', item: 'fluid-pip' }, { text: 'oil', item: 'oil-alder' }]);
    // A line of its own comes after the items: the first that fits a car is taken.
    expect(takeFor(both, 'oil', null, ['oil-pip', 'fluid-pip']).items).toEqual([{ text: 'oil', item: 'oil-alder' }, { text: 'oil', item: null }]);
  });
});

describe('what a table brings, in words', () => {
  test.each([
    { case: 'one car', cars: [['Heron', 118, 24]], words: '118 readings and 24 records of Heron' },
    { case: 'two cars, and one that is brought nothing', cars: [['Heron', 1, 0], ['Pip', 0, 0], ['Wren', 0, 2]], words: '1 reading of Heron, 2 records of Wren' },
    { case: 'nothing', cars: [['Pip', 0, 0]], words: null },
  ] as const)('$case', ({ cars, words }) => expect(broughtTo(cars.map(([name, readings, records]) => ({ name, readings, records })))).toBe(words));

  test.each([[999, '999 bytes'], [42_300, '42 KB'], [1_250_000, '1.3 MB']] as const)('%i bytes are %s', (bytes, words) => expect(sizeWords(bytes)).toBe(words));
});
