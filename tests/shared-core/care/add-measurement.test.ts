import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { measure, measuredHousehold, seriesOf } from './measured-household.ts';

describe('a measurement', () => {
  test('is kept as it was read, beside its canonical value', () => {
    const household = measuredHousehold();
    const { measurement, reading } = household.must('measurement.add', { id: 'm', car: 'Pip', what: 'tread', place: 'front-left', value: 2, unit: '32nds', gauge: 'depth gauge 2', source: 'garage', note: 'inner edge' });
    expect(measurement).toEqual({
      id: 'm', car: 'pip', item: null, what: 'tread', name: null, place: 'front-left', wheel: null, date: '2026-11-25', typed: { value: 2, unit: '32nds' }, value: 1.5875,
      reading: null, metres: null, fresh: false, gauge: 'depth gauge 2', source: 'garage', paper: null, note: 'inner edge', dismissed: false,
    });
    expect(reading).toBeNull();
  });

  test('with an odometer: a reading of its own stands beside it, judged', () => {
    const household = measuredHousehold();
    const good = household.must('measurement.add', { car: 'pip', what: 'pad', value: 8, unit: 'mm', reading: { value: 39_000, unit: 'km' }, source: 'garage' });
    expect(good.reading).toMatchObject({ state: 'accepted', reading: { source: 'garage', date: '2026-11-25' } });
    expect(good.measurement.reading).toBe(good.reading?.reading.id);
    const odd = household.must('measurement.add', { car: 'pip', what: 'pad', value: 8, unit: 'mm', date: day('2025-06-01'), reading: { value: 240, unit: 'km' } });
    expect(odd.reading).toMatchObject({ state: 'set-aside', code: 'decrease' });
    // A doubtful reading moves nothing: the distance is worked out from those around it.
    expect(seriesOf(household)[0]?.points.map(({ distance, estimated }) => [distance, estimated])).toEqual([[24_137, true], [39_000, false]]);
  });

  test('with a reading entered before, or with the whole distance', () => {
    const household = measuredHousehold();
    expect(measure(household, '2025-01-01', 8, { readingId: 'r-2025-01-01' }).reading).toBe('r-2025-01-01');
    expect(measure(household, '2025-07-01', 7, { distance: { value: 26_000, unit: 'km' } }).metres).toBe(26_000_000);
    expect(seriesOf(household)[0]?.points.map(({ distance, estimated }) => [distance, estimated])).toEqual([[20_000, false], [26_000, false]]);
  });

  test('of tread belongs to the wheel that was there, and knows where the wheel was', () => {
    const household = measuredHousehold();
    household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2024-01-01') });
    household.must('wheel.move', { car: 'pip', on: day('2025-01-01'), moves: [{ wheel: 'a', place: 'rear-right' }] });
    const where = ({ wheel, place }: ReturnType<typeof measure>) => [wheel, place];
    expect(where(measure(household, '2024-06-01', 8, { what: 'tread', place: 'front-left' }))).toEqual(['a', 'front-left']);
    expect(where(measure(household, '2025-06-01', 7, { what: 'tread', place: 'front-left' }))).toEqual([null, 'front-left']);
    expect(where(measure(household, '2025-06-01', 7, { what: 'tread', wheel: 'a', place: null }))).toEqual(['a', 'rear-right']);
    expect(where(measure(household, '2025-07-01', 7, { what: 'pad', place: 'rear-right' }))).toEqual([null, 'rear-right']);
  });

  test('may be undone in one step with its reading', () => {
    const household = measuredHousehold();
    const before = household.entries.length;
    household.must('measurement.add', { car: 'pip', what: 'pad', value: 8, unit: 'mm', reading: { value: 39_000, unit: 'km' } });
    expect(household.entries.slice(before).map((entry) => entry.kind)).toEqual(['reading-recorded', 'measurement-taken']);
  });
});

