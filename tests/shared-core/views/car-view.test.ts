import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

describe('an item of a car', () => {
  // Source: DESIGN.md section 4: months floor(f m), at least 1; distance f D. By hand: floor(0.75 * 10) = 7, 0.75 * 4 = 3.
  test.each([
    { case: 'ordinary use', severeUse: 1, severe: null },
    { case: 'hard use', severeUse: 0.75, severe: { first: { months: 7, distance: { value: 7500, unit: 'km' } }, repeat: { months: 3, distance: null } } },
  ])('shows the interval as it is counted: $case', ({ severeUse, severe }) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip', severeUse });
    household.must('item.add', { car: 'pip', name: 'It', interval: { first: { months: 10, distance: { value: 10_000, unit: 'km' } }, repeat: { months: 4, distance: null } } });
    expect(household.must('car.show', { car: 'pip' }).items[0]?.severe).toEqual(severe);
  });

  test('counted from a date of its own, severe use changes nothing', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip', severeUse: 0.5 });
    household.must('item.add', { car: 'pip', name: 'It', interval: { repeat: { months: 12, distance: null } }, anchor: { kind: 'calendar', firstDate: day('2027-04-01') } });
    const view = household.must('car.show', { car: 'pip' });
    expect([view.items[0]?.severe, view.due.windows[0]?.likely]).toEqual([null, '2027-04-01']);
  });
});
