import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber, fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { allowanceUse, endsOn } from '../../../shared-core/care/allowance-use.ts';
import type { DistanceAllowance } from '../../../shared-core/care/distance-allowance.ts';
import type { Instrument } from '../../../shared-core/fleet/instrument.ts';
import type { Reading } from '../../../shared-core/fleet/reading.ts';
import { carUseOf } from '../../../shared-core/fleet/car-usage.ts';
import type { ToldUse } from '../../../shared-core/fleet/told-use.ts';
import { day } from '../calendar/day.ts';
import { instrumentFrom, readingOn } from '../fleet/car-examples.ts';

const TOLD: ToldUse = { hemisphere: 'none', declaredAYear: null, laidUpMonths: [], layUps: [], changes: [] };

/** A car of some 10 950 km a year (30 a day), read each quarter until 2026-11-01, at 50 000 + 30 a day since 2024-11-01. */
const steady = ['2024-11-01', '2025-02-01', '2025-05-01', '2025-08-01', '2025-11-01', '2026-02-01', '2026-05-01', '2026-08-01', '2026-11-01'].map((date) => readingOn(date, 50_000 + 30 * (dayNumber(day(date)) - dayNumber(day('2024-11-01')))));
const insurance: DistanceAllowance = { id: 'a', car: 'pip', kind: 'insurance', name: null, distance: { value: 10_000, unit: 'km' }, every: 'year', from: day('2026-08-01'), to: null, startReading: null };

function useOf(allowance: Partial<DistanceAllowance> = {}, today = '2026-11-25', readings: readonly Reading[] = steady, replaced: readonly Instrument[] = []) {
  const use = carUseOf(readings, replaced, TOLD);
  return allowanceUse({ ...insurance, ...allowance }, use, { points: use.points, usage: use.usage, firstRegistered: day('2020-01-01') }, day(today));
}

describe('a yearly allowance', () => {
  test('begins at the reading of its first day, and is passed when the forecast says so', () => {
    const use = useOf();
    // By hand: 50 000 + 30 x 638 days = 69 140 km; 10 000 km at 30 a day are 334 days: about 2027-07-01.
    expect([use.start, use.target, use.estimated, use.from, use.to]).toEqual([69_140_000, 79_140_000, false, '2026-08-01', '2027-07-31']);
    expect(use.state).toBe('will-pass');
    expect(Math.abs(dayNumber(use.passes.likely ?? day('2000-01-01')) - dayNumber(day('2027-07-01')))).toBeLessThan(15);
    expect((use.used ?? 0) / 1000).toBeCloseTo(30 * 116, -3);
    expect(Math.abs((use.overAtEnd ?? 0) / 1000 - 920)).toBeLessThan(400);
  });

  test.each([
    { case: 'more than is driven', distance: 16_000, state: 'within' },
    { case: 'a little more than is driven', distance: 11_500, state: 'may-pass' },
    { case: 'less than is driven', distance: 10_000, state: 'will-pass' },
    { case: 'less than has been driven', distance: 2_000, state: 'passed' },
    { case: 'what has just been driven', distance: 2_760, state: 'probably-passed' },
    { case: 'what is driven between the last reading and today', distance: 3_300, state: 'probably-passed' },
    { case: 'what is driven by tomorrow week', distance: 3_800, state: 'will-pass' },
  ])('of $case: $state', ({ distance, state }) => {
    // By hand: 30 x 92 days from 1 August to 1 November are 2760 km; 30 x 116 to 25 November are 3480.
    const use = useOf({ distance: { value: distance, unit: 'km' } });
    expect(use.state).toBe(state);
    if (state === 'within') expect(use.overAtEnd).toBeLessThan(0);
  });

  test('passed already: on the day between the readings on which it was', () => {
    // By hand: 2000 km at 30 a day are 67 days from 1 August.
    expect(useOf({ distance: { value: 2_000, unit: 'km' } }).passes).toEqual({ earliest: '2026-10-07', likely: '2026-10-07', latest: '2026-10-07' });
  });

  test.each([
    { case: 'in its second year', from: '2025-08-01', today: '2026-11-25', period: ['2026-08-01', '2027-07-31'], start: 69_140, estimated: false },
    { case: 'on the last day of its first year', from: '2025-11-26', today: '2026-11-25', period: ['2025-11-26', '2026-11-25'], start: 61_700, estimated: true },
    { case: 'on the first day of its second year', from: '2025-11-25', today: '2026-11-25', period: ['2026-11-25', '2027-11-24'], start: null, estimated: true },
    { case: 'ending within the year', from: '2026-08-01', to: '2027-03-31', today: '2026-11-25', period: ['2026-08-01', '2027-03-31'], start: 69_140, estimated: false },
    { case: 'from a leap day', from: '2024-02-29', today: '2026-11-25', period: ['2026-02-28', '2027-02-27'], start: null, estimated: true },
  ])('$case: $period', ({ from, to, today, period, start, estimated }) => {
    const use = useOf({ from: day(from), to: to === undefined ? null : day(to) }, today);
    expect([use.from, use.to, use.estimated]).toEqual([...period, estimated]);
    if (start !== null) expect((use.start ?? 0) / 1000).toBeCloseTo(start, -2);
  });

  test('the reading given for the first day counts for the first year alone', () => {
    const given = { startReading: { value: 69_000, unit: 'km' as const } };
    expect(useOf(given)).toMatchObject({ start: 69_000_000, estimated: false });
    expect(useOf({ ...given, from: day('2025-08-01') })).toMatchObject({ start: 69_140_000 });
  });

  test.each([
    { case: 'before its first day', from: '2026-11-26', to: null, state: 'not-begun' },
    { case: 'on its first day', from: '2026-11-25', to: null, state: 'will-pass' },
    { case: 'on its last day', from: '2026-08-01', to: '2026-11-25', state: 'within' },
    { case: 'after its last day', from: '2026-08-01', to: '2026-11-24', state: 'ended' },
  ])('$case: $state', ({ from, to, state }) => {
    const use = useOf({ from: day(from), to: to === null ? null : day(to) });
    expect(use.state).toBe(state);
    if (state === 'not-begun' || state === 'ended') expect([use.used, use.passes.likely, use.overAtEnd]).toEqual([null, null, null]);
  });

  test('what would be passed after its last day is never passed: a year begins anew', () => {
    expect(useOf({ distance: { value: 11_500, unit: 'km' } }).passes).toMatchObject({ likely: null, latest: null });
    expect(useOf({ distance: { value: 16_000, unit: 'km' } }).passes).toEqual({ earliest: null, likely: null, latest: null });
    expect(useOf({ distance: { value: 16_000, unit: 'km' }, every: 'term' }).passes.likely).toMatch(/^202[78]-/);
    // By hand: 30 a day from 69 140 on 2026-08-01 leave 10 000 for 2027-07-01; the late edge lies past 2027-07-31.
    expect(useOf().passes).toMatchObject({ likely: expect.any(String) as string, latest: null });
  });

  test('that has ended is shown with its last year', () => {
    expect(useOf({ from: day('2024-08-01'), to: day('2025-10-31') })).toMatchObject({ state: 'ended', from: '2025-08-01', to: '2025-10-31' });
  });

  test('likely passed on the very last day is likely passed; ending a day before, perhaps', () => {
    const likely = useOf({ every: 'term' }).passes.likely ?? day('2000-01-01');
    expect([useOf({ every: 'term', to: likely }).state, useOf({ every: 'term', to: fromDayNumber(dayNumber(likely) - 1) }).state]).toEqual(['will-pass', 'may-pass']);
  });

  test('without a reading nothing is said', () => {
    expect(useOf({}, '2026-11-25', [])).toMatchObject({ state: 'unknown', start: null, target: null, used: null });
  });
});

