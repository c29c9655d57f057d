import { describe, expect, test } from 'vitest';
import { findCar, findHousehold, sameName } from '../../../shared-core/fleet/find-car.ts';
import { carSet } from '../../../shared-core/fleet/car.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { pip } from './car-examples.ts';
import { memoryHousehold, unstartedHousehold } from '../contract/memory-household.ts';

/** Facts of cars that no operation would let stand side by side: two of one name. */
const factsOf = (...cars: readonly { readonly id: string; readonly name: string }[]) =>
  memoryFacts(entryKinds, cars.map((one, seq) => ({ ...newEntry(carSet, { ...pip, ...one }), seq, at: '2026-11-25T12:00:00.000Z' })));

describe('the car that is meant', () => {
  const facts = factsOf({ id: 'c-1', name: 'Pip' }, { id: 'pip', name: 'Wren' }, { id: 'c-3', name: 'Zoë' }, { id: 'c-4', name: 'Twin' }, { id: 'c-5', name: 'twin' });

  test.each([
    { wanted: 'c-1', id: 'c-1', why: 'by its id' },
    { wanted: 'pip', id: 'pip', why: 'an id goes before another\'s name' },
    { wanted: 'Pip', id: 'c-1', why: 'by its name' },
    { wanted: ' WREN ', id: 'pip', why: 'case and blanks do not count' },
    { wanted: 'zoe\u0308', id: 'c-3', why: 'a letter and its mark typed apart' },
  ])('$wanted: $why', ({ wanted, id }) => {
    expect(findCar(facts, wanted)).toMatchObject({ ok: true, value: { id } });
  });

  test.each([
    { wanted: 'TWIN', code: 'car-name-shared' }, { wanted: 'nobody', code: 'unknown-car' }, { wanted: '', code: 'unknown-car' }, { wanted: '__proto__', code: 'unknown-car' },
  ])('"$wanted" is refused: $code', ({ wanted, code }) => {
    expect(findCar(facts, wanted)).toMatchObject({ ok: false, refusal: { code, values: { car: wanted }, path: ['car'] } });
  });

  test('names are compared as a person would', () => {
    expect([sameName('Straße', 'straße '), sameName('Pip', 'Pipp')]).toEqual([true, false]);
  });
});

test('the household is found once it was started', () => {
  expect(findHousehold(unstartedHousehold().facts())).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
  expect(findHousehold(memoryHousehold({ name: 'Ours' }).facts())).toMatchObject({ ok: true, value: { name: 'Ours' } });
});
