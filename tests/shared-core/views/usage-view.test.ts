import { describe, expect, test } from 'vitest';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const CASE_A = [['2023-01-10', 50_000], ['2023-04-12', 53_000], ['2023-09-01', 58_200], ['2024-01-08', 61_500]] as const;

/** Pip with the readings of FORECAST's vectors, on the day of the last one. */
function withReadings(count: number, more: { readonly unit?: 'km' | 'mi'; readonly declaredAYear?: { readonly value: number; readonly unit: 'km' | 'mi' } } = {}): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'north' }).on('2024-01-08');
  household.must('car.add', { id: 'pip', name: 'Pip', unit: 'km', ...more });
  for (const [date, value] of CASE_A.slice(0, count)) household.must('reading.record', { car: 'pip', value, unit: 'km', date: day(date) });
  return household;
}
const usage = (household: MemoryHousehold): NonNullable<CarView['usage']> => {
  const view = household.must('car.show', { car: 'pip' }).usage;
  if (view === null) throw new Error('nothing was read');
  return view;
};

describe('how a car is used', () => {
  test('by its readings, with the guess they still weigh against', () => {
    // Source: FORECAST section 5, vector A: r 31.0198, B 195.521, kappa 30. By hand: 31.0198 x 365.25 = 11 330; 30 / 225.521 = 13 %.
    expect(usage(withReadings(4))).toMatchObject({ kmAYear: 11_330, unit: 'km', aYear: 11_300, declaredAYear: null, readings: 4, guessed: 13, months: [92, 93, 99, 99, 104, 105, 106, 109, 101, 100, 97, 95] });
  });

  test('in the car’s unit', () => {
    // By hand: 11 330 / 1.609344 = 7040.
    expect(usage(withReadings(4, { unit: 'mi' }))).toMatchObject({ unit: 'mi', aYear: 7000 });
  });

  test('beside what the keeper expects and what the readings say alone', () => {
    // By hand: 50 000 to 61 500 in 363 days is 31.7 a day, 11 570 a year; recent ones count more.
    const { declaredAYear, measuredAYear, guessed } = usage(withReadings(4, { declaredAYear: { value: 12_000, unit: 'km' } }));
    expect([declaredAYear, measuredAYear]).toEqual([{ value: 12_000, unit: 'km' }, 11_100]);
    // By hand: 60 / 255.521.
    expect(guessed).toBe(23);
  });

  test('by one reading all of it is the guess', () => {
    // Source: FORECAST section 5, vector C.
    expect(usage(withReadings(1))).toMatchObject({ kmAYear: 13_000, measuredAYear: null, readings: 1, guessed: 100 });
  });

  test('the figure of a change of use is the one in force once something was read since', () => {
    const household = withReadings(3, { declaredAYear: { value: 12_000, unit: 'km' } });
    household.must('use-change.set', { car: 'pip', date: day('2023-10-01'), declaredAYear: { value: 20_000, unit: 'km' } });
    expect(usage(household).declaredAYear?.value).toBe(12_000);
    household.must('reading.record', { car: 'pip', value: 61_500, date: day('2024-01-08') });
    expect(usage(household)).toMatchObject({ declaredAYear: { value: 20_000 }, since: '2023-10-01' });
  });
});

describe('what a reading would narrow', () => {
  test('is nothing on the day of the last one', () => {
    expect(usage(withReadings(4)).narrows).toBeNull();
  });

  test('is the range three months ahead, and it is never wider for it', () => {
    const household = withReadings(4).on('2024-06-08');
    const narrows = usage(household).narrows;
    expect(narrows?.on).toBe('2024-09-08');
    expect(narrows?.afterReading).toBeLessThan((narrows?.now ?? 0) * 0.6);
    // The promise is kept: read the likely value, and the range is as wide as was said.
    const { odometer } = household.must('car.show', { car: 'pip' }).due;
    household.must('reading.record', { car: 'pip', value: odometer?.likely ?? 0, date: day('2024-06-08') });
    const [, inThreeMonths] = household.must('car.show', { car: 'pip' }).curve.foreseen;
    expect(Math.abs((inThreeMonths?.high ?? 0) - (inThreeMonths?.low ?? 0) - (narrows?.afterReading ?? 0))).toBeLessThanOrEqual(100);
  });
});
