import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { measure, measuredHousehold, padItem, seriesOf } from './measured-household.ts';

const partsOf = (household: ReturnType<typeof measuredHousehold>, at = 0) => seriesOf(household)[at]?.points.map(({ measurement, part }) => [measurement.id, part]);

describe('a series of measurements', () => {
  test('is one of each thing and place, with a line through it', () => {
    const household = measuredHousehold();
    measure(household, '2025-01-01', 9);
    measure(household, '2026-01-01', 7);
    measure(household, '2026-01-01', 8, { place: 'front-right' });
    measure(household, '2026-01-01', 12.6, { what: 'battery-voltage', unit: 'V' });
    const all = seriesOf(household);
    expect(all.map(({ key, unit, way }) => [key, unit, way])).toEqual([
      ['battery-voltage//', 'V', { by: 'time', rises: false }], ['pad//front-left', 'mm', { by: 'distance', rises: false }], ['pad//front-right', 'mm', { by: 'distance', rises: false }],
    ]);
    // By hand: 2 mm in 10 000 km; 1.2816 x 0.4 / root(0.5) = 0.72 mm is what gauges allow over it.
    expect(all[1]?.line).toEqual({ from: { date: '2025-01-01', value: 9 }, to: { date: '2026-01-01', value: 7 }, rate: { rate: -2, low: -2.7, high: -1.3, unit: 'mm', every: 10_000, everyUnit: 'km' } });
    expect(all[0]?.line).toBeNull();
  });

  test('begins anew with a new part: as an item replaced, or as the keeper says', () => {
    const household = measuredHousehold();
    padItem(household);
    measure(household, '2024-01-01', 9, { id: 'old' });
    measure(household, '2024-06-01', 3.5, { id: 'same-day' });
    household.must('record.add', { car: 'pip', date: day('2024-06-01'), lines: [{ item: 'pads' }] });
    measure(household, '2024-06-02', 11, { id: 'new' });
    measure(household, '2026-01-01', 9, { id: 'newer' });
    expect(partsOf(household)).toEqual([['old', 'earlier-part'], ['same-day', 'earlier-part'], ['new', 'counts'], ['newer', 'counts']]);
    household.must('measurement.correct', { id: 'newer', fresh: true });
    expect(partsOf(household)).toEqual([['old', 'earlier-part'], ['same-day', 'earlier-part'], ['new', 'earlier-part'], ['newer', 'counts']]);
  });

  test('a new part measured on the day of its fitting counts, the old one of that day does not', () => {
    const household = measuredHousehold();
    measure(household, '2024-06-01', 3.5, { id: 'out' });
    measure(household, '2024-06-01', 11, { id: 'in', fresh: true });
    expect(partsOf(household)).toEqual([['in', 'counts'], ['out', 'earlier-part']]);
  });

  test('being looked at makes no new part, not even where something was then done', () => {
    const household = measuredHousehold();
    padItem(household, { work: 'check' });
    measure(household, '2024-01-01', 9, { id: 'a' });
    household.must('record.add', { car: 'pip', date: day('2024-06-01'), lines: [{ item: 'pads', outcome: 'acted' }] });
    household.must('record.add', { car: 'pip', date: day('2024-07-01'), lines: [{ item: 'pads', work: 'replace', outcome: 'not-done' }] });
    expect(partsOf(household)).toEqual([['a', 'counts']]);
    household.must('record.add', { car: 'pip', date: day('2024-08-01'), lines: [{ item: 'pads', work: 'replace' }] });
    expect(partsOf(household)).toEqual([['a', 'earlier-part']]);
  });

  test('of several on one day the worst counts; one dismissed counts for nothing', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 7, { id: 'thick' });
    measure(household, '2026-01-01', 6.5, { id: 'thin' });
    measure(household, '2026-01-01', 2, { id: 'slip' });
    household.must('measurement.correct', { id: 'slip', dismissed: true });
    expect(partsOf(household)).toEqual([['slip', 'dismissed'], ['thick', 'worse-that-day'], ['thin', 'counts']]);
  });

  test('the worst of what rises is the highest', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 1.5, { id: 'dry', what: 'brake-fluid-moisture', unit: '%' });
    measure(household, '2026-01-01', 2.5, { id: 'wet', what: 'brake-fluid-moisture', unit: '%' });
    expect(partsOf(household)).toEqual([['dry', 'worse-that-day'], ['wet', 'counts']]);
  });

  test('without any reading of the car, what wears by distance has no place; what wears by time has', () => {
    const household = measuredHousehold();
    household.must('measurement.add', { id: 'pad', car: 'wren', what: 'pad', value: 8, unit: 'mm' });
    household.must('measurement.add', { id: 'volts', car: 'wren', what: 'battery-voltage', value: 12.4, unit: 'V' });
    expect(household.must('car.show', { car: 'wren' }).measured.map(({ points }) => points.map(({ part }) => part))).toEqual([['counts'], ['no-distance']]);
  });

  test('a part said to be new by a slip is not, once that is dismissed', () => {
    const household = measuredHousehold();
    measure(household, '2024-01-01', 9, { id: 'a' });
    measure(household, '2025-01-01', 8, { id: 'slip', fresh: true });
    measure(household, '2026-01-01', 7, { id: 'b' });
    expect(partsOf(household)).toEqual([['a', 'earlier-part'], ['slip', 'counts'], ['b', 'counts']]);
    household.must('measurement.correct', { id: 'slip', dismissed: true });
    expect(partsOf(household)).toEqual([['a', 'counts'], ['slip', 'dismissed'], ['b', 'counts']]);
  });

  test('a distance given by hand that falls counts for nothing', () => {
    const household = measuredHousehold();
    measure(household, '2025-07-01', 8, { id: 'a', distance: { value: 26_000, unit: 'km' } });
    measure(household, '2025-08-01', 7, { id: 'b', distance: { value: 25_000, unit: 'km' } });
    measure(household, '2025-09-01', 7, { id: 'c', distance: { value: 27_000, unit: 'km' } });
    expect(partsOf(household)).toEqual([['a', 'counts'], ['b', 'no-distance'], ['c', 'counts']]);
  });

  test('limits that cannot be compared, or that mean another way of wearing, are left out', () => {
    const household = measuredHousehold();
    household.must('wear-limit.set', { car: 'pip', what: 'other', name: 'play', limit: { value: 1, unit: 'V' }, way: { by: 'time', rises: true } });
    measure(household, '2025-01-01', 1, { what: 'other', name: 'play' });
    expect(seriesOf(household)[0]?.limits).toEqual([]);
    const byTime = { kind: 'other' as const, name: 'play', places: [], limit: { value: 9, unit: 'mm' as const }, way: { by: 'time' as const, rises: true } };
    padItem(household, { id: 'a', measure: byTime });
    padItem(household, { id: 'b', measure: { ...byTime, way: { by: 'distance', rises: true } } });
    expect(seriesOf(household)[0]).toMatchObject({ way: { by: 'time' }, limits: [{ items: ['a'] }] });
  });

  test('its rate is said in the unit last used', () => {
    const household = measuredHousehold();
    measure(household, '2025-01-01', 8, { what: 'tread', unit: 'mm' });
    measure(household, '2026-01-01', 8, { what: 'tread', unit: '32nds' });
    // By hand: 8 mm are 10.08/32 in, so 2.1/32 in of 8/32 in are gone in 10 000 km.
    expect(seriesOf(household)[0]?.line?.rate).toMatchObject({ rate: -2.1, unit: '32nds', every: 10_000 });
  });

  test('its values may be typed in several units', () => {
    const household = measuredHousehold();
    measure(household, '2025-01-01', 10, { what: 'tread', unit: '32nds' });
    measure(household, '2026-01-01', 4, { what: 'tread', unit: 'mm' });
    // By hand: 10/32 in = 7.9375 mm.
    expect(seriesOf(household)[0]?.line).toMatchObject({ from: { value: 7.9375 }, to: { value: 4 }, rate: { rate: -3.9, unit: 'mm' } });
  });
});