describe('a measurement is refused', () => {
  test.each([
    { case: 'of a day to come', request: { date: '2026-11-26' }, code: 'date-in-future' },
    { case: 'of a day before the car', request: { date: '2022-12-31' }, code: 'before-registration' },
    { case: 'of something unknown', request: { what: 'horn' }, code: 'unknown-measure' },
    { case: 'in a unit that is none', request: { unit: 'furlong' }, code: 'unknown-measured-unit' },
    { case: 'in a unit of something else', request: { unit: 'V' }, code: 'measure-unit-differs' },
    { case: 'thicker than can be', request: { value: 41 }, code: 'measured-value-absurd' },
    { case: 'a point forgotten in 12.6 V', request: { what: 'battery-voltage', place: null, value: 126, unit: 'V' }, code: 'measured-value-absurd' },
    { case: 'less than nothing', request: { value: -0.1 }, code: 'measured-value-absurd' },
    { case: 'that is no number', request: { value: 'thick' }, code: 'not-a-measured-value' },
    { case: 'in a place that is none', request: { place: 'roof' }, code: 'unknown-measure-place' },
    { case: 'of something else without a name', request: { what: 'other', unit: '1' }, code: 'measure-needs-name' },
    { case: 'of a known kind with a name', request: { name: 'linings' }, code: 'measure-has-name' },
    { case: 'of pads on a wheel', request: { wheel: 'a' }, code: 'only-tread-has-wheel' },
    { case: 'of an unknown wheel', request: { what: 'tread', wheel: 'x' }, code: 'unknown-wheel' },
    { case: 'of a wheel that was elsewhere', request: { what: 'tread', wheel: 'a', place: 'rear-left' }, code: 'wheel-elsewhere' },
    { case: 'in the course of an unknown item', request: { item: 'x' }, code: 'unknown-item' },
    { case: 'in the course of another car\'s item', request: { item: 'wren-oil' }, code: 'unknown-item' },
    { case: 'with two odometers', request: { readingId: 'r-2026-01-01', distance: { value: 1, unit: 'km' } }, code: 'two-odometers' },
    { case: 'with a reading that is not there', request: { readingId: 'x' }, code: 'unknown-reading' },
    { case: 'with a reading of another day', request: { readingId: 'r-2026-01-01' }, code: 'reading-of-another-day' },
    { case: 'with a distance below the readings before', request: { distance: { value: 38_000, unit: 'km' } }, code: 'distance-does-not-fit' },
    { case: 'with a distance above the readings after', request: { date: '2025-12-01', distance: { value: 30_001, unit: 'km' } }, code: 'distance-does-not-fit' },
    { case: 'with an odometer below 0', request: { reading: { value: -1, unit: 'km' } }, code: 'not-a-distance' },
    { case: 'under an id that is taken', request: { id: 'm' }, code: 'id-taken' },
    { case: 'of an unknown car', request: { car: 'x' }, code: 'unknown-car' },
  ])('$case: $code', ({ request, code }) => {
    const household = measuredHousehold();
    household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2024-01-01') });
    household.must('item.add', { id: 'wren-oil', car: 'wren', name: 'oil', interval: { repeat: { months: 12, distance: null } } });
    measure(household, '2026-11-20', 8, { id: 'm' });
    const before = household.entries.length;
    expect(household.call('measurement.add', { car: 'pip', what: 'pad', value: 8, unit: 'mm', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('of something else in another kind of unit than before', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 40, { what: 'other', name: 'Wiper blade gap', unit: 'mm' });
    expect(household.call('measurement.add', { car: 'pip', what: 'other', name: 'wiper blade gap', value: 3, unit: 'V' })).toMatchObject({ ok: false, refusal: { code: 'measure-unit-differs' } });
    expect(household.call('measurement.add', { car: 'pip', what: 'other', name: 'wiper blade gap', value: 2, unit: 'in' })).toMatchObject({ ok: true });
    expect(household.call('measurement.add', { car: 'pip', what: 'other', name: 'something else', value: 3, unit: 'V' })).toMatchObject({ ok: true });
  });
});

describe('a measurement corrected', () => {
  test('has another value; what was entered first stays in the journal', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 80, { id: 'm', what: 'other', name: 'gap', unit: '1' });
    const { measurement } = household.must('measurement.correct', { id: 'm', typed: { value: 8, unit: '1' }, note: 'a slip' });
    expect(measurement).toMatchObject({ value: 8, typed: { value: 8 }, note: 'a slip', date: '2026-01-01' });
    expect(household.entries.filter((entry) => entry.kind === 'measurement-taken').map((entry) => entry.values['value'])).toEqual([80, 8]);
  });

  test('of another day no longer has the odometer of the first', () => {
    const household = measuredHousehold();
    measure(household, '2025-01-01', 8, { id: 'm', readingId: 'r-2025-01-01' });
    expect(household.must('measurement.correct', { id: 'm', note: 'x', date: day('2025-01-01') }).measurement.reading).toBe('r-2025-01-01');
    expect(household.must('measurement.correct', { id: 'm', note: 'y' }).measurement.reading).toBe('r-2025-01-01');
    expect(household.must('measurement.correct', { id: 'm', date: day('2025-07-02') }).measurement).toMatchObject({ reading: null, metres: null });
    // Halfway between 20 000 km and 30 000 km: 182 of 365 days.
    expect(seriesOf(household)[0]?.points[0]?.distance).toBe(24_986);
  });

  test.each([
    { request: { id: 'x' }, code: 'unknown-measurement' },
    { request: { id: 'm', typed: { value: 50, unit: 'mm' } }, code: 'measured-value-absurd' },
    { request: { id: 'm', date: '2027-01-01' }, code: 'date-in-future' },
    { request: { id: 'm', item: 'x' }, code: 'unknown-item' },
    { request: { id: 'm', what: 'disc' }, code: 'unknown-field' },
  ])('refused: $code', ({ request, code }) => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 8, { id: 'm' });
    expect(household.call('measurement.correct', request as never)).toMatchObject({ ok: false, refusal: { code } });
  });
});
