import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car of about 10 000 km a year, at 100 000 km on 2025-01-09; what follows is typed as given, each on its day. */
function readAfter(...typed: readonly (readonly [id: string, date: string, value: number])[]): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'camper', name: 'Camper' });
  for (const [date, value] of [['2023-01-10', 80_000], ['2024-01-10', 90_000], ['2025-01-09', 100_000]] as const) household.must('reading.record', { car: 'camper', value, date: day(date) });
  for (const [id, date, value] of typed) household.on(date).must('reading.record', { id, car: 'camper', value });
  return household;
}

const asked = (household: MemoryHousehold) => household.must('due.show', {}).cars[0]?.doubtful ?? [];

describe('what the next reading makes of a doubtful one', () => {
  // Source: house method, section 6: |z| of the next one on the old line and on the doubtful one's, 3.5 at most.
  test.each([
    { case: 'nothing, while there is none', typed: [['odd', '2025-07-01', 12]] as const, says: null },
    { case: 'a slip: the next goes on as before', typed: [['odd', '2025-07-01', 10_400], ['next', '2025-09-01', 106_000]] as const, says: 'slip' },
    { case: 'replaced: the next goes on from near zero', typed: [['odd', '2025-07-01', 12], ['next', '2025-09-01', 1700]] as const, says: 'replaced' },
    { case: 'replaced: by a used one that shows more', typed: [['odd', '2025-07-01', 142_000], ['next', '2025-09-01', 143_700]] as const, says: 'replaced' },
    { case: 'unsure: neither line', typed: [['odd', '2025-07-01', 12], ['next', '2025-09-01', 40_000]] as const, says: 'unsure' },
  ])('$case', ({ typed, says }) => {
    expect(asked(readAfter(...typed))[0]?.next?.says ?? null).toBe(says);
  });

  test('a replaced instrument is proposed with its estimated distance, and nothing is decided', () => {
    const household = readAfter(['odd', '2025-07-01', 12], ['next', '2025-09-01', 1700]);
    const [odd, next] = asked(household);
    // By hand: about 28 km a day over 173 days from 100 000 km, with the season a little more.
    const distance = odd?.next?.distance?.value ?? 0;
    expect(distance).toBeGreaterThan(104_700);
    expect(distance).toBeLessThan(105_400);
    expect(odd?.next).toMatchObject({ reading: 'next', date: '2025-09-01', value: 1700, unit: 'km', distance: { unit: 'km' }, text: expect.stringContaining('probably replaced') as string });
    // In words no finer than a hundred.
    expect(odd?.next?.text).toMatch(/gone about 10[45]\u202f\d00 km\.$/);
    expect(next?.next).toMatchObject({ says: 'follows', reading: 'odd', distance: null });
    expect(household.must('car.show', { car: 'camper' }).instruments).toEqual([]);
    // Taken as proposed, it is that distance, marked estimated, and the next one is of it.
    const { released } = household.must('reading.settle', { reading: 'odd', verdict: 'replaced' });
    expect(Math.abs((household.must('car.show', { car: 'camper' }).instruments[0]?.distance ?? 0) / 1000 - distance)).toBeLessThan(1);
    expect(released.map(({ id }) => id)).toEqual(['next']);
  });

  test('all that go on from it follow, one that does not asks for itself', () => {
    const household = readAfter(['a', '2025-07-01', 12], ['b', '2025-08-01', 900], ['c', '2025-09-01', 1800], ['d', '2025-10-01', 60_000]);
    expect(asked(household).map((one) => [one.reading, one.next?.says ?? null])).toEqual([['a', 'replaced'], ['b', 'follows'], ['c', 'follows'], ['d', null]]);
  });

  test('one of the old line in between ends what follows', () => {
    const household = readAfter(['a', '2025-07-01', 12], ['b', '2025-08-01', 900], ['true', '2025-08-20', 106_000], ['c', '2025-09-01', 1800]);
    expect(asked(household).map((one) => [one.reading, one.next?.says ?? null, one.next?.reading ?? null])).toEqual([['a', 'replaced', 'b'], ['b', 'follows', 'a'], ['c', null, null]]);
  });

  test('a dismissed reading is none', () => {
    const household = readAfter(['odd', '2025-07-01', 12], ['next', '2025-09-01', 1700]);
    household.must('reading.settle', { reading: 'next', verdict: 'wrong' });
    expect(asked(household)).toMatchObject([{ reading: 'odd', next: null }]);
  });

  test('an instrument put in between parts the two', () => {
    const household = readAfter(['odd', '2025-07-01', 12]);
    household.on('2025-09-01').must('reading.record', { car: 'camper', value: 5, replaced: { lastShown: { value: 106_000, unit: 'km' } } });
    expect(asked(household)).toMatchObject([{ reading: 'odd', next: null }]);
  });
});

describe('a doubtful reading as it is asked about', () => {
  test('says what was expected and what may have been meant, in the unit typed', () => {
    const household = readAfter();
    household.on('2025-07-01').must('reading.record', { id: 'odd', car: 'camper', value: 56_500, unit: 'mi' });
    const [odd] = asked(household);
    // 65 500 mi would be 105 413 km; about 104 900 are expected, by hand 65 200 mi.
    expect(odd).toMatchObject({ code: 'decrease', fitsNow: false, repairs: [65_500, 66_500], slips: ['swap', 'substitute'], next: null, against: { value: 100_000, unit: 'km', likelierSlip: false } });
    expect(odd?.expected?.likely).toBeGreaterThan(65_000);
    expect(odd?.expected?.likely).toBeLessThan(65_400);
    expect(odd?.expected?.low).toBeGreaterThan(63_000);
    expect(odd?.expected?.high).toBeLessThan(68_500);
  });

  test('the other unit is offered as what it is', () => {
    const household = readAfter(['odd', '2025-07-01', 65_100]);
    const [odd] = asked(household);
    expect(odd?.slips[odd.repairs.indexOf(104_768)]).toBe('unit');
  });

  test('expected is told as the instrument in the car shows it', () => {
    const household = readAfter();
    household.on('2025-07-01').must('reading.record', { car: 'camper', value: 10, replaced: { lastShown: { value: 105_000, unit: 'km' } } });
    household.on('2025-09-01').must('reading.record', { id: 'odd', car: 'camper', value: 17_000 });
    const [odd] = asked(household);
    expect(odd?.expected?.likely).toBeGreaterThan(1500);
    expect(odd?.expected?.likely).toBeLessThan(2200);
  });

  test('is judged by the instrument that is now known to have been in the car', () => {
    const household = readAfter(['odd', '2025-08-01', 1700]);
    household.must('reading.record', { car: 'camper', value: 0, date: day('2025-06-01'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    expect(asked(household)).toMatchObject([{ reading: 'odd', fitsNow: true }]);
    expect(household.must('reading.settle', { reading: 'odd', verdict: 'right' }).reading.instrument).not.toBeNull();
  });

  test('that fits by now only waits to be confirmed', () => {
    const household = readAfter(['odd', '2025-07-01', 130_000]);
    expect(asked(household)[0]?.fitsNow).toBe(false);
    household.on('2025-07-02').must('reading.record', { car: 'camper', value: 129_950, date: day('2025-06-30'), sure: true });
    expect(asked(household)).toMatchObject([{ reading: 'odd', code: 'too-high', fitsNow: true, against: null, expected: null, repairs: [], slips: [], text: 'It fits the other readings now. Say whether it is right.' }]);
    household.must('reading.settle', { reading: 'odd', verdict: 'right' });
    expect(asked(household)).toEqual([]);
  });
});
