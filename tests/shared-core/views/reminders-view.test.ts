import { describe, expect, test } from 'vitest';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car with an oil change every twelve months, done on 1 March 2026, and a test by 10 January 2027. */
function household(): MemoryHousehold {
  const one = memoryHousehold();
  one.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', year: 2020, firstRegistered: '2020-03-01' as never });
  one.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } } });
  one.must('record.add', { car: 'pip', date: '2026-03-01' as never, lines: [{ item: 'oil' }] });
  one.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: '2027-01-10' as never, months: 12, keepsDate: false });
  return one;
}

const told = (one: MemoryHousehold, on: string) => one.on(on).must('reminders.show', {}).reminders;

describe('what one is reminded of', () => {
  // By hand: the limit is 1 March 2027, the notice 14 days, so 15 February; the test's is 10 January less 14 days, so 27 December.
  test.each([
    ['2026-12-26', []],
    ['2026-12-27', ['obligation test 2027-01-10']],
    ['2027-01-11', ['obligation test 2027-01-10']],
    ['2027-02-14', ['obligation test 2027-01-10']],
    ['2027-02-15', ['obligation test 2027-01-10', 'item oil 2026-03-01 12/- 12/-']],
  ])('on %s: %j', (on, occurrences) => {
    expect(told(household(), on).map((one) => one.occurrence)).toEqual(occurrences);
  });

  test('what is late comes first, and says by how much', () => {
    const one = household();
    one.must('obligation.renew', { obligation: 'test', on: '2026-11-25' as never, lastValidDay: '2027-03-15' as never });
    const [first, second] = told(one, '2027-03-02');
    expect([first?.late, first?.text, second?.text]).toEqual([true, 'Pip: Engine oil, 1 day late', 'Pip: roadworthiness test, by 15 Mar 2027']);
  });

  test('done, it is another occurrence; a reading that moves a forecast is none', () => {
    const one = household();
    one.on('2027-02-20').must('record.add', { car: 'pip', date: '2027-02-20' as never, lines: [{ item: 'oil' }] });
    expect(told(one, '2028-02-10').map((each) => each.occurrence)).toContain('item oil 2027-02-20 12/- 12/-');
  });

  test('a kept session the day before and on its day, never one that is only proposed', () => {
    const one = household();
    one.on('2026-11-25').must('session.keep', { sessions: [{ day: '2026-12-05' as never, place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] });
    const sessions = (on: string) => told(one, on).filter((each) => each.kind === 'session').map((each) => each.text);
    expect([sessions('2026-12-03'), sessions('2026-12-04')]).toEqual([[], ['Pip: work on 5 Dec 2026, Home']]);
  });

  test('a second look and a follow-up on their day; ticked, no more', () => {
    const one = household();
    one.on('2026-11-25').must('observation.note', { id: 'drip', car: 'pip', text: 'a drip at the sump', recheckOn: '2026-12-10' as never });
    one.must('follow-up.add', { id: 'level', car: 'pip', text: 'oil level once more', days: 3 });
    expect(told(one, '2026-11-28').map((each) => each.occurrence)).toEqual(['follow-up level']);
    one.must('follow-up.done', { followUp: 'level' });
    expect(told(one, '2026-12-10').map((each) => each.text)).toEqual(['Pip: look again, a drip at the sump']);
  });

  test('an item whose history nobody knows is asked about, not reminded of', () => {
    const one = household();
    one.must('item.add', { id: 'belt', car: 'pip', name: 'Belt', interval: { repeat: { months: 60, distance: null } } });
    expect(told(one, '2027-02-15').map((each) => each.occurrence)).not.toContain('item belt never');
  });
});
