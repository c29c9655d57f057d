import { describe, expect, test } from 'vitest';
import { firstClash, idleSpans, placeOn, wheelIn } from '../../../shared-core/fleet/wheel-places.ts';
import type { WheelMove, WheelPlace } from '../../../shared-core/fleet/wheel.ts';
import { day } from '../calendar/day.ts';

const move = (wheel: string, date: string, place: WheelPlace): WheelMove => ({ id: `${wheel}-${date}`, car: 'pip', wheel, date: day(date), place });

/** Summer and winter wheels change places twice; the spare never rolls. Not in order of date. */
const moves = [
  move('winter', '2025-11-03', 'front-left'), move('summer', '2025-11-03', 'off'),
  move('summer', '2025-04-01', 'front-left'),
  move('summer', '2026-03-20', 'front-left'), move('winter', '2026-03-20', 'off'),
  move('fifth', '2025-04-01', 'spare'),
];

describe('where a wheel is', () => {
  test.each([
    { wheel: 'summer', on: '2025-03-31', place: null },
    { wheel: 'summer', on: '2025-04-01', place: 'front-left' },
    { wheel: 'summer', on: '2025-11-02', place: 'front-left' },
    { wheel: 'summer', on: '2025-11-03', place: 'off' },
    { wheel: 'summer', on: '2030-01-01', place: 'front-left' },
    { wheel: 'unknown', on: '2026-01-01', place: null },
  ])('$wheel on $on: $place', ({ wheel, on, place }) => {
    expect(placeOn(moves, wheel, day(on))).toBe(place);
  });

  test.each([
    { place: 'front-left', on: '2025-10-01', wheel: 'summer' },
    { place: 'front-left', on: '2026-01-01', wheel: 'winter' },
    { place: 'spare', on: '2026-01-01', wheel: 'fifth' },
    { place: 'rear-left', on: '2026-01-01', wheel: null },
    { place: 'off', on: '2026-01-01', wheel: null },
  ] as const)('$place on $on holds $wheel', ({ place, on, wheel }) => {
    expect(wheelIn(moves, place, day(on))).toBe(wheel);
  });
});

test('a wheel rests while it is off or the spare', () => {
  expect(idleSpans(moves, 'summer')).toEqual([{ from: '2025-11-03', to: '2026-03-20' }]);
  expect(idleSpans(moves, 'winter')).toEqual([{ from: '2026-03-20', to: null }]);
  expect(idleSpans(moves, 'fifth')).toEqual([{ from: '2025-04-01', to: null }]);
  expect(idleSpans(moves, 'unknown')).toEqual([]);
});

describe('two wheels in one place', () => {
  test('are found on the first day of it', () => {
    expect(firstClash([...moves, move('third', '2025-12-01', 'front-left')])).toEqual({ date: '2025-12-01', place: 'front-left' });
    expect(firstClash([...moves, move('third', '2024-12-01', 'front-left')])).toEqual({ date: '2025-04-01', place: 'front-left' });
    expect(firstClash([...moves, move('sixth', '2025-05-01', 'spare')])).toEqual({ date: '2025-05-01', place: 'spare' });
  });

  test('are none where one leaves as the other comes, nor off the car', () => {
    expect(firstClash(moves)).toBeNull();
    expect(firstClash([move('a', '2025-01-01', 'off'), move('b', '2025-01-01', 'off')])).toBeNull();
  });
});
