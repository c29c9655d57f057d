import { describe, expect, test } from 'vitest';
import { instruments } from '../../../shared-core/fleet/instrument.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car read twice, a year and 10 000 km apart. */
function withCamper(firstRegistered: string | null = '2020-03-01'): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'camper', name: 'Camper', firstRegistered: firstRegistered === null ? null : day(firstRegistered) });
  household.must('reading.record', { car: 'camper', value: 90_000, date: day('2024-01-10') });
  household.must('reading.record', { car: 'camper', value: 100_000, date: day('2025-01-09') });
  return household;
}

const onlyInstrument = (household: MemoryHousehold) => household.facts().ofCar(instruments, 'camper')[0];

describe('a replaced instrument', () => {
  test('goes on from what the old one last showed', () => {
    const household = withCamper();
    const reply = household.must('reading.record', { car: 'camper', value: 12, date: day('2025-07-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    expect(reply).toMatchObject({ state: 'accepted', code: null, reading: { typed: { value: 12, unit: 'km' }, standing: 'accepted' } });
    expect(onlyInstrument(household)).toMatchObject({ date: '2025-07-01', firstShown: 12_000, distance: 104_000_000, estimated: false, unit: 'km' });
    expect(reply.reading.instrument).toBe(onlyInstrument(household)?.id);
    household.must('reading.record', { car: 'camper', value: 3012, date: day('2025-11-25') });
    const [last] = household.must('car.show', { car: 'camper' }).readings;
    expect(last?.instrument).toBe(reply.reading.instrument);
    // What is shown is what the new instrument shows.
    household.on('2025-11-25');
    expect(household.must('due.show', {}).cars[0]?.odometer).toMatchObject({ likely: 3012 });
  });

  test('the last value may be in another unit', () => {
    const household = withCamper();
    household.must('reading.record', { car: 'camper', value: 0, date: day('2025-07-01'), replaced: { lastShown: { value: 65_000, unit: 'mi' } } });
    expect(onlyInstrument(household)?.distance).toBe(104_607_360);
  });

  test('a second one adds to the first', () => {
    const household = withCamper();
    household.must('reading.record', { car: 'camper', value: 10, date: day('2025-07-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    household.must('reading.record', { car: 'camper', value: 500, date: day('2026-07-01'), replaced: { lastShown: { value: 9010, unit: 'km' } } });
    // By hand: 104 000 + 9010 - 10.
    expect(household.facts().ofCar(instruments, 'camper').find((one) => one.date === '2026-07-01')?.distance).toBe(113_000_000);
  });

  test.each([
    { case: 'between two readings: on the line between them', registered: '2020-03-01', on: '2024-07-11', km: 95_000, why: '183 of 365 days of 10 000 km' },
    { case: 'before the first reading: on the line from 0 at registration', registered: '2020-03-01', on: '2022-02-04', km: 45_000, why: 'half of 1410 days' },
    { case: 'before the first reading, registration unknown: from 0', registered: null, on: '2022-02-04', km: 0, why: 'nothing is known' },
  ])('without its last value, $case', ({ registered, on, km }) => {
    const household = withCamper(registered);
    household.must('reading.record', { car: 'camper', value: 10, date: day(on), replaced: {} });
    const instrument = onlyInstrument(household);
    expect(instrument?.estimated).toBe(true);
    expect(Math.abs((instrument?.distance ?? Number.NaN) / 1000 - km)).toBeLessThan(50);
  });

  test('without its last value, after the last reading: as forecast', () => {
    const household = withCamper();
    household.on('2025-07-01');
    const likely = household.must('due.show', {}).cars[0]?.odometer?.likely;
    household.must('reading.record', { car: 'camper', value: 10, replaced: {} });
    expect(Math.round((onlyInstrument(household)?.distance ?? 0) / 1000)).toBe(likely);
  });

  test('as the first reading of all, distance is counted from it', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'camper', name: 'Camper' });
    household.must('reading.record', { car: 'camper', value: 62_000, replaced: {} });
    expect(onlyInstrument(household)).toMatchObject({ firstShown: 62_000_000, distance: 0, estimated: true });
  });

  test.each([
    { case: 'less than was read before', on: '2025-07-01', lastShown: 99_000 },
    { case: 'a digit too many', on: '2025-07-01', lastShown: 1_040_000 },
    { case: 'on a day before readings of the old one, more than they', on: '2024-07-01', lastShown: 104_000 },
  ])('a last value that does not fit is asked about: $case', ({ on, lastShown }) => {
    const household = withCamper();
    const request = { car: 'camper', value: 10, date: day(on), replaced: { lastShown: { value: lastShown, unit: 'km' as const } } };
    const before = household.entries.length;
    expect(household.call('reading.record', request)).toMatchObject({ ok: false, refusal: { code: 'last-shown-doubtful', values: { value: lastShown, unit: 'km', date: on }, path: ['replaced', 'lastShown'] } });
    expect(household.entries).toHaveLength(before);
    household.must('reading.record', { ...request, sure: true });
    expect(onlyInstrument(household)?.distance).toBe(lastShown * 1000);
  });

  test('one is replaced once a day', () => {
    const household = withCamper();
    household.must('reading.record', { car: 'camper', value: 10, date: day('2025-07-01'), replaced: {} });
    expect(household.call('reading.record', { car: 'camper', value: 10, date: day('2025-07-01'), replaced: {} })).toMatchObject({ ok: false, refusal: { code: 'instrument-replaced-that-day' } });
  });

  test('readings of earlier days stay with the old one', () => {
    const household = withCamper();
    household.must('reading.record', { car: 'camper', value: 10, date: day('2025-07-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    expect(household.must('reading.record', { car: 'camper', value: 102_000, date: day('2025-04-01') })).toMatchObject({ state: 'accepted', reading: { instrument: null } });
  });

  // Source: by hand. The last reading of the old odometer came from a garage that writes km.
  test('one reading in another unit does not change what the old one showed', () => {
    const household = memoryHousehold({ unit: 'mi' });
    household.must('car.add', { id: 'camper', name: 'Camper' });
    for (const [on, value, unit] of [['2024-01-10', 30_000, 'mi'], ['2025-01-10', 35_000, 'mi'], ['2025-06-16', 59_500, 'km']] as const) household.must('reading.record', { car: 'camper', value, unit, date: day(on) });
    household.must('reading.record', { car: 'camper', value: 12, date: day('2025-09-01'), replaced: { lastShown: { value: 38_000, unit: 'mi' } } });
    expect(household.must('car.show', { car: 'camper' }).units).toEqual([{ from: null, unit: 'mi' }, { from: '2025-09-01', unit: 'mi' }]);
    expect(household.must('reading.record', { car: 'camper', value: 32_500, date: day('2024-07-10') }).reading.typed.unit).toBe('mi');
  });
});
