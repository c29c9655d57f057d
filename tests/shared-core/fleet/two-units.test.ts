import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const reading = (household: MemoryHousehold, car: string, date: string, value: number, more: object = {}) => household.must('reading.record', { car, value, date: day(date), ...more });
const odometer = (household: MemoryHousehold, car: string) => household.must('due.show', {}).cars.find(({ id }) => id === car)?.odometer;

describe('two units in one household', () => {
  test('each car speaks its own, and a reading may be typed in the other', () => {
    const household = memoryHousehold({ unit: 'km' });
    household.must('car.add', { id: 'pip', name: 'Pip' });
    household.must('car.add', { id: 'wren', name: 'Wren', unit: 'mi' });
    for (const [date, value] of [['2025-01-10', 30_000], ['2026-01-10', 36_000]] as const) for (const car of ['pip', 'wren']) reading(household, car, date, value);
    household.on('2026-05-01');
    expect(reading(household, 'wren', '2026-05-01', 61_155, { unit: 'km' })).toMatchObject({ state: 'accepted', reading: { typed: { unit: 'km' } } });
    expect(odometer(household, 'wren')).toMatchObject({ likely: 38_000, unit: 'mi' });
    expect(odometer(household, 'pip')?.unit).toBe('km');
  });

  test('miles typed for km are asked about, and offered', () => {
    const household = memoryHousehold({ unit: 'km' });
    household.must('car.add', { id: 'pip', name: 'Pip' });
    for (const [date, value] of [['2025-01-10', 30_000], ['2026-01-10', 42_000]] as const) reading(household, 'pip', date, value);
    const { state, repairs } = reading(household, 'pip', '2026-05-01', 28_600);
    // By hand: 28 600 x 1.609344 = 46 027.2.
    expect([state, repairs.includes(46_027)]).toEqual(['set-aside', true]);
  });
});

describe('an instrument changed from miles to kilometres', () => {
  /** Read in miles to 62 000 on 2026-01-10 (99 779 km); on 2026-03-01 one that shows km was put in. */
  function changed(firstShown: number): MemoryHousehold {
    const household = memoryHousehold({ unit: 'mi' });
    household.must('car.add', { id: 'camper', name: 'Camper' });
    for (const [date, value] of [['2024-01-10', 50_000], ['2025-01-10', 56_000], ['2026-01-10', 62_000]] as const) reading(household, 'camper', date, value);
    reading(household, 'camper', '2026-03-01', firstShown, { unit: 'km', replaced: { lastShown: { value: 62_800, unit: 'mi' } } });
    return household;
  }

  test.each([
    { case: 'that started at 0', firstShown: 0, on: 3200 },
    { case: 'that was set to the same distance', firstShown: 101_067, on: 104_267 },
  ])('one $case: the car goes on in km', ({ firstShown, on }) => {
    const household = changed(firstShown);
    expect(household.must('car.show', { car: 'camper' }).car.unit).toBe('km');
    // Typed without a unit, it is what the instrument shows.
    expect(reading(household, 'camper', '2026-06-01', on)).toMatchObject({ state: 'accepted', reading: { typed: { value: on, unit: 'km' } } });
    household.on('2026-06-01');
    expect(odometer(household, 'camper')).toMatchObject({ likely: on, unit: 'km' });
    const { usage } = household.must('car.show', { car: 'camper' });
    // By hand: 6000 mi a year are 9656 km.
    expect(usage?.kmAYear).toBeGreaterThan(9600);
    expect(usage?.kmAYear).toBeLessThan(12_200);
  });

  test('a car is told of in what its present instrument shows', () => {
    const household = changed(0);
    expect(household.call('car.change', { id: 'camper', unit: 'mi' })).toMatchObject({ ok: false, refusal: { code: 'unit-of-instrument', values: { date: '2026-03-01', unit: 'km' }, path: ['unit'] } });
    expect(household.must('car.change', { id: 'camper', unit: 'km', description: 'blue' }).car.unit).toBe('km');
    const first = memoryHousehold({ unit: 'mi' });
    first.must('car.add', { id: 'camper', name: 'Camper' });
    expect(first.must('car.change', { id: 'camper', unit: 'km' }).car.unit).toBe('km');
    expect(reading(first, 'camper', '2026-03-01', 100).reading.typed.unit).toBe('km');
  });

  test('a reading entered late, of the time before, is in miles unless said otherwise', () => {
    const household = changed(0);
    expect(reading(household, 'camper', '2025-07-10', 59_000)).toMatchObject({ state: 'accepted', reading: { typed: { value: 59_000, unit: 'mi' }, instrument: null } });
  });

  test('one stated late, before a newer one, leaves the car\'s unit alone', () => {
    const household = changed(0);
    reading(household, 'camper', '2025-03-01', 5, { unit: 'mi', replaced: { lastShown: { value: 56_800, unit: 'mi' }, laterOfNew: true } });
    expect(household.must('car.show', { car: 'camper' }).car.unit).toBe('km');
    expect(household.must('car.show', { car: 'camper' }).instruments).toHaveLength(2);
  });

  test('found out by a doubtful reading typed in the old unit', () => {
    const household = memoryHousehold({ unit: 'mi' });
    household.must('car.add', { id: 'camper', name: 'Camper' });
    for (const [date, value] of [['2024-01-10', 50_000], ['2025-01-10', 56_000], ['2026-01-10', 62_000]] as const) reading(household, 'camper', date, value);
    expect(reading(household, 'camper', '2026-06-01', 1200, { id: 'odd' }).state).toBe('set-aside');
    household.must('reading.settle', { reading: 'odd', verdict: 'replaced', unit: 'km' });
    const { car, instruments } = household.must('car.show', { car: 'camper' });
    expect([car.unit, instruments[0]?.firstShown, instruments[0]?.unit]).toEqual(['km', 1_200_000, 'km']);
  });
});
