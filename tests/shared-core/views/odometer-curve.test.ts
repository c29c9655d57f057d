import { describe, expect, test } from 'vitest';
import { METRES_IN } from '../../../shared-core/units/distance.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(readings: readonly (readonly [string, number])[], unit: 'km' | 'mi' = 'km'): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none' });
  household.must('car.add', { id: 'pip', name: 'Pip', unit });
  for (const [date, value] of readings) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}
const curve = (household: MemoryHousehold) => household.must('car.show', { car: 'pip' }).curve;
const READINGS = [['2025-11-25', 10_000], ['2026-05-25', 16_000], ['2026-11-01', 21_300]] as const;

/** Source for all: worked by hand from the stated rule; the band itself is tested with the forecaster. */
describe('the curve of an odometer', () => {
  test('without a reading is empty', () => {
    expect(curve(withPip([]))).toEqual({ unit: 'km', points: [], doubtful: [], fan: [], replaced: [], resting: [], foreseen: [] });
  });

  test('goes through the readings and fans out from the last one to a year from today', () => {
    const { points, fan } = curve(withPip(READINGS));
    expect(points).toEqual(READINGS.map(([date, value]) => ({ date, value })));
    // More may have been driven later that day.
    expect(fan[0]).toMatchObject({ date: '2026-11-01', low: 21_300, likely: 21_300 });
    expect(fan.slice(1, 3).map(({ date }) => date)).toEqual(['2026-11-25', '2026-12-01']);
    expect(fan.at(-1)?.date).toBe('2027-11-25');
    for (const [at, one] of fan.slice(1).entries()) {
      expect(one.low).toBeLessThanOrEqual(one.likely);
      expect(one.likely).toBeLessThanOrEqual(one.high);
      expect(one.likely).toBeGreaterThan(fan[at]?.likely ?? Infinity);
    }
  });

  test('shows a reading in doubt where it would lie', () => {
    const household = withPip([...READINGS, ['2026-11-20', 2140]]);
    expect(curve(household)).toMatchObject({ points: { length: 3 }, doubtful: [{ date: '2026-11-20', value: 2140 }] });
  });

  test('a replaced instrument: one line of whole distance, and what is foreseen as the present one will show it', () => {
    const household = withPip(READINGS);
    household.must('reading.record', { car: 'pip', value: 5, date: day('2026-11-10'), replaced: { lastShown: { value: 21_600, unit: 'km' } } });
    household.must('reading.record', { car: 'pip', value: 405, date: day('2026-11-20') });
    const { points, replaced, fan, foreseen } = curve(household);
    expect(points.slice(-2).map(({ value }) => value)).toEqual([21_600, 22_000]);
    expect(replaced).toEqual([{ date: '2026-11-10', value: 21_600 }]);
    // By hand: whole distance less 21 595.
    expect(Math.abs((fan.at(-1)?.likely ?? 0) - 21_595 - (foreseen.at(-1)?.likely ?? 0))).toBeLessThanOrEqual(50);
  });

  test('an instrument changed from miles to kilometres: all of it in the unit that it shows now', () => {
    const household = withPip(READINGS, 'mi');
    household.must('reading.record', { car: 'pip', value: 100, unit: 'km', date: day('2026-11-10'), replaced: { lastShown: { value: 21_600, unit: 'mi' } } });
    const { unit, points, replaced } = curve(household);
    expect(unit).toBe('km');
    expect(points[0]?.value).toBe(Math.round((10_000 * METRES_IN.mi) / 1000));
    expect(replaced[0]?.value).toBe(34_762);
    expect(household.must('car.show', { car: 'pip' }).units).toEqual([{ from: null, unit: 'mi' }, { from: '2026-11-10', unit: 'km' }]);
  });

  test('what is foreseen is said no finer than it is known', () => {
    const { foreseen } = curve(withPip(READINGS));
    expect(foreseen.map(({ date }) => date)).toEqual(['2026-12-25', '2027-02-25', '2027-05-25', '2027-11-25']);
    for (const { low, likely, high } of foreseen) expect([low, likely, high].map((value) => value % 100)).toEqual([0, 0, 0]);
  });
});
