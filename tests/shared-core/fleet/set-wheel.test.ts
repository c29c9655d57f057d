import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car with wheels A and B in front since 2025-04-01. */
function withWheels(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2025-04-01'), dateCode: '2612' });
  household.must('wheel.add', { id: 'b', car: 'pip', name: 'B', place: 'front-right', on: day('2025-04-01') });
  return household;
}

const placesOf = (household: MemoryHousehold) => household.must('car.show', { car: 'pip' }).wheels.map(({ wheel, place, since }) => [wheel.id, place, since]);

describe('a wheel', () => {
  test('is added in its place, with the weeks and the age of its tyre', () => {
    const { wheels } = withWheels().must('car.show', { car: 'Pip' });
    expect(wheels).toEqual([
      {
        wheel: { id: 'a', car: 'pip', name: 'A', dateCode: '2612', size: null, note: '' }, place: 'front-left', since: '2025-04-01', moves: [{ date: '2025-04-01', place: 'front-left' }],
        // By hand: 24 to 30 June 2012 to 25 November 2026.
        tyre: { weeks: [{ year: 2012, week: 26, from: '2012-06-24', to: '2012-06-30' }], leastMonths: 172, mostMonths: 173 },
      },
      { wheel: { id: 'b', car: 'pip', name: 'B', dateCode: null, size: null, note: '' }, place: 'front-right', since: '2025-04-01', moves: [{ date: '2025-04-01', place: 'front-right' }], tyre: null },
    ]);
  });

  test('does not take the place of another: that one is named, and comes off first', () => {
    const household = withWheels();
    const before = household.entries.length;
    const add = () => household.call('wheel.add', { id: 'c', car: 'pip', name: 'C', place: 'front-left', on: day('2026-05-01') });
    expect(add()).toMatchObject({ ok: false, refusal: { code: 'wheel-in-place', values: { wheel: 'A', place: 'front left', date: '2026-05-01' }, path: ['place'] } });
    expect(household.entries).toHaveLength(before);
    household.must('wheel.move', { car: 'pip', on: day('2026-05-01'), moves: [{ wheel: 'a', place: 'off' }] });
    expect(add()).toMatchObject({ ok: true, value: { moves: [{ wheel: 'c', place: 'front-left' }] } });
    expect(placesOf(household)).toEqual([['a', 'off', '2026-05-01'], ['b', 'front-right', '2025-04-01'], ['c', 'front-left', '2026-05-01']]);
  });

  test('a tyre of unknown decade shows every week it may be of', () => {
    const household = withWheels();
    household.must('wheel.change', { id: 'b', dateCode: '031', note: 'from the barn' });
    expect(household.must('car.show', { car: 'pip' }).wheels[1]).toMatchObject({ wheel: { note: 'from the barn', name: 'B' }, tyre: { weeks: [{ year: 1981 }, { year: 1991 }], leastMonths: 429 } });
  });

  test('wheels change places all together, with a reading that is judged', () => {
    const household = withWheels();
    household.must('reading.record', { car: 'pip', value: 20_000, date: day('2025-04-01') });
    const { moves, reading } = household.must('wheel.move', { car: 'pip', on: day('2026-04-01'), moves: [{ wheel: 'a', place: 'front-right' }, { wheel: 'b', place: 'front-left' }], reading: { value: 31_000, unit: 'km' } });
    expect([moves.length, reading?.state]).toEqual([2, 'accepted']);
    expect(placesOf(household)).toEqual([['a', 'front-right', '2026-04-01'], ['b', 'front-left', '2026-04-01']]);
    expect(household.must('wheel.move', { car: 'pip', moves: [{ wheel: 'a', place: 'off' }], reading: { value: 3, unit: 'km' } }).reading).toMatchObject({ state: 'set-aside', code: 'decrease' });
  });

  test('one day, one place: moved again, it is where it was put last', () => {
    const household = withWheels();
    const first = household.must('wheel.move', { car: 'pip', on: day('2026-04-01'), moves: [{ wheel: 'a', place: 'spare' }] });
    const second = household.must('wheel.move', { car: 'pip', on: day('2026-04-01'), moves: [{ wheel: 'a', place: 'rear-left' }] });
    expect(second.moves[0]?.id).toBe(first.moves[0]?.id);
    expect(household.must('car.show', { car: 'pip' }).wheels[0]?.moves).toEqual([{ date: '2025-04-01', place: 'front-left' }, { date: '2026-04-01', place: 'rear-left' }]);
  });
});

describe('a wheel is refused', () => {
  test.each([
    { case: 'a name that is taken, in any case', operation: 'wheel.add', request: { name: 'a', place: 'rear-left' }, code: 'wheel-name-taken' },
    { case: 'an id that is taken', operation: 'wheel.add', request: { id: 'a', name: 'C', place: 'rear-left' }, code: 'id-taken' },
    { case: 'a date code that is none', operation: 'wheel.add', request: { name: 'C', place: 'rear-left', dateCode: '12' }, code: 'not-a-tyre-code' },
    { case: 'a week that is none', operation: 'wheel.add', request: { name: 'C', place: 'rear-left', dateCode: '5322' }, code: 'tyre-week-impossible' },
    { case: 'a week to come', operation: 'wheel.change', request: { id: 'a', dateCode: '0127', car: undefined }, code: 'tyre-week-ahead' },
    { case: 'a place that no wheel has', operation: 'wheel.add', request: { name: 'C', place: 'front' }, code: 'unknown-wheel-place' },
    { case: 'a day to come', operation: 'wheel.add', request: { name: 'C', place: 'rear-left', on: '2026-11-26' }, code: 'date-in-future' },
    { case: 'a day before the car', operation: 'wheel.add', request: { name: 'C', place: 'rear-left', on: '2020-02-29' }, code: 'before-registration' },
    { case: 'a place taken later on', operation: 'wheel.add', request: { name: 'C', place: 'front-left', on: '2025-03-01' }, code: 'wheel-place-taken' },
    { case: 'into a place where another is', operation: 'wheel.move', request: { moves: [{ wheel: 'a', place: 'front-right' }] }, code: 'wheel-place-taken' },
    { case: 'one that is not there', operation: 'wheel.move', request: { moves: [{ wheel: 'x', place: 'off' }] }, code: 'unknown-wheel' },
    { case: 'one of another car', operation: 'wheel.move', request: { car: 'wren', moves: [{ wheel: 'a', place: 'off' }] }, code: 'unknown-wheel' },
    { case: 'named twice', operation: 'wheel.move', request: { moves: [{ wheel: 'a', place: 'off' }, { wheel: 'a', place: 'spare' }] }, code: 'wheel-twice' },
    { case: 'to be changed and not there', operation: 'wheel.change', request: { id: 'x', name: 'X', car: undefined }, code: 'unknown-wheel' },
  ] as const)('$case: $code', ({ operation, request, code }) => {
    const household = withWheels();
    const before = household.entries.length;
    const { car, ...rest } = { car: 'pip', ...request };
    expect(household.call(operation, (car === undefined ? rest : { car, ...rest }) as RequestOf<typeof operation>)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });
});
