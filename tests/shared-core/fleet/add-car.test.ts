import { describe, expect, test } from 'vitest';
import { cars } from '../../../shared-core/fleet/car.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, unstartedHousehold } from '../contract/memory-household.ts';

describe('adding a car', () => {
  test('only its name is needed; the unit is the household\'s', () => {
    const household = memoryHousehold({ unit: 'mi' });
    const { car } = household.must('car.add', { name: ' Pip ' });
    expect(car).toEqual({
      id: 'new-1', name: 'Pip', description: null, power: 'petrol', year: null, firstRegistered: null, keptSince: null, unit: 'mi', vin: null, registration: null,
      use: 'everyday', declaredAYear: null, laidUpMonths: [], severeUse: 1,
    });
    expect(household.facts().get(cars, 'new-1')).toEqual(car);
  });

  test('what was declared is kept as typed', () => {
    const { car } = memoryHousehold().must('car.add', { name: 'Pip', unit: 'mi', declaredAYear: { value: 8000.5, unit: 'km' } });
    expect([car.unit, car.declaredAYear]).toEqual(['mi', { value: 8000.5, unit: 'km' }]);
  });

  test.each([
    { case: 'no name', request: { name: '  ' }, code: 'text-empty', path: ['name'] },
    { case: 'a long name', request: { name: 'x'.repeat(61) }, code: 'text-too-long', path: ['name'] },
    { case: 'a control character', request: { name: 'Pi\u0007p' }, code: 'control-characters', path: ['name'] },
    { case: 'text that turns round', request: { name: 'Pip\u202e' }, code: 'control-characters', path: ['name'] },
    { case: 'half a character', request: { name: 'Pip\ud83d' }, code: 'control-characters', path: ['name'] },
    { case: 'an id with blanks', request: { id: 'my car', name: 'Pip' }, code: 'not-an-id', path: ['id'] },
    { case: 'an impossible date', request: { name: 'Pip', firstRegistered: '2025-02-29' }, code: 'not-a-date', path: ['firstRegistered'] },
    { case: 'registered tomorrow', request: { name: 'Pip', firstRegistered: '2026-11-26' }, code: 'date-in-future', path: ['firstRegistered'] },
    { case: 'kept before it was registered', request: { name: 'Pip', firstRegistered: '2020-03-01', keptSince: '2020-02-29' }, code: 'kept-before-registered', path: ['keptSince'] },
    { case: 'a year of the past', request: { name: 'Pip', year: 1899 }, code: 'not-a-year', path: ['year'] },
    { case: 'a third unit', request: { name: 'Pip', unit: 'leagues' }, code: 'unknown-unit', path: ['unit'] },
    { case: 'a declared distance below 0', request: { name: 'Pip', declaredAYear: { value: -1, unit: 'km' } }, code: 'not-a-distance', path: ['declaredAYear', 'value'] },
    { case: 'asleep all year', request: { name: 'Pip', laidUpMonths: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] }, code: 'laid-up-all-year', path: ['laidUpMonths'] },
    { case: 'a month twice', request: { name: 'Pip', laidUpMonths: [1, 1] }, code: 'month-twice', path: ['laidUpMonths'] },
    { case: 'severe use under 0.4', request: { name: 'Pip', severeUse: 0.39 }, code: 'severe-use-range', path: ['severeUse'] },
    { case: 'severe use over 1', request: { name: 'Pip', severeUse: 1.01 }, code: 'severe-use-range', path: ['severeUse'] },
    { case: 'a field that is not known', request: { name: 'Pip', colour: 'red' }, code: 'unknown-field', path: [] },
  ])('$case is refused: $code', ({ request, code, path }) => {
    const household = memoryHousehold();
    const before = household.entries.length;
    expect(household.call('car.add', request as never)).toMatchObject({ ok: false, refusal: { code, path } });
    expect(household.entries).toHaveLength(before);
  });

  test('a name or an id is taken once', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Zoë' });
    expect(household.call('car.add', { name: 'ZOË' })).toMatchObject({ ok: false, refusal: { code: 'car-name-taken' } });
    expect(household.call('car.add', { name: 'Zoe\u0308' })).toMatchObject({ ok: false, refusal: { code: 'car-name-taken' } });
    expect(household.call('car.add', { id: 'pip', name: 'Other' })).toMatchObject({ ok: false, refusal: { code: 'id-taken' } });
  });

  test('there must be a household', () => {
    expect(unstartedHousehold().call('car.add', { name: 'Pip' })).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
  });
});

describe('changing a car', () => {
  test('touches only the fields given', () => {
    const household = memoryHousehold();
    const { car } = household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
    expect(household.must('car.change', { id: 'pip', severeUse: 0.7 }).car).toEqual({ ...car, severeUse: 0.7 });
    expect(household.must('car.change', { id: 'pip', firstRegistered: null }).car).toEqual({ ...car, severeUse: 0.7, firstRegistered: null });
  });

  test('by its name it stays the same car', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'c-1', name: 'Pip' });
    expect(household.must('car.change', { id: 'pip', name: 'Wren' }).car.id).toBe('c-1');
    expect(household.facts().all(cars).map((car) => [car.id, car.name])).toEqual([['c-1', 'Wren']]);
  });

  test.each([
    { case: 'an unknown car', request: { id: 'nobody' }, code: 'unknown-car' },
    { case: 'the name of another', request: { id: 'pip', name: 'wren' }, code: 'car-name-taken' },
    { case: 'registered after it was kept', request: { id: 'pip', firstRegistered: '2021-01-01' }, code: 'kept-before-registered' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip', keptSince: day('2020-06-01') });
    household.must('car.add', { id: 'wren', name: 'Wren' });
    expect(household.call('car.change', request as never)).toMatchObject({ ok: false, refusal: { code } });
  });
});
