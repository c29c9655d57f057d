import { describe, expect, test } from 'vitest';
import { frontToRear, leftToRight, movedWheels, otherSet, placesNow } from '../../../../../renderer/car/wear/forms/move-draft.ts';
import { day } from '../../../../shared-core/calendar/day.ts';
import { memoryHousehold } from '../../../../shared-core/contract/memory-household.ts';

const CORNERS = ['front-left', 'front-right', 'rear-left', 'rear-right'] as const;

/** Summer wheels, then winter wheels in their places, a spare, a set that went long ago, and one wheel that was never on. */
function wheels() {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip' });
  const sets = [['old', '2020-04-01'], ['summer', '2023-04-01'], ['winter', '2026-11-01']] as const;
  for (const [at, [set, on]] of sets.entries()) {
    const before = sets[at - 1]?.[0];
    if (before !== undefined) household.must('wheel.move', { car: 'pip', on: day(on), moves: CORNERS.map((_place, corner) => ({ wheel: `${before}-${corner + 1}`, place: 'off' as const })) });
    CORNERS.forEach((place, corner) => household.must('wheel.add', { id: `${set}-${corner + 1}`, car: 'pip', name: `${set} ${corner + 1}`, place, on: day(on) }));
  }
  household.must('wheel.add', { id: 'spare', car: 'pip', name: 'spare', place: 'spare', on: day('2020-04-01') });
  household.must('wheel.add', { id: 'new', car: 'pip', name: 'new', place: 'off', on: day('2026-11-20') });
  return household.must('car.show', { car: 'pip' }).wheels;
}

describe('wheels moved by one press', () => {
  test('front to rear, each side by itself; the rest stays', () => {
    const places = frontToRear(placesNow(wheels()));
    expect([1, 2, 3, 4].map((at) => places[`winter-${at}`])).toEqual(['rear-left', 'rear-right', 'front-left', 'front-right']);
    expect([places['spare'], places['new'], places['old-1']]).toEqual(['spare', 'off', 'off']);
    expect(frontToRear(places)).toEqual(placesNow(wheels()));
  });

  test('left to right', () => {
    const places = leftToRight(placesNow(wheels()));
    expect([1, 2, 3, 4].map((at) => places[`winter-${at}`])).toEqual(['front-right', 'front-left', 'rear-right', 'rear-left']);
  });

  test('the other set: that which came off last, each to where it was', () => {
    const all = wheels();
    const places = otherSet(all);
    expect([1, 2, 3, 4].map((at) => places?.[`summer-${at}`])).toEqual(CORNERS);
    expect([places?.['winter-1'], places?.['old-1'], places?.['new'], places?.['spare']]).toEqual(['off', 'off', 'off', 'spare']);
    expect(movedWheels(all, places ?? {})).toHaveLength(8);
  });

  test('there is no other set where nothing was ever taken off', () => {
    expect(otherSet(wheels().filter((one) => one.place !== 'off' || one.wheel.id === 'new'))).toBeNull();
  });

  test('only wheels that are to be elsewhere are moved', () => {
    expect(movedWheels(wheels(), { 'winter-1': 'front-left', 'winter-2': 'spare' })).toEqual([{ wheel: 'winter-2', place: 'spare' }]);
  });
});