describe('a wheel moved round', () => {
  /** Wheel A in front until 2025, then at the rear; measured in both places. */
  function moved() {
    const household = measuredHousehold();
    household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2024-01-01') });
    household.must('wheel.add', { id: 'b', car: 'pip', name: 'B', place: 'rear-left', on: day('2024-01-01') });
    measure(household, '2024-01-01', 8, { id: 'new', what: 'tread', place: 'front-left' });
    household.must('wheel.move', { car: 'pip', on: day('2025-01-01'), moves: [{ wheel: 'a', place: 'rear-left' }, { wheel: 'b', place: 'front-left' }] });
    measure(household, '2025-01-02', 6, { id: 'after', what: 'tread', place: 'rear-left' });
    return household;
  }

  test('keeps its history, and stands where it is now', () => {
    const household = moved();
    expect(seriesOf(household)).toMatchObject([{ key: 'tread//wheel a', place: 'rear-left', wheel: { id: 'a', name: 'A' }, points: [{ measurement: { id: 'new', place: 'front-left' } }, { measurement: { id: 'after', place: 'rear-left' } }] }]);
  });

  test('taken off, goes no distance and wears by none', () => {
    const household = moved();
    household.must('wheel.move', { car: 'pip', on: day('2025-07-02'), moves: [{ wheel: 'a', place: 'off' }] });
    household.must('wheel.add', { id: 'w', car: 'pip', name: 'W', place: 'rear-left', on: day('2025-07-02') });
    household.must('wheel.move', { car: 'pip', on: day('2026-01-01'), moves: [{ wheel: 'w', place: 'off' }, { wheel: 'a', place: 'rear-left' }] });
    measure(household, '2026-11-01', 4.4, { id: 'last', what: 'tread', wheel: 'a', place: null });
    // By hand: off from 2025-07-02 (24 986 km) to 2026-01-01 (30 000 km); at 38 333 km it has gone 33 319 km.
    expect(seriesOf(household)[0]?.points.map(({ distance, along }) => [distance, along])).toEqual([[10_000, 10_000], [20_027, 20_027], [38_333, 33_319]]);
  });

  test('measured in store, it has gone what it had gone when it came off', () => {
    const household = moved();
    household.must('wheel.move', { car: 'pip', on: day('2025-07-02'), moves: [{ wheel: 'a', place: 'off' }] });
    measure(household, '2025-12-24', 5, { id: 'store', what: 'tread', wheel: 'a', place: null });
    household.must('wheel.move', { car: 'pip', on: day('2026-01-01'), moves: [{ wheel: 'a', place: 'rear-left' }] });
    expect(seriesOf(household)[0]?.points.at(-1)).toMatchObject({ distance: 29_781, along: 24_986 });
  });

  test('off the car has limits and no dates; the spare likewise', () => {
    const household = moved();
    household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 1.6, unit: 'mm' } });
    expect(seriesOf(household)[0]?.limits).toMatchObject([{ verdict: 'wears' }]);
    household.must('wheel.move', { car: 'pip', on: day('2025-06-01'), moves: [{ wheel: 'a', place: 'spare' }] });
    expect(seriesOf(household)[0]?.limits).toMatchObject([{ verdict: 'off-the-road', earliest: null, words: { text: 'It is off the road and does not wear there, so nobody can say when it reaches its limit.' } }]);
    household.must('wheel.move', { car: 'pip', on: day('2026-01-01'), moves: [{ wheel: 'a', place: 'off' }] });
    expect(seriesOf(household)[0]).toMatchObject({ place: null, limits: [{ verdict: 'off-the-road' }] });
  });

  test('tyres said to be replaced leave a known wheel alone: a new tyre is another wheel', () => {
    const household = moved();
    household.must('item.add', { id: 'tyres', car: 'pip', name: 'tyres', interval: { repeat: { months: 120, distance: null } }, measure: { kind: 'tread', name: null, places: [], limit: { value: 3, unit: 'mm' }, way: null } });
    household.must('record.add', { car: 'pip', date: day('2025-06-01'), lines: [{ item: 'tyres' }] });
    expect(partsOf(household)).toEqual([['new', 'counts'], ['after', 'counts']]);
  });
});

describe('the order in which things are entered', () => {
  const values = [['2024-01-01', 9], ['2024-08-01', 8.1], ['2025-03-01', 7.3], ['2025-10-01', 6.2], ['2026-06-01', 5.5]] as const;
  const entered = (order: readonly number[]) => {
    const household = measuredHousehold();
    padItem(household);
    for (const at of order) measure(household, values[at]?.[0] ?? '', values[at]?.[1] ?? 0, { id: `m-${at}` });
    return JSON.stringify(seriesOf(household));
  };

  test('does not matter', () => {
    const inOrder = entered([0, 1, 2, 3, 4]);
    fc.assert(fc.property(fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 5 }), (order) => {
      expect(entered(order)).toBe(inOrder);
    }), { numRuns: 20 });
  });
});
