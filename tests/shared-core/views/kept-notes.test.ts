import { describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { assumedPlaces } from '../../../shared-core/sessions/place.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { proposePlan } from '../../../shared-core/views/plan-view.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const highs = directSolver();
const item = (id: string) => ({ kind: 'item' as const, id });
const PASSED = 'Was the session of 28 Nov 2026 at Home done or not?';

/** Fluid a year late and a filter due on 20 December, 60 minutes each at home, where a day has 100; a test due on 17 December. */
function household(): MemoryHousehold {
  const made = memoryHousehold();
  made.must('place.set', { name: 'Home', kind: 'home', openingMinor: 1000, minutesADay: 100 });
  made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', noticeDays: 0, closedWeekdays: [] });
  made.must('plan-settings.set', { horizonDays: 45 });
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-12-20') });
  const add = (request: RequestOf<'item.add'>) => made.must('item.add', { history: 'never-done', minutes: 60, place: 'home', ...request });
  add({ id: 'fluid', car: 'pip', name: 'brake fluid', harm: 'safety', interval: { repeat: { months: 59, distance: null } } });
  add({ id: 'filter', car: 'pip', name: 'cabin filter', harm: 'comfort', interval: { repeat: { months: 72, distance: null } } });
  made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-12-17'), price: 5000 });
  return made;
}

const keep = (made: MemoryHousehold, on: string, ...ids: readonly string[]) => made.must('session.keep', { sessions: [{ day: day(on), place: 'home', tasks: ids.map(item) }] });
const shown = (made: MemoryHousehold) => made.must('sessions.show', {});
const notes = (made: MemoryHousehold) => shown(made).notes.map((one) => one.text);

async function planned(made: MemoryHousehold, today: string) {
  const reply = await proposePlan(made.facts(), { horizonDays: null, job: null }, { today: day(today) }, (instance) => solvePlan(instance, highs));
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  return reply.value;
}

describe('a kept session whose day has passed', () => {
  test('is asked about by the sessions and by a plan, and none of its tasks is said to stand in no session', async () => {
    const made = household();
    keep(made, '2026-11-28', 'fluid');
    made.on('2026-11-30');
    const asked = `${PASSED} Its day has passed, and this is not entered as done: Pip: brake fluid. Enter what was done, then say that it was done, move it, or drop it.`;
    expect(notes(made)).toContain(asked);
    expect((await planned(made, '2026-11-30')).notes.map((one) => one.text)).toContain(asked);
    const left = shown(made).left.find((one) => one.task.id === 'fluid');
    expect(left?.why.text).toMatch(/^It stands in the session of 28 Nov 2026, whose day has passed: say whether it was done, or give it another day\. Leaving it counts/);
  });

  test('is asked about no more once all of it is done or kept for another day, or it has ended', () => {
    const asks = (made: MemoryHousehold) => notes(made).some((one) => one.startsWith(PASSED));
    const [done, moved, ended] = [household(), household(), household()];
    for (const made of [done, moved, ended]) {
      keep(made, '2026-11-28', 'fluid');
      made.on('2026-11-30');
      expect(asks(made)).toBe(true);
    }
    done.must('record.add', { car: 'pip', date: day('2026-11-28'), lines: [{ item: 'fluid' }] });
    keep(moved, '2026-12-05', 'fluid');
    ended.must('session.end', { session: shown(ended).sessions[0]?.id ?? '', as: 'cancelled' });
    expect([done, moved, ended].map(asks)).toEqual([false, false, false]);
  });
});

describe('a kept session', () => {
  test('past a legal day is told, with what would help', () => {
    const made = household();
    made.must('session.keep', { sessions: [{ day: day('2026-12-16'), place: 'hill', tasks: [{ kind: 'obligation', id: 'test' }] }] });
    expect(shown(made).notes.map((one) => one.code)).not.toContain('plan-kept-past-legal');
    made.must('obligation.change', { id: 'test', lastValidDay: day('2026-12-15') });
    expect(notes(made)).toContain('Pip: roadworthiness test must be done by 15 Dec 2026, and you keep it for 16 Dec 2026. Move it to a day up to then.');
  });

  test('of a car that has come to be needed is not said to be at a place that is shut, on a weekday either', () => {
    const made = household();
    keep(made, '2026-12-02', 'fluid');
    made.must('car-days.set', { car: 'pip', from: day('2026-12-02'), note: 'a trip' });
    expect(notes(made)).toContain('You keep a session at Home on 2 Dec 2026, though a car of it cannot be had then: Pip is needed on 2 Dec 2026. Choose another day, or free the car.');
    expect(shown(made).notes.map((one) => one.code)).not.toContain('plan-kept-on-shut-day');
  });

  test('longer than the day is kept, and said at once and from then on', () => {
    const made = household();
    const long = 'The session of 28 Nov 2026 at Home takes 120 minutes, and a day there has 100. Move something out of it, if that is not what you want.';
    expect(keep(made, '2026-11-28', 'fluid')).toMatchObject({ notes: [] });
    expect(keep(made, '2026-11-28', 'filter')).toMatchObject({ notes: [long] });
    expect(notes(made)).toContain(long);
    const [session] = shown(made).sessions;
    expect(made.must('session.move', { session: session?.id ?? '', day: day('2026-11-29') }).notes).toEqual([long.replace('28 Nov', '29 Nov')]);
    made.must('plan-settings.set', { preferredMinutesADay: 50 });
    made.must('session.move', { session: shown(made).sessions[0]?.id ?? '', day: day('2026-11-28'), tasks: [item('filter')] });
    expect(notes(made).filter((one) => one.includes('takes 60 minutes, and a day there has 50'))).toHaveLength(2);
  });
});

describe('a place that is only assumed', () => {
  const assumed = (made: MemoryHousehold) => made.must('planning.show', {}).places.filter((one) => one.assumed).map((one) => one.id);

  test('stays assumed when a session is kept or proposed there, and is yours once you enter it', () => {
    const made = memoryHousehold();
    made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-12-20') });
    made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-12-17'), price: 5000 });
    for (const kept of ['session.propose', 'session.keep'] as const) made.must(kept, { sessions: [{ day: day('2026-12-16'), place: 'garage', tasks: [{ kind: 'obligation', id: 'test' }] }] });
    expect(assumed(made)).toEqual(['home', 'garage']);
    expect(notes(made)).toContain('No garage is entered, so one of ours is assumed. Enter yours.');
    made.must('place.set', { id: 'garage', name: 'A garage', kind: 'garage' });
    expect(assumed(made)).toEqual(['home']);
  });

  test('is assumed again once it is removed', () => {
    const made = household();
    const bare = memoryHousehold();
    bare.must('place-days.set', { place: 'garage', from: day('2026-12-24'), reason: 'holiday' });
    expect(assumed(bare)).toEqual(['home', 'garage']);
    bare.must('place.remove', { id: 'garage' });
    expect(bare.facts().all(assumedPlaces)).toEqual([]);
    expect([assumed(bare), assumed(made)]).toEqual([['home', 'garage'], []]);
  });
});

describe('what is kept otherwise than is entered', () => {
  test('work that only a garage does, kept at home, is said to be', () => {
    const made = household();
    made.must('item.add', { id: 'belt', car: 'pip', name: 'timing belt', harm: 'damage', minutes: 60, place: 'garage', garagePrice: 30_000, history: 'never-done', interval: { repeat: { months: 60, distance: null } } });
    keep(made, '2026-12-05', 'belt');
    expect(notes(made)).toContain('You keep Pip: timing belt at Home, and by what is entered it is not done there. Give it another place, or change where it is done.');
  });

  test('what is kept long past its day says what being late counts', () => {
    const made = household();
    keep(made, '2027-03-06', 'filter');
    const task = shown(made).sessions.flatMap((one) => one.tasks).find((one) => one.task.id === 'filter');
    expect(task?.planned?.why.text).toMatch(/^You have kept this session for 6 Mar 2027, where being late counts \d+\.\d\d GBP/);
  });

  test('nothing is said of a saving where none is worked out', () => {
    const made = household();
    keep(made, '2026-12-05', 'fluid');
    expect(shown(made).summary.map((one) => one.code)).toEqual(['stand-unproven']);
    expect(notes(made).join(' ')).not.toContain('saving');
  });

  test('a test that stands in no session is told with its date; without a day, with what would help', () => {
    const made = household();
    keep(made, '2026-12-05', 'fluid');
    const left = () => shown(made).left.find((one) => one.task.id === 'test')?.why.text ?? '';
    expect(left()).toBe('It stands in no session and must be done by 17 Dec 2026. Give it a day up to then, or propose sessions anew.');
    made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', noticeDays: 30, closedWeekdays: [] });
    expect(left()).toMatch(/17 Dec 2026/);
    expect(left()).not.toContain('Choose that or a later one');
  });
});
