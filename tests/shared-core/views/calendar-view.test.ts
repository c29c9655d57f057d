import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car of 2022 with one item of each kind, on 25 November 2026. */
function household(): MemoryHousehold {
  const made = memoryHousehold({ unit: 'km' });
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-25') });
  made.must('reading.record', { car: 'pip', value: 30_000, date: day('2025-11-25') });
  made.must('reading.record', { car: 'pip', value: 42_000, date: day('2026-11-25') });
  made.must('item.add', { id: 'fluid', car: 'pip', name: 'Brake fluid', history: 'never-done', interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } } });
  made.must('item.add', { id: 'plugs', car: 'pip', name: 'Plugs', history: 'never-done', interval: { repeat: { months: 50, distance: null } } });
  made.must('item.add', { id: 'belt', car: 'pip', name: 'Belt', history: 'never-done', interval: { repeat: { months: null, distance: { value: 60_000, unit: 'km' } } } });
  made.must('item.add', { id: 'gear', car: 'pip', name: 'Gearbox oil', history: 'unknown', interval: { repeat: { months: 60, distance: null } } });
  made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2027-05-15'), keepsDate: true, noticeDays: 30 });
  made.must('observation.note', { id: 'leak', car: 'pip', text: 'Damp at the pump; watch it', recheckOn: day('2027-01-10') });
  return made;
}
const shown = (made: MemoryHousehold, request = {}) => made.must('calendar.show', request);
const events = (made: MemoryHousehold, request = {}) => shown(made, request).events;
const of = (made: MemoryHousehold, id: string) => events(made).find((one) => one.id === id);

describe('what a calendar holds', () => {
  test('everything that has a day, by day, and nothing that has none', () => {
    const list = events(household());
    expect(list.map(({ id }) => id)).toEqual([...list].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0)).map(({ id }) => id));
    expect(list.map(({ id }) => id).sort()).toEqual(['belt', 'fluid', 'leak', 'plugs', 'test']);
  });

  test('what is late stands today, by how much', () => {
    expect(of(household(), 'fluid')).toMatchObject({ from: '2026-11-25', to: '2026-11-25', title: 'Pip: Brake fluid, 12 months late', remindOn: null, busy: false });
  });

  test('an exact date is a day, with the day from which to arrange it', () => {
    expect(of(household(), 'plugs')).toMatchObject({ from: '2027-01-25', to: '2027-01-25', title: 'Pip: Plugs', remindOn: '2027-01-11' });
    expect(of(household(), 'plugs')?.text).toMatch(/\nArrange it from 11 Jan 2027 on\.$/);
  });

  // 12 000 km a year and 18 000 to go: May 2028, by hand, and no finer than a month.
  test('a wide forecast is a month, and its text says between which days', () => {
    const belt = of(household(), 'belt');
    expect([belt?.from.slice(8), belt?.from.slice(0, 7), belt?.to.slice(0, 7)]).toEqual(['01', '2028-05', '2028-05']);
    expect(belt?.text).toMatch(/Forecast: between \d+ \w+ 202[78] and \d+ \w+ 202[89]\./);
  });

  test('an obligation stands on its last valid day and says from when a renewal keeps it', () => {
    expect(of(household(), 'test')).toMatchObject({ from: '2027-05-15', to: '2027-05-15', title: 'Pip: roadworthiness test, last valid day', remindOn: '2027-04-15' });
    expect(of(household(), 'test')?.text).toContain('A renewal from 16 Apr 2027 on keeps the day.');
  });

  test('a second look stands on its day until it is closed', () => {
    expect(of(household(), 'leak')).toMatchObject({ kind: 'recheck', from: '2027-01-10', title: 'Pip: look again, Damp at the pump; watch it' });
  });

  test('a follow-up stands on its day, on the week of its distance or, late, today; ticked, it is gone', () => {
    const made = household();
    made.must('item.change', { id: 'plugs', minutes: 30 });
    made.must('follow-up.add', { id: 'level', car: 'pip', item: 'plugs', text: 'Look for oil', days: 3, note: 'left side' });
    made.must('follow-up.add', { id: 'wheels', car: 'pip', text: 'Wheel bolts', after: { value: 500, unit: 'km' } });
    made.must('follow-up.add', { id: 'screw', car: 'pip', text: 'Missed one screw', madeOn: day('2026-11-01'), dueOn: day('2026-11-20') });
    expect(of(made, 'level')).toMatchObject({ kind: 'follow-up', from: '2026-11-28', to: '2026-11-28', remindOn: '2026-11-28', busy: false, title: 'Pip: look again, Look for oil', text: 'After: Plugs\nOn 28 Nov 2026.\nleft side' });
    // By hand: about 33 km a day, so 15 days: 10 December, a Thursday, and no finer than its week.
    expect(of(made, 'wheels')).toMatchObject({ from: '2026-12-07', to: '2026-12-13', title: 'Pip: look again, Wheel bolts' });
    expect(of(made, 'wheels')?.remindOn).toMatch(/^2026-1(1-(2[6-9]|30)|2-0\d)$/);
    expect(of(made, 'screw')).toMatchObject({ from: '2026-11-25', to: '2026-11-25', remindOn: null, title: 'Pip: look again, Missed one screw, 5 days late' });
    expect(events(made, { omit: ['follow-up'] }).some(({ kind }) => kind === 'follow-up')).toBe(false);
    made.must('follow-up.done', { followUp: 'level' });
    expect(of(made, 'level')).toBeUndefined();
  });

  test('a session is there once it is kept, takes its day, and reminds of itself the day before', () => {
    const made = household();
    const { sessions } = made.must('session.keep', { sessions: [{ day: day('2026-12-05'), place: 'home', tasks: [{ kind: 'item', id: 'fluid' }] }] });
    const kept = sessions[0]?.id ?? '';
    expect(of(made, kept)).toMatchObject({ kind: 'session', from: '2026-12-05', to: '2026-12-05', title: 'Work at home: Pip', busy: true, remindOn: '2026-12-04' });
    expect(of(made, kept)?.text).toContain('- Pip: Brake fluid');
  });

  test('kinds are left out and the horizon is kept', () => {
    expect(events(household(), { omit: ['item', 'recheck'] }).map(({ id }) => id)).toEqual(['test']);
    expect(events(household(), { months: 3 }).map(({ id }) => id).sort()).toEqual(['fluid', 'leak', 'plugs']);
  });

  test('done, an item moves on under the same id', () => {
    const made = household();
    made.must('record.add', { car: 'pip', lines: [{ item: 'fluid' }] });
    expect(of(made, 'fluid')).toMatchObject({ from: '2028-11-25', title: 'Pip: Brake fluid' });
    expect(events(made).filter(({ id }) => id === 'fluid')).toHaveLength(1);
  });
});
