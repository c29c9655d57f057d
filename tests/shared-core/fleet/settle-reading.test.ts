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

/** A reading set aside for being too far ahead, until another of its day was vouched for. */
function fitsNow(household: MemoryHousehold): void {
  household.on('2025-09-02').must('reading.record', { id: 'alone', car: 'camper', value: 130_000, date: day('2025-09-01') });
  household.must('reading.record', { car: 'camper', value: 130_010, date: day('2025-09-02'), sure: true });
  household.must('reading.record', { car: 'camper', value: 129_950, date: day('2025-08-31'), sure: true });
}

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

  test('corrected: what was meant is judged like any other, and where it is doubtful it is asked about in its turn', () => {
    const household = withDoubt(10_400);
    const { reading } = household.must('reading.settle', { reading: 'odd', verdict: 'corrected', value: 1_040_000 });
    expect(reading).toMatchObject({ typed: { value: 1_040_000 }, standing: 'set-aside', doubt: 'too-high', sure: false });
    expect([household.facts().get(readings, 'odd')?.standing, odometer(household)?.likely, doubtful(household)]).toEqual(['dismissed', expect.any(Number), [reading.id]]);
    expect(odometer(household)?.likely).toBeLessThan(110_000);
    const again = household.must('reading.settle', { reading: reading.id, verdict: 'corrected', value: 104_000 });
    expect(again.reading).toMatchObject({ standing: 'accepted', doubt: null, sure: false });
    expect([odometer(household)?.likely, doubtful(household)]).toEqual([104_000, []]);
  });

  test('corrected to a doubtful value that the keeper is sure of: it stands', () => {
    const { reading } = withDoubt(10_400).must('reading.settle', { reading: 'odd', verdict: 'corrected', value: 140_000, sure: true });
    expect(reading).toMatchObject({ standing: 'accepted', doubt: 'too-high', sure: true });
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

  test('replaced: the readings that follow it are of the new instrument too, and are named', () => {
    const household = withDoubt();
    household.must('reading.record', { id: 'odd-too', car: 'camper', value: 2010, date: day('2025-06-30') });
    household.must('reading.settle', { reading: 'odd-too', verdict: 'wrong' });
    household.on('2025-10-01').must('reading.record', { id: 'odd-next', car: 'camper', value: 3010, date: day('2025-10-01') });
    expect(doubtful(household)).toEqual(['odd', 'odd-next']);
    const { reading: first, released } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    expect(released).toMatchObject([{ id: 'odd-next', instrument: first.instrument, standing: 'accepted', doubt: null, sure: false }]);
    expect(doubtful(household)).toEqual([]);
    // 100 000 km of January still count: the car drives on, it has not gone back.
    const { usage } = household.must('car.show', { car: 'camper' });
    expect(usage?.kmAYear).toBeGreaterThan(9000);
    expect(odometer(household)?.likely).toBe(3010);
  });

  test('right, after the instrument proved replaced: it was read from the new one', () => {
    const household = withDoubt();
    // Read three weeks after, far more than three weeks explain.
    household.must('reading.record', { id: 'odd-next', car: 'camper', value: 9010, date: day('2025-07-01') });
    household.on('2025-07-22').must('reading.record', { id: 'far', car: 'camper', value: 9510, date: day('2025-07-22') });
    const { reading: first, released } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    expect(released).toEqual([]);
    const { reading: next } = household.must('reading.settle', { reading: 'far', verdict: 'right' });
    expect(next).toMatchObject({ instrument: first.instrument, standing: 'accepted', sure: true, doubt: 'decrease' });
  });

  test('replaced: of two that do not agree with each other only the first is released', () => {
    const household = withDoubt();
    household.on('2025-08-20').must('reading.record', { id: 'b', car: 'camper', value: 2600, date: day('2025-08-01') });
    household.must('reading.record', { id: 'c', car: 'camper', value: 2000, date: day('2025-08-20') });
    const { released } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    expect([released.map(({ id }) => id), doubtful(household)]).toEqual([['b'], ['c']]);
  });

  test('wrong: what waits beside it waits on', () => {
    const household = withDoubt();
    fitsNow(household);
    household.must('reading.settle', { reading: 'odd', verdict: 'wrong' });
    expect(doubtful(household)).toEqual(['alone']);
  });

  test('replaced: with what the old one last showed nothing is estimated; what cannot be is refused unless the keeper is sure', () => {
    const household = withDoubt();
    const settle = (value: number, sure = false) => household.call('reading.settle', { reading: 'odd', verdict: 'replaced', lastShown: { value, unit: 'km' }, sure });
    expect(settle(90_000)).toMatchObject({ ok: false, refusal: { code: 'last-shown-doubtful' } });
    expect(settle(104_500)).toMatchObject({ ok: true });
    expect(household.must('car.show', { car: 'camper' }).instruments).toMatchObject([{ distance: 104_500_000, estimated: false }]);
    const other = withDoubt();
    expect(other.must('reading.settle', { reading: 'odd', verdict: 'replaced', lastShown: { value: 400_000, unit: 'km' }, sure: true }).reading.standing).toBe('accepted');
  });

  test('replaced: before a later reading of the old one it is refused, unless that is of the new one', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'camper', name: 'Camper' });
    for (const [date, value] of [['2024-01-10', 90_000], ['2025-01-09', 100_000]] as const) household.must('reading.record', { car: 'camper', value, date: day(date) });
    household.must('reading.record', { id: 'odd', car: 'camper', value: 89_000, date: day('2024-07-01') });
    const settle = (laterOfNew: boolean) => household.call('reading.settle', { reading: 'odd', verdict: 'replaced', lastShown: { value: 94_700, unit: 'km' }, laterOfNew });
    expect(settle(false)).toMatchObject({ ok: false, refusal: { code: 'old-instrument-read-later', values: { value: 100_000, unit: 'km', date: '2025-01-09' }, path: ['replaced', 'laterOfNew'] } });
    expect(settle(true)).toMatchObject({ ok: true });
    // By hand: 94 700 + 100 000 - 89 000.
    expect(household.must('car.show', { car: 'camper' }).curve?.points.at(-1)?.value).toBe(105_700);
  });

  test('replaced: a later reading that only the keeper\'s word made stand moves to the new instrument', () => {
    const household = withDoubt(142_000);
    household.on('2025-10-01').must('reading.record', { id: 'sure', car: 'camper', value: 144_500, date: day('2025-10-01'), sure: true });
    const { reading: first } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    expect(household.facts().get(readings, 'sure')).toMatchObject({ instrument: first.instrument, standing: 'accepted' });
    // By hand: about 104 700 km in July and 2500 km more.
    expect(household.must('car.show', { car: 'camper' }).usage?.kmAYear).toBeLessThan(13_000);
    expect(odometer(household)?.likely).toBe(144_500);
  });

  test('corrected by its unit alone: 65 000 was typed in miles', () => {
    const household = withDoubt(64_700);
    const { reading } = household.must('reading.settle', { reading: 'odd', verdict: 'corrected', unit: 'mi' });
    // By hand: 64 700 x 1.609344 = 104 124.6.
    expect(reading).toMatchObject({ typed: { value: 64_700, unit: 'mi' }, standing: 'accepted', shown: 104_124_557 });
    expect(odometer(household)).toMatchObject({ likely: 104_125, unit: 'km' });
  });

  test.each([
    { case: 'no such reading', request: { reading: 'none', verdict: 'right' }, code: 'unknown-reading' },
    { case: 'one that is not in doubt', request: { reading: 'new-1', verdict: 'wrong' }, code: 'reading-not-in-doubt' },
    { case: 'corrected to nothing', request: { reading: 'odd', verdict: 'corrected' }, code: 'value-missing' },
    { case: 'corrected to less than 0', request: { reading: 'odd', verdict: 'corrected', value: -5 }, code: 'not-a-distance' },
    { case: 'the other wrong, where it contradicts none', request: { reading: 'alone', verdict: 'other-wrong' }, code: 'no-other-reading' },
    { case: 'another verdict', request: { reading: 'odd', verdict: 'perhaps' }, code: 'not-understood' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withDoubt();
    if (request.reading === 'alone') fitsNow(household);
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

describe('the earlier reading was the wrong one', () => {
  /** 104 000 was typed as 109 000 on 2025-07-01: not far enough to be asked about. The next one, true, falls under it. */
  function slipTaken(): MemoryHousehold {
    const household = memoryHousehold();
    household.must('car.add', { id: 'camper', name: 'Camper' });
    for (const [date, value] of [['2023-01-10', 80_000], ['2024-01-10', 90_000], ['2025-01-09', 100_000]] as const) household.must('reading.record', { car: 'camper', value, date: day(date) });
    expect(household.must('reading.record', { id: 'slip', car: 'camper', value: 109_000, date: day('2025-07-01') }).state).toBe('accepted');
    expect(household.on('2025-08-20').must('reading.record', { id: 'true', car: 'camper', value: 105_400 }).state).toBe('set-aside');
    expect(household.must('reading.record', { id: 'lower', car: 'camper', value: 105_390 }).state).toBe('set-aside');
    return household;
  }

  test('both are shown, and which is the likelier slip', () => {
    const [lower, first] = slipTaken().must('due.show', {}).cars[0]?.doubtful ?? [];
    expect(first).toMatchObject({
      reading: 'true', code: 'decrease', fitsNow: false,
      against: { reading: 'slip', date: '2025-07-01', value: 109_000, unit: 'km', likelierSlip: true, text: expect.stringContaining('109\u202f000 km on 1 Jul 2025') as string },
    });
    expect(lower?.against).toMatchObject({ reading: 'slip', likelierSlip: true });
  });

  test('dismissed: the later ones stand, with nothing vouched for', () => {
    const household = slipTaken();
    const { reading, other, released } = household.must('reading.settle', { reading: 'true', verdict: 'other-wrong' });
    expect(reading).toMatchObject({ id: 'true', standing: 'accepted', doubt: null, sure: false });
    expect(other).toMatchObject({ id: 'slip', standing: 'dismissed', typed: { value: 109_000 } });
    expect(released).toMatchObject([{ id: 'lower', standing: 'accepted' }]);
    expect([odometer(household)?.likely, doubtful(household)]).toEqual([105_400, []]);
  });

  test('corrected: another value stands on its day', () => {
    const household = slipTaken();
    const { other } = household.must('reading.settle', { reading: 'true', verdict: 'other-wrong', value: 104_000 });
    const far = slipTaken();
    far.must('reading.settle', { reading: 'true', verdict: 'other-wrong', value: 900_000 });
    expect([odometer(far)?.likely, far.must('due.show', {}).cars[0]?.doubtful.map(({ value }) => value)]).toEqual([105_400, [900_000]]);
    expect(other?.id).toBe('slip');
    const { readings: shown } = household.must('car.show', { car: 'camper' });
    expect(shown.filter(({ date }) => date === '2025-07-01').map(({ typed, standing }) => [typed.value, standing])).toEqual(expect.arrayContaining([[109_000, 'dismissed'], [104_000, 'accepted']]));
    expect(doubtful(household)).toEqual([]);
  });

  test('two of one day that no car can drive between: both are named, and either may be settled as the right one', () => {
    const sameDay = () => {
      const household = memoryHousehold();
      household.must('car.add', { id: 'camper', name: 'Camper' });
      for (const [date, value] of [['2023-07-01', 50_000], ['2024-07-01', 60_000], ['2025-07-01', 79_500]] as const) household.must('reading.record', { id: `at-${value}`, car: 'camper', value, date: day(date) });
      expect(household.must('reading.record', { id: 'second', car: 'camper', value: 70_200, date: day('2025-07-01') })).toMatchObject({ state: 'set-aside', code: 'same-day' });
      return household.on('2025-07-01');
    };
    const asked = sameDay().must('due.show', {}).cars[0]?.doubtful[0];
    expect(asked?.text).toBe('Another reading of that day is farther away than a car can drive in a day.');
    expect(asked?.against).toMatchObject({ reading: 'at-79500', likelierSlip: true, text: expect.stringContaining('79\u202f500 km on 1 Jul 2025') as string });
    for (const verdict of ['right', 'other-wrong'] as const) {
      const household = sameDay();
      household.must('reading.settle', { reading: 'second', verdict });
      expect([odometer(household)?.likely, doubtful(household)]).toEqual([70_200, []]);
    }
  });

  test('what is still in doubt without it stands by the keeper\'s word', () => {
    const household = withDoubt(1_000_000);
    const { reading, other } = household.must('reading.settle', { reading: 'odd', verdict: 'other-wrong' });
    expect(other).toMatchObject({ date: '2025-01-09', standing: 'dismissed' });
    expect(reading).toMatchObject({ standing: 'accepted', sure: true, doubt: 'too-high' });
  });
});
