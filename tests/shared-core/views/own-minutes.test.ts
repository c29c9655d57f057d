import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function household(minutes: number | null): MemoryHousehold {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-01-01') });
  made.must('reading.record', { car: 'pip', value: 60_000, date: day('2026-11-01') });
  made.must('item.add', { id: 'oil', car: 'pip', name: 'Oil', minutes, place: 'home', history: 'never-done', interval: { repeat: { months: 12, distance: null } } });
  return made;
}
const record = (made: MemoryHousehold, date: string, minutes: number | null, more: object = {}) =>
  made.must('record.add', { car: 'pip', date: day(date), place: 'home', lines: [{ item: 'oil', minutes }], ...more });
const learned = (made: MemoryHousehold) => made.must('car.show', { car: 'pip' }).items[0]?.learned ?? null;
const yardMinutes = (made: MemoryHousehold) => made.must('yard.show', {}).lanes[0]?.work['oil']?.minutes;

describe('own times of an item', () => {
  // Source: learned-minutes; by hand: the geometric mean of 60 and 30, twice 30.
  test('one\'s own records at home tell how long it takes, on the car, the yard and in a session', () => {
    const made = household(60);
    expect([learned(made), yardMinutes(made)]).toEqual([null, 60]);
    record(made, '2025-03-01', 30);
    expect(learned(made)).toMatchObject({ minutes: 42, own: 1 });
    expect(yardMinutes(made)).toBe(42);
    made.must('session.keep', { sessions: [{ day: day('2026-12-05'), place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] });
    expect(made.must('due.show', {}).sessions[0]).toMatchObject({ minutes: 42, withoutMinutes: 0 });
  });

  test('a garage\'s time, a line not done and one without minutes tell nothing', () => {
    const made = household(60);
    record(made, '2025-03-01', 200, { place: 'garage' });
    record(made, '2025-04-01', null);
    made.must('record.add', { car: 'pip', date: day('2025-05-01'), place: 'home', lines: [{ item: 'oil', minutes: 5, outcome: 'not-done' }] });
    expect([learned(made), yardMinutes(made)]).toEqual([null, 60]);
  });

  test('times alone serve where nobody has said how long it takes', () => {
    const made = household(null);
    record(made, '2025-03-01', 30);
    record(made, '2025-09-01', 30);
    expect(learned(made)).toMatchObject({ minutes: 30, own: 2 });
    expect(yardMinutes(made)).toBe(30);
  });

  test('the plan goes by them: a day of fifty minutes holds what takes less than was entered', () => {
    const [said, measured] = [household(60), household(60)];
    record(measured, '2025-03-01', 10);
    record(said, '2025-03-01', null);
    const faults = (made: MemoryHousehold) => {
      made.must('place.set', { id: 'home', name: 'Home', kind: 'home', openingMinor: 1500, minutesADay: 50, minuteMinor: 0, closedWeekdays: [], noticeDays: 0 });
      return made.must('plan.try', { tasks: [{ kind: 'item', id: 'oil' }], to: { day: day('2026-12-05'), place: 'home' } }).faults;
    };
    expect([faults(said).length > 0, faults(measured)]).toEqual([true, []]);
  });
});
