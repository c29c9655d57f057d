import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { measuredHousehold, seriesOf } from './measured-household.ts';

const FOUR = (['front-left', 'front-right', 'rear-left', 'rear-right'] as const).map((place, at) => ({ place, value: 6 - at / 10 }));

describe('several measurements in one go', () => {
  test('each stands by itself, with one reading for all', () => {
    const household = measuredHousehold();
    const { measurements, reading } = household.must('measurements.add', { car: 'pip', what: 'tread', unit: 'mm', reading: { value: 39_000, unit: 'km' }, gauge: 'gauge 1', values: FOUR });
    expect(measurements.map(({ place, value, gauge }) => [place, value, gauge])).toEqual([['front-left', 6, 'gauge 1'], ['front-right', 5.9, 'gauge 1'], ['rear-left', 5.8, 'gauge 1'], ['rear-right', 5.7, 'gauge 1']]);
    expect(new Set(measurements.map((one) => one.id)).size).toBe(4);
    expect(new Set(measurements.map((one) => one.reading))).toEqual(new Set([reading?.reading.id]));
    expect(seriesOf(household).map((one) => [one.place, one.points[0]?.distance])).toEqual([['front-left', 39_000], ['front-right', 39_000], ['rear-left', 39_000], ['rear-right', 39_000]]);
  });

  test('across one thing: all are kept and the worst of them counts', () => {
    const household = measuredHousehold();
    const across = [['inner edge', 3.1], ['middle', 4.2], ['outer edge', 4]] as const;
    household.must('measurements.add', { car: 'pip', what: 'tread', unit: 'mm', values: across.map(([note, value]) => ({ place: 'front-left', value, note })) });
    const [series] = seriesOf(household);
    expect(series?.points.map(({ measurement, part }) => [measurement.note, part]).sort()).toEqual([['inner edge', 'counts'], ['middle', 'worse-that-day'], ['outer edge', 'worse-that-day']]);
  });

  test('are undone in one step', () => {
    const household = measuredHousehold();
    const before = household.entries.length;
    household.must('measurements.add', { car: 'pip', what: 'pad', unit: 'mm', values: FOUR });
    expect(household.entries.slice(before).map((entry) => entry.kind)).toEqual(Array.from({ length: 4 }, () => 'measurement-taken'));
  });
});

describe('of several, none is kept where one is refused', () => {
  test.each([
    { case: 'a value absurd for its kind, named by its place in the list', request: { values: [{ place: 'front-left', value: 6 }, { place: 'front-right', value: 61 }] }, code: 'measured-value-absurd', path: ['values', 1, 'value'] },
    { case: 'a place that is none', request: { values: [{ place: 'roof', value: 6 }] }, code: 'unknown-measure-place', path: ['values', 0, 'place'] },
    { case: 'an unknown wheel', request: { values: [{ value: 6, wheel: 'x' }] }, code: 'unknown-wheel', path: ['values', 0, 'wheel'] },
    { case: 'a unit of something else, named as the unit of all', request: { unit: 'V', values: FOUR }, code: 'measure-unit-differs', path: ['unit'] },
    { case: 'a day to come', request: { date: day('2026-11-26'), values: FOUR }, code: 'date-in-future', path: ['date'] },
    { case: 'nothing measured', request: { values: [] }, code: 'nothing-measured', path: ['values'] },
    { case: 'two odometers', request: { readingId: 'r-2026-11-01', distance: { value: 1, unit: 'km' }, values: FOUR }, code: 'two-odometers', path: ['reading'] },
  ])('$case: $code', ({ request, code, path }) => {
    const household = measuredHousehold();
    const before = household.entries.length;
    expect(household.call('measurements.add', { car: 'pip', what: 'tread', unit: 'mm', ...request } as never)).toMatchObject({ ok: false, refusal: { code, path } });
    expect(household.entries).toHaveLength(before);
  });
});
