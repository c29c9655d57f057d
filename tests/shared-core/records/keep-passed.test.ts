import { describe, expect, test } from 'vitest';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { sessions, sessionSet } from '../../../shared-core/sessions/session.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { twoCars } from '../sessions/two-cars.ts';

const item = (id: string) => ({ kind: 'item' as const, id: `pip-${id}` });
const [FIFTH, EIGHTH, TWELFTH] = [day('2026-12-05'), day('2026-12-08'), day('2026-12-12')];
const all = (household: MemoryHousehold) => household.facts().all(sessions).map(({ day: on, state, tasks }) => `${on} ${state}: ${tasks.map((task) => task.id.slice(4)).join(' ')}`).sort();
const keep = (household: MemoryHousehold, id: string, on: typeof FIFTH, ...tasks: readonly string[]) => household.must('session.keep', { sessions: [{ id, day: on, place: 'home', tasks: tasks.map(item) }] });

/** Three tasks were kept for 5 December; it is the 7th, and nobody has said how they went. */
function overdue(): MemoryHousehold {
  const household = twoCars();
  keep(household, 'old', FIFTH, 'fluid', 'pads', 'oil');
  return household.on('2026-12-07');
}

/** Work begun on the oil alone. */
function withOilBegun(): MemoryHousehold {
  const household = overdue();
  household.must('work.begin', { session: 'old' });
  household.must('work.tick', { session: 'old', of: [{ task: 'item/pip-oil', step: 'whole' }] });
  return household;
}

describe('a task of a session whose day has passed, kept for another day', () => {
  test('leaves the one that has passed, which says so; that one is moved on with the rest', () => {
    const household = overdue();
    expect(keep(household, 'new', TWELFTH, 'oil').notes).toEqual(['Taken out of the session of 5 Dec 2026, whose day has passed: Pip: oil.']);
    expect(all(household)).toEqual(['2026-12-05 kept: fluid pads', '2026-12-12 kept: oil']);
    household.must('session.move', { session: 'old', day: EIGHTH });
    expect(all(household)).toEqual(['2026-12-08 moved: fluid pads', '2026-12-12 kept: oil']);
  });

  test('that was the last one of it leaves none behind', () => {
    const household = overdue();
    keep(household, 'new', TWELFTH, 'oil', 'pads', 'fluid');
    expect(all(household)).toEqual(['2026-12-12 kept: oil pads fluid']);
  });

  test('stays where it was begun; the others of that session move on, and it is named where it cannot', () => {
    const household = withOilBegun();
    keep(household, 'new', TWELFTH, 'oil');
    expect(all(household)).toEqual(['2026-12-05 kept: fluid pads oil', '2026-12-12 kept: oil']);
    expect(household.call('session.move', { session: 'old', day: EIGHTH })).toMatchObject({ refusal: { code: 'task-in-session', values: { task: 'Pip: oil', day: TWELFTH } } });
    household.must('session.move', { session: 'old', day: EIGHTH, tasks: [item('fluid')] });
    expect(all(household)).toEqual(['2026-12-05 kept: pads oil', '2026-12-08 moved: fluid', '2026-12-12 kept: oil']);
  });

  test('stays where it was done', () => {
    const household = overdue();
    household.must('record.add', { car: 'pip', lines: [{ item: 'pip-oil' }] });
    keep(household, 'new', TWELFTH, 'oil');
    expect(all(household)).toEqual(['2026-12-05 kept: fluid pads oil', '2026-12-12 kept: oil']);
  });

  test('stays where a garage was asked for it and it is the last one', () => {
    const household = twoCars();
    household.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage' });
    household.must('session.keep', { sessions: [{ id: 'old', day: day('2026-12-04'), place: 'hill', tasks: [item('oil')] }] });
    household.must('booking.ask', { session: 'old', wanted: [{ car: 'pip', text: 'Oil', task: item('oil') }] });
    household.on('2026-12-07');
    keep(household, 'new', TWELFTH, 'oil');
    expect(all(household)).toEqual(['2026-12-04 kept: oil', '2026-12-12 kept: oil']);
  });
});

describe('a task that stands in two sessions already', () => {
  test('binds no change that does not touch it, and is given no third', () => {
    const household = twoCars();
    keep(household, 'one', FIFTH, 'oil', 'pads');
    const one = household.facts().get(sessions, 'one');
    if (one === null) throw new Error('not kept');
    // As an older program left it.
    (household.entries as object[]).push({ ...newEntry(sessionSet, { ...one, id: 'two', day: TWELFTH, tasks: [item('oil')] }), seq: household.entries.length, at: '2026-11-25T12:00:00.000Z' });
    keep(household, 'three', day('2026-12-09'), 'fluid');
    household.must('session.move', { session: 'one', day: EIGHTH, tasks: [item('pads')] });
    expect(household.call('session.keep', { sessions: [{ day: day('2026-12-10'), place: 'home', tasks: [item('oil')] }] })).toMatchObject({ refusal: { code: 'task-in-session', values: { task: 'Pip: oil', day: FIFTH } } });
    expect(household.call('session.move', { session: 'two', day: EIGHTH })).toMatchObject({ refusal: { code: 'task-in-session' } });
    household.must('session.end', { session: 'two', as: 'cancelled' });
    household.must('session.move', { session: 'one', day: EIGHTH });
    expect(all(household)).toEqual(['2026-12-08 moved: pads oil', '2026-12-09 kept: fluid', '2026-12-12 cancelled: oil']);
  });

  test('since the clock was set back, binds no other', () => {
    const household = withOilBegun();
    keep(household, 'new', TWELFTH, 'oil');
    household.on('2026-12-05').must('item.add', { id: 'pip-belt', car: 'pip', name: 'belt', interval: { repeat: { months: 12, distance: null } } });
    keep(household, 'three', day('2026-12-09'), 'belt');
    expect(all(household)).toContain('2026-12-09 kept: belt');
  });
});

describe('a session moved to where it stands', () => {
  test('stays as it is, whole and in part, and nothing is written', () => {
    const household = overdue();
    keep(household, 'new', TWELFTH, 'oil', 'pads');
    household.must('session.move', { session: 'new', day: day('2026-12-13') });
    const [before, stands] = [household.entries.length, household.facts().get(sessions, 'new')];
    for (const tasks of [undefined, [item('oil')]]) expect(household.must('session.move', { session: 'new', day: day('2026-12-13'), place: 'home', tasks })).toEqual({ session: stands, notes: [] });
    expect(household.entries).toHaveLength(before);
    expect(household.call('session.move', { session: 'old', day: FIFTH })).toMatchObject({ refusal: { code: 'day-has-passed' } });
  });

  test('that was proposed is kept there, and came from nowhere', () => {
    const household = twoCars();
    household.must('session.propose', { sessions: [{ id: 'p', day: FIFTH, place: 'home', tasks: [item('oil')] }] });
    expect(household.must('session.move', { session: 'p', day: FIFTH }).session).toMatchObject({ id: 'p', state: 'kept', movedFrom: null });
  });
});
