import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

describe('the odometer shown', () => {
  // Source: house method, section 5, vector A (recomputed): on 2024-04-07, 90 days after 61 500 km, 2658 km more [1668, 4203].
  test('is a band around the forecast, in whole units of the car', () => {
    const household = memoryHousehold().on('2024-04-07');
    household.must('car.add', { id: 'pip', name: 'Pip' });
    for (const [date, value] of [['2023-01-10', 50_000], ['2023-04-12', 53_000], ['2023-09-01', 58_200], ['2024-01-08', 61_500]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
    expect(household.must('due.show', {}).cars[0]?.odometer).toEqual({ low: 63_168, likely: 64_158, high: 65_703, unit: 'km' });
    household.must('car.change', { id: 'pip', unit: 'mi' });
    // By hand: 63 168 / 1.609344 = 39 250.8; the others by the unrounded band.
    expect(household.must('due.show', {}).cars[0]?.odometer).toMatchObject({ low: 39_251, unit: 'mi' });
  });

  test('is nothing while nothing was read', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip' });
    expect(household.must('due.show', {}).cars[0]?.odometer).toBeNull();
  });
});
