import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readings } from '../../../shared-core/fleet/reading.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { METRES_IN } from '../../../shared-core/units/distance.ts';
import { anyDate, day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Pip, registered on 2020-03-01, read three times: about 10 000 km a year. */
function withPip(unit: 'km' | 'mi' = 'km'): MemoryHousehold {
  const household = memoryHousehold({ unit });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  for (const [date, value] of [['2024-01-10', 38_000], ['2025-01-10', 48_000], ['2026-01-10', 58_000]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

const record = (household: MemoryHousehold, request: Partial<RequestOf<'reading.record'>>) => household.call('reading.record', { car: 'pip', value: 60_000, ...request });

describe('recording a reading', () => {
  test('keeps what was typed, with its unit, beside whole metres', () => {
    const { reading } = withPip().must('reading.record', { car: 'Pip', value: 37_282.5, unit: 'mi', note: 'on the drive' });
    // By hand: 37 282.5 x 1609.344 = 60 000 367.68.
    expect(reading).toEqual({
      id: 'new-4', car: 'pip', date: '2026-11-25', typed: { value: 37_282.5, unit: 'mi' }, shown: 60_000_368, instrument: null, source: 'keeper', paper: null, note: 'on the drive',
      standing: 'accepted', doubt: null, sure: false,
    });
  });

  test('the unit is the car\'s and the day is today unless given', () => {
    const { reading } = withPip('mi').must('reading.record', { car: 'pip', value: 60_000 });
    expect([reading.typed.unit, reading.date]).toEqual(['mi', '2026-11-25']);
  });

  test.each([
    { case: 'an unknown car', request: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'tomorrow', request: { date: day('2026-11-26') }, code: 'date-in-future' },
    { case: 'before its first registration', request: { date: day('2020-02-29') }, code: 'before-registration' },
    { case: 'below 0', request: { value: -1 }, code: 'not-a-distance' },
    { case: 'below 0 by a hair', request: { value: -0.0001 }, code: 'not-a-distance' },
    { case: 'absurd', request: { value: 1e12 }, code: 'not-a-distance' },
    { case: 'a taken id', request: { id: 'new-1' }, code: 'id-taken' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    const before = household.entries.length;
    expect(record(household, request)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });
});

describe('a doubtful reading', () => {
  // Source: house method, section 6; the readings about 10 000 km a year.
  test.each([
    { case: 'a fall', date: '2026-11-25', value: 57_000, code: 'decrease' },
    { case: 'a digit too many', date: '2026-11-25', value: 660_000, code: 'too-high' },
    { case: 'entered late, over the next one', date: '2025-06-01', value: 58_500, code: 'above-later' },
    { case: 'entered late, under the one before', date: '2025-06-01', value: 47_000, code: 'decrease' },
    { case: 'entered late, before all, over the first', date: '2023-06-01', value: 38_500, code: 'above-later' },
    { case: 'entered late, before all, far under the first', date: '2023-12-31', value: 100, code: 'later-too-high' },
  ])('$case is kept, set aside and asked about: $code', ({ date, value, code }) => {
    const household = withPip();
    const use = () => { const { usage, due } = household.must('car.show', { car: 'pip' }); return { usage, odometer: due.odometer }; };
    const before = use();
    const reply = household.must('reading.record', { id: 'odd', car: 'pip', value, date: day(date) });
    expect(reply).toMatchObject({ state: 'set-aside', code, reading: { standing: 'set-aside', doubt: code, sure: false } });
    expect(household.facts().get(readings, 'odd')).toEqual(reply.reading);
    expect(use()).toEqual(before);
  });

  test.each([
    { case: 'entered late, on the line', date: '2025-06-01', value: 52_000 },
    { case: 'entered late, before all', date: '2022-01-10', value: 19_000 },
    { case: 'the same value again', date: '2026-11-25', value: 58_000 },
    { case: 'a lower one on a day that has one', date: '2026-01-10', value: 57_990 },
  ])('$case is no doubt', ({ date, value }) => {
    expect(withPip().must('reading.record', { car: 'pip', value, date: day(date) })).toMatchObject({ state: 'accepted', code: null, repairs: [] });
  });

  test('is taken where the keeper is sure, and the doubt is kept beside it', () => {
    const household = withPip();
    expect(household.must('reading.record', { car: 'pip', value: 57_000, sure: true })).toMatchObject({ state: 'accepted', code: null, repairs: [], reading: { standing: 'accepted', doubt: 'decrease', sure: true } });
    // It stands against the one it contradicts: 58 000 no longer counts.
    expect(household.must('car.show', { car: 'pip' }).due.odometer).toMatchObject({ low: 57_000, likely: 57_000, unit: 'km' });
  });

  test('what may have been meant comes in the unit typed', () => {
    // 65 800 typed with two digits swapped; about 66 700 expected, of miles or km alike.
    for (const unit of ['km', 'mi'] as const) {
      const reply = withPip(unit).must('reading.record', { car: 'pip', value: 56_800, unit });
      expect(reply).toMatchObject({ state: 'set-aside', code: 'decrease' });
      expect(reply.repairs[0]).toBe(65_800);
    }
  });

  test('the first reading is taken as it is', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip' });
    expect(household.must('reading.record', { car: 'pip', value: 999_999 })).toMatchObject({ state: 'accepted' });
  });
});

describe('readings entered late', () => {
  const anyLog = fc.array(fc.record({ date: anyDate(day('2024-01-01'), day('2026-11-25')), km: fc.integer({ min: 0, max: 60_000 }) }), { minLength: 2, maxLength: 7 });

  test('whatever the order, nothing is lost and the accepted ones make a rising line', () => {
    fc.assert(fc.property(anyLog, (log) => {
      const household = memoryHousehold();
      household.must('car.add', { id: 'pip', name: 'Pip' });
      for (const { date, km } of log) household.must('reading.record', { car: 'pip', value: km, date });
      const shown = household.must('car.show', { car: 'pip' });
      expect(shown.readings).toHaveLength(log.length);
      expect(shown.due.doubtful.length).toBe(shown.readings.filter((reading) => reading.standing === 'set-aside').length);
      const days = new Map<string, number>();
      for (const reading of shown.readings) if (reading.standing === 'accepted') days.set(reading.date, Math.max(days.get(reading.date) ?? 0, reading.shown));
      const line = [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, metres]) => metres);
      expect(line).toEqual([...line].sort((a, b) => a - b));
    }), { numRuns: 60 });
  });

  test('the same log in miles and in km is judged alike', () => {
    fc.assert(fc.property(anyLog, (log) => {
      const judged = (unit: 'km' | 'mi') => {
        const household = memoryHousehold({ unit });
        household.must('car.add', { id: 'pip', name: 'Pip' });
        return log.map(({ date, km }) => household.must('reading.record', { car: 'pip', value: unit === 'km' ? km : (km * METRES_IN.km) / METRES_IN.mi, date }).code);
      };
      expect(judged('mi')).toEqual(judged('km'));
    }), { numRuns: 40 });
  });
});