describe('a warranty of a term', () => {
  const warranty: Partial<DistanceAllowance> = { kind: 'warranty', every: 'term', distance: { value: 75_000, unit: 'km' }, from: day('2020-01-01'), to: day('2027-01-01'), startReading: { value: 0, unit: 'km' } };

  test('from new is counted from 0, and ends by date or distance, whichever comes first', () => {
    const use = useOf(warranty);
    // By hand: 71 900 km on 2026-11-01, 75 000 km 103 days later, after the last day.
    expect([use.start, use.target, use.from, use.to]).toEqual([0, 75_000_000, '2020-01-01', '2027-01-01']);
    expect(endsOn(use).likely).toBe('2027-01-01');
    const longer = useOf({ ...warranty, to: day('2029-01-01') });
    expect(endsOn(longer).likely).toBe(longer.passes.likely);
    expect(longer.state).toBe('will-pass');
  });

  test('without a last day it ends by distance alone', () => {
    const use = useOf({ ...warranty, to: null });
    expect([use.to, use.overAtEnd, use.state, endsOn(use).likely]).toEqual([null, null, 'will-pass', use.passes.likely]);
  });

  test('a reading of a replaced instrument counts with what the car had gone before', () => {
    const instrument = instrumentFrom('2026-01-01', 0, 60_000, 'second');
    const readings = [readingOn('2025-01-01', 50_000), readingOn('2026-06-01', 5_000, { instrument: 'second' }), readingOn('2026-11-01', 9_000, { instrument: 'second' })];
    expect(useOf({ ...warranty, from: day('2026-02-01'), startReading: { value: 1_000, unit: 'km' } }, '2026-11-25', readings, [instrument]).start).toBe(61_000_000);
    expect(useOf({ ...warranty, from: day('2025-06-01'), startReading: { value: 54_000, unit: 'km' } }, '2026-11-25', readings, [instrument]).start).toBe(54_000_000);
  });
});

test('allowing more never passes sooner, and four years on all is four years on', () => {
  const shift = 1461;
  const shifted = steady.map((one) => ({ ...one, date: fromDayNumber(dayNumber(one.date) + shift) }));
  fc.assert(fc.property(fc.integer({ min: 3_000, max: 40_000 }), fc.integer({ min: 0, max: 20_000 }), (value, more) => {
    const use = useOf({ distance: { value, unit: 'km' } });
    const later = useOf({ distance: { value: value + more, unit: 'km' } });
    expect((later.passes.likely ?? '9999') >= (use.passes.likely ?? '9999')).toBe(true);
    const fourYearsOn = useOf({ distance: { value, unit: 'km' }, from: day('2030-08-01') }, '2030-11-25', shifted);
    expect(fourYearsOn.state).toBe(use.state);
    expect(fourYearsOn.passes.likely).toBe(use.passes.likely === null ? null : fromDayNumber(dayNumber(use.passes.likely) + shift));
  }), { numRuns: 50 });
});
