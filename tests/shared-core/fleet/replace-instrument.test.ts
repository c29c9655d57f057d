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

  test('of the old one no reading stands above what it last showed, whatever the keeper says', () => {
    const household = withCamper();
    household.must('reading.record', { car: 'camper', value: 12, date: day('2025-07-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    const refused = { ok: false, refusal: { code: 'above-last-shown', values: { date: '2025-07-01', value: 104_000, unit: 'km' }, path: ['value'] } };
    const late = { car: 'camper', date: day('2025-06-01') } as const;
    expect(household.call('reading.record', { ...late, value: 104_001, sure: true })).toMatchObject(refused);
    expect(household.must('reading.record', { id: 'odd', ...late, value: 140_000 }).state).toBe('set-aside');
    expect(household.call('reading.settle', { reading: 'odd', verdict: 'right' })).toMatchObject(refused);
    expect(household.call('reading.settle', { reading: 'odd', verdict: 'other-wrong' })).toMatchObject(refused);
    expect(household.call('reading.settle', { reading: 'odd', verdict: 'corrected', value: 104_500, sure: true })).toMatchObject(refused);
    expect(household.must('reading.settle', { reading: 'odd', verdict: 'corrected', value: 104_000 }).reading.standing).toBe('accepted');
    // The remedy: what the old one last showed was wrong.
    household.must('instrument.correct', { instrument: onlyInstrument(household)?.id ?? '', lastShown: { value: 104_600, unit: 'km' } });
    expect(household.must('reading.record', { ...late, value: 104_500, sure: true }).state).toBe('accepted');
  });

  test('a second one adds to the first', () => {
    const household = withCamper();
    household.must('reading.record', { car: 'camper', value: 10, date: day('2025-07-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    household.must('reading.record', { car: 'camper', value: 500, date: day('2026-07-01'), replaced: { lastShown: { value: 9010, unit: 'km' } } });
    // By hand: 104 000 + 9010 - 10.
    expect(household.facts().ofCar(instruments, 'camper').find((one) => one.date === '2026-07-01')?.distance).toBe(113_000_000);
  });

  test.each([
    { case: 'between two readings of which the later is of the new one: as forecast from the earlier', registered: '2020-03-01', on: '2024-07-11', km: 96_476, why: '181.94 season-days (22 of January, 29, 31, 30, 31, 30 and 10 of July) of 35.592 km' },
    { case: 'before the first reading: from 0, for nobody read the old one', registered: '2020-03-01', on: '2022-02-04', km: 0, why: 'nothing is known' },
  ])('without its last value, $case', ({ registered, on, km }) => {
    const household = withCamper(registered);
    // What the later readings of the new one show is settled afterwards; they say nothing of the old one's distance.
    household.must('reading.record', { car: 'camper', value: 10, date: day(on), replaced: { laterOfNew: true } });
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
  ])('a last value that does not fit is asked about: $case', ({ on, lastShown }) => {
    const household = withCamper();
    const request = { car: 'camper', value: 10, date: day(on), replaced: { lastShown: { value: lastShown, unit: 'km' as const } } };
    const before = household.entries.length;
    expect(household.call('reading.record', request)).toMatchObject({ ok: false, refusal: { code: 'last-shown-doubtful', values: { value: lastShown, unit: 'km', date: on }, path: ['replaced', 'lastShown'] } });
    expect(household.entries).toHaveLength(before);
    household.must('reading.record', { ...request, sure: true });
    expect(onlyInstrument(household)?.distance).toBe(lastShown * 1000);
  });

  describe('before later readings of the old one', () => {
    const replaced = (household: MemoryHousehold, value: number, more: object) =>
      household.call('reading.record', { car: 'camper', value, date: day('2024-07-01'), replaced: { lastShown: { value: 94_700, unit: 'km' }, ...more } });

    test('is refused, naming the first of them; nothing is stored', () => {
      const household = withCamper();
      household.must('reading.record', { car: 'camper', value: 102_000, date: day('2025-03-01') });
      const before = household.entries.length;
      expect(replaced(household, 10, {})).toMatchObject({ ok: false, refusal: { code: 'old-instrument-read-later', values: { value: 100_000, unit: 'km', date: '2025-01-09' }, path: ['replaced', 'laterOfNew'] } });
      expect(replaced(household, 10, { lastShown: null })).toMatchObject({ ok: false, refusal: { code: 'old-instrument-read-later' } });
      expect(household.entries).toHaveLength(before);
    });

    test('being sure of the value says nothing of them', () => {
      const household = withCamper();
      const request = { car: 'camper', value: 10, date: day('2024-07-01'), sure: true, replaced: {} };
      expect(household.call('reading.record', request)).toMatchObject({ ok: false, refusal: { code: 'old-instrument-read-later' } });
    });

    test('on the very day of one it stands: that is what the old one last showed', () => {
      const household = withCamper();
      expect(household.call('reading.record', { car: 'camper', value: 10, date: day('2025-01-09'), replaced: { lastShown: { value: 100_000, unit: 'km' } } })).toMatchObject({ ok: true });
    });

    test('said to be of the new one, they move to it where they fit', () => {
      const household = withCamper();
      // A used instrument from another car: it began at 95 000 km.
      expect(replaced(household, 95_000, { laterOfNew: true })).toMatchObject({ ok: true });
      const instrument = onlyInstrument(household);
      expect(household.must('car.show', { car: 'camper' }).readings.map(({ date, instrument: of, standing }) => [date, of, standing])).toEqual([
        ['2025-01-09', instrument?.id, 'accepted'], ['2024-07-01', instrument?.id, 'accepted'], ['2024-01-10', null, 'accepted'],
      ]);
      // By hand: 94 700 + 100 000 - 95 000.
      expect(household.on('2025-01-09').must('due.show', {}).cars[0]?.odometer).toMatchObject({ likely: 100_000 });
    });

    test('said to be of the new one, what does not fit is asked about', () => {
      const household = withCamper();
      expect(replaced(household, 10, { laterOfNew: true })).toMatchObject({ ok: true });
      // 99 990 km in half a year.
      expect(household.must('due.show', {}).cars[0]?.doubtful).toMatchObject([{ date: '2025-01-09', value: 100_000, code: 'too-high' }]);
    });

    test('what the old one last showed at a later replacement is such a reading, and moves with it', () => {
      const household = withCamper();
      household.must('reading.record', { id: 'second', car: 'camper', value: 0, date: day('2025-07-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
      const between = (laterOfNew: boolean) =>
        household.call('reading.record', { car: 'camper', value: 102_500, date: day('2025-04-01'), replaced: { lastShown: { value: 102_000, unit: 'km' }, laterOfNew } });
      expect(between(false)).toMatchObject({ ok: false, refusal: { code: 'old-instrument-read-later', values: { value: 104_000, unit: 'km', date: '2025-07-01' } } });
      expect(between(true)).toMatchObject({ ok: true });
      // By hand: 102 000 + 104 000 - 102 500.
      expect(household.facts().ofCar(instruments, 'camper').find((one) => one.date === '2025-07-01')?.distance).toBe(103_500_000);
    });
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
