import { describe, expect, test } from 'vitest';
import { readings } from '../../../shared-core/fleet/reading.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car at 100 000 km whose next reading was doubtful: 10 km on 2025-07-01. */
function withDoubt(value = 10): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'camper', name: 'Camper' });
  household.must('reading.record', { car: 'camper', value: 90_000, date: day('2024-01-10') });
  household.must('reading.record', { car: 'camper', value: 100_000, date: day('2025-01-09') });
  expect(household.must('reading.record', { id: 'odd', car: 'camper', value, date: day('2025-07-01'), note: 'dusk' }).state).toBe('set-aside');
  household.on('2025-07-01');
  return household;
}

const odometer = (household: MemoryHousehold) => household.must('due.show', {}).cars[0]?.odometer;
const doubtful = (household: MemoryHousehold) => household.must('due.show', {}).cars[0]?.doubtful.map((one) => one.reading);

describe('settling a doubtful reading', () => {
  test('right: it stands, vouched for, and the doubt stays to be seen', () => {
    const household = withDoubt(1_000_000);
    expect(household.must('reading.settle', { reading: 'odd', verdict: 'right' }).reading).toMatchObject({ id: 'odd', standing: 'accepted', sure: true, doubt: 'too-high' });
    expect([odometer(household)?.likely, doubtful(household)]).toEqual([1_000_000, []]);
  });

  test('wrong: it counts for nothing and stays to be seen', () => {
    const household = withDoubt();
    const before = odometer(household);
    expect(household.must('reading.settle', { reading: 'odd', verdict: 'wrong' }).reading).toMatchObject({ standing: 'dismissed', sure: false });
    expect([odometer(household), doubtful(household)]).toEqual([before, []]);
    expect(household.facts().get(readings, 'odd')?.typed).toEqual({ value: 10, unit: 'km' });
  });

  test('corrected: another reading of the same day and unit stands in its place', () => {
    const household = withDoubt(10_400);
    const { reading } = household.must('reading.settle', { reading: 'odd', verdict: 'corrected', value: 104_000 });
    expect(reading).toMatchObject({ date: '2025-07-01', typed: { value: 104_000, unit: 'km' }, standing: 'accepted', note: 'dusk' });
    expect(reading.id).not.toBe('odd');
    expect(household.facts().get(readings, 'odd')).toMatchObject({ standing: 'dismissed', typed: { value: 10_400, unit: 'km' } });
    expect(odometer(household)?.likely).toBe(104_000);
  });

  test('replaced: the distance goes on from the forecast, marked estimated', () => {
    const household = withDoubt();
    const expected = odometer(household)?.likely ?? 0;
    const { reading } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    expect(reading).toMatchObject({ id: 'odd', standing: 'accepted', doubt: null });
    const { instruments } = household.must('car.show', { car: 'camper' });
    expect(instruments).toMatchObject([{ id: reading.instrument, date: '2025-07-01', firstShown: 10_000, estimated: true }]);
    expect(Math.round((instruments[0]?.distance ?? 0) / 1000)).toBe(expected);
    expect([odometer(household)?.likely, doubtful(household)]).toEqual([10, []]);
  });

  test('right, after the instrument proved replaced: it was read from the new one', () => {
    const household = withDoubt();
    household.must('reading.record', { id: 'odd-too', car: 'camper', value: 2010, date: day('2025-06-30') });
    household.must('reading.settle', { reading: 'odd-too', verdict: 'wrong' });
    household.on('2025-10-01').must('reading.record', { id: 'odd-next', car: 'camper', value: 3010, date: day('2025-10-01') });
    expect(doubtful(household)).toEqual(['odd', 'odd-next']);
    const { reading: first } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    const { reading: next } = household.must('reading.settle', { reading: 'odd-next', verdict: 'right' });
    expect(next.instrument).toBe(first.instrument);
    // 100 000 km of January still count: the car drives on, it has not gone back.
    const { usage } = household.must('car.show', { car: 'camper' });
    expect(usage?.kmAYear).toBeGreaterThan(9000);
    expect(odometer(household)?.likely).toBe(3010);
  });

  test.each([
    { case: 'no such reading', request: { reading: 'none', verdict: 'right' }, code: 'unknown-reading' },
    { case: 'one that is not in doubt', request: { reading: 'new-1', verdict: 'wrong' }, code: 'reading-not-in-doubt' },
    { case: 'corrected to nothing', request: { reading: 'odd', verdict: 'corrected' }, code: 'value-missing' },
    { case: 'corrected to less than 0', request: { reading: 'odd', verdict: 'corrected', value: -5 }, code: 'not-a-distance' },
    { case: 'another verdict', request: { reading: 'odd', verdict: 'perhaps' }, code: 'not-understood' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withDoubt();
    const before = household.entries.length;
    expect(household.call('reading.settle', request as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('is done once', () => {
    const household = withDoubt();
    household.must('reading.settle', { reading: 'odd', verdict: 'wrong' });
    expect(household.call('reading.settle', { reading: 'odd', verdict: 'right' })).toMatchObject({ ok: false, refusal: { code: 'reading-not-in-doubt' } });
  });
});
