import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

describe('what a plan is made of', () => {
  test('is our defaults at first, and says so', () => {
    const view = memoryHousehold().must('planning.show', {});
    expect(view).toMatchObject({ assumed: true, settings: { horizonDays: 90, workWeekdays: [6, 7] }, cars: [], today: '2026-11-25', currency: 'GBP' });
    expect(view.places.map(({ id, assumed }) => ({ id, assumed }))).toEqual([{ id: 'home', assumed: true }, { id: 'garage', assumed: true }]);
  });

  test('shows places with the days to come, the next first, and none that have passed', () => {
    const made = memoryHousehold();
    made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage' });
    const set = (from: string, to: string, open = false) => made.must('place-days.set', { place: 'hill', from: day(from), to: day(to), open, reason: 'holiday' });
    set('2027-01-01', '2027-01-03');
    set('2026-11-01', '2026-11-24');
    set('2026-11-20', '2026-11-25', true);
    const hill = made.must('planning.show', {}).places.find((one) => one.id === 'hill');
    expect(hill).toMatchObject({ assumed: false, days: [{ from: '2026-11-20', open: true }, { from: '2027-01-01', open: false }] });
  });

  test('shows of each car its days, what is opened up and for what, its pairs and what can be paired', () => {
    const made = memoryHousehold();
    made.must('car.add', { id: 'pip', name: 'Pip' });
    const add = (id: string, access: string[]) => made.must('item.add', { id, car: 'pip', name: id, interval: { repeat: { months: 12, distance: null } }, access });
    add('pads', ['wheels off']);
    add('fluid', ['Wheels off', 'bonnet']);
    made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-12-17') });
    made.must('obligation.add', { id: 'tax', car: 'pip', kind: 'road-tax', lastValidDay: day('2026-12-17') });
    made.must('access.set', { id: 'wheels', car: 'pip', name: 'wheels off', minutes: 20 });
    made.must('car-days.set', { car: 'pip', from: day('2026-11-30'), why: 'needed', note: 'a trip' });
    made.must('car-days.set', { car: 'pip', from: day('2026-11-20'), why: 'away' });
    made.must('worth-while.set', { when: { kind: 'obligation', id: 'test' }, also: { kind: 'item', id: 'pads' } });
    const [pip] = made.must('planning.show', {}).cars;
    expect(pip).toMatchObject({
      name: 'Pip',
      days: [{ from: '2026-11-30', why: 'needed', note: 'a trip' }],
      access: [{ id: 'wheels', minutes: 20, items: ['fluid', 'pads'] }],
      accessUnstated: ['bonnet'],
      pairs: [{ whenName: 'roadworthiness test', alsoName: 'pads', savesMinor: null }],
    });
    expect(pip?.tasks.map((one) => one.name)).toEqual(['fluid', 'pads', 'roadworthiness test']);
  });
});
