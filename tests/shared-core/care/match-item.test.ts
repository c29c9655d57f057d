import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchItem, slipsBetween, speaksOfCheck } from '../../../shared-core/care/match-item.ts';
import type { ServiceItem } from '../../../shared-core/care/service-item.ts';

const named = (...names: readonly string[]) => names.map((name) => ({ id: name.toLowerCase().replace(/\W+/g, '-'), name }) as ServiceItem);
const ITEMS = named('Engine oil and filter', 'Brake fluid', 'Brake pads, front', 'Brake pads, rear', 'Timing belt 1', 'Coolant', 'Service', 'Crème wax');

describe('a text of a table', () => {
  test.each([
    { text: 'brake fluid', how: 'name', item: 'brake-fluid', source: 'the name in another case' },
    { text: 'Changed the oil & engine filter', how: 'name', item: 'engine-oil-and-filter', source: 'the same words but for small ones' },
    { text: 'service', how: 'name', item: 'service', source: 'a name of small words only' },
    { text: 'Creme wax', how: 'name', item: 'cr-me-wax', source: 'marks on letters do not count' },
    { text: 'Brake fliud', how: 'spelling', item: 'brake-fluid', source: 'one swap' },
    { text: 'Vrake fluid', how: 'spelling', item: 'brake-fluid', source: 'a slip in the first letter' },
    { text: 'Fluid, vrake', how: 'none', source: 'a slip in a first letter and another order: too far' },
    { text: 'Colant', how: 'spelling', item: 'coolant', source: 'one letter left out' },
    { text: 'Enginee oil and fillter', how: 'spelling', item: 'engine-oil-and-filter', source: 'two letters more, in a long name' },
    { text: 'Timing belt 2', how: 'none', source: 'a number is no slip' },
    { text: 'Colnt', how: 'none', source: 'two slips in a short name' },
    { text: 'changed', how: 'none', source: 'no word that names a thing' },
    { text: '', how: 'none', source: 'nothing' },
  ])('"$text": $how', ({ text, how, item }) => {
    const match = matchItem(text, ITEMS);
    expect([match.how, 'item' in match ? match.item.id : undefined]).toEqual([how, item]);
  });

  test('that names several alike is left open', () => {
    const twins = named('Wiper blades', 'Blades, wiper', 'Horn');
    expect(matchItem('new wiper blades', twins)).toMatchObject({ how: 'several', items: [{ id: 'wiper-blades' }, { id: 'blades-wiper' }] });
    expect(matchItem('hose ab', named('hose aa', 'hose cc', 'hose bb'))).toMatchObject({ how: 'several', items: [{ name: 'hose aa' }, { name: 'hose bb' }] });
  });

  test('that is nearest to one of several means that one', () => {
    expect(matchItem('rear wiper blad', named('rear wiper blades', 'rear wiper blade'))).toMatchObject({ how: 'spelling', item: { name: 'rear wiper blade' } });
  });

  test('that shares words with items names them as near', () => {
    expect(matchItem('oil', ITEMS)).toEqual({ how: 'none', near: [ITEMS[0]] });
    expect(matchItem('brake pads', ITEMS)).toMatchObject({ how: 'none', near: [{ id: 'brake-pads-front' }, { id: 'brake-pads-rear' }] });
    expect(matchItem('wash', ITEMS)).toEqual({ how: 'none', near: [] });
  });

  test.each([
    { text: 'Checked brake pads', check: true },
    { text: 'inspection of belts', check: true },
    { text: 'Checked and replaced pads', check: false },
    { text: 'Brake pads', check: false },
    { text: 'checkered flag', check: false },
  ])('"$text" speaks of a look: $check', ({ text, check }) => {
    expect(speaksOfCheck(text)).toBe(check);
  });
});

describe('slips between two texts', () => {
  test.each([
    { one: 'kitten', other: 'sitting', slips: 3, source: 'the usual example of edit distance, from memory' },
    { one: 'ca', other: 'abc', slips: 3, source: 'the usual example of optimal string alignment, from memory' },
    { one: 'ab', other: 'ba', slips: 1, source: 'a swap is one' },
    { one: '', other: 'ab', slips: 2, source: 'by hand' },
  ])('$one and $other: $slips', ({ one, other, slips }) => {
    expect(slipsBetween(one, other, 9)).toBe(slips);
  });

  test('are as many one way as the other, and none only where they are the same', () => {
    const text = fc.stringMatching(/^[abc]{0,7}$/);
    fc.assert(fc.property(text, text, (one, other) => {
      expect(slipsBetween(one, other, 9)).toBe(slipsBetween(other, one, 9));
      expect(slipsBetween(one, other, 9) === 0).toBe(one === other);
    }));
  });
});
