import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { sessions } from '../../../shared-core/sessions/session.ts';
import { places } from '../../../shared-core/sessions/place.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { twoCars } from './two-cars.ts';

const item = (id: string) => ({ kind: 'item' as const, id });
const test1 = { kind: 'obligation' as const, id: 'pip-test' };
const SATURDAY = day('2026-11-28');
const SUNDAY = day('2026-11-29');
const all = (household: MemoryHousehold) => household.facts().all(sessions).map(({ day: on, place, state, tasks }) => `${on} ${place} ${state}: ${tasks.map((task) => task.id).join(' ')}`).sort();
const keep = (household: MemoryHousehold, ...list: RequestOf<'session.keep'>['sessions']) => household.must('session.keep', { sessions: list }).sessions;

describe('sessions', () => {
  test('keeping one at an assumed place states the place', () => {
    const household = twoCars();
    keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil')] });
    expect(household.facts().all(places)).toMatchObject([{ id: 'home', openingMinor: 1500 }]);
    expect(all(household)).toEqual(['2026-11-28 home kept: pip-oil']);
  });

  test('what is kept on a day at a place joins the session there', () => {
    const household = twoCars();
    const [first] = keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil')], note: 'with a friend' });
    const [second] = keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-pads')] });
    expect(second).toEqual({ ...first, tasks: [item('pip-oil'), item('pip-pads')] });
    expect(all(household)).toEqual(['2026-11-28 home kept: pip-oil pip-pads']);
  });

  test('proposals are laid anew each time, and never hold what is kept', () => {
    const household = twoCars();
    const propose = (...list: RequestOf<'session.propose'>['sessions']) => household.must('session.propose', { sessions: list });
    keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil')] });
    propose({ day: SATURDAY, place: 'home', tasks: [item('pip-oil'), item('pip-pads')] }, { day: SUNDAY, place: 'home', tasks: [item('alder-oil')] });
    expect(all(household)).toEqual(['2026-11-28 home kept: pip-oil', '2026-11-28 home proposed: pip-pads', '2026-11-29 home proposed: alder-oil']);
    propose({ day: SUNDAY, place: 'home', tasks: [item('pip-pads')] });
    expect(all(household)).toEqual(['2026-11-28 home kept: pip-oil', '2026-11-29 home proposed: pip-pads']);
    keep(household, { day: SUNDAY, place: 'home', tasks: [item('pip-pads'), item('pip-fluid')] });
    expect(all(household)).toEqual(['2026-11-28 home kept: pip-oil', '2026-11-29 home kept: pip-pads pip-fluid']);
  });

  test('a session moved whole keeps its id and says where it stood; a part of it becomes one of its own', () => {
    const household = twoCars();
    const [kept] = keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil'), item('pip-pads')] });
    const id = kept?.id ?? '';
    expect(household.must('session.move', { session: id, day: SUNDAY }).session).toMatchObject({ id, day: SUNDAY, place: 'home', state: 'moved', movedFrom: { day: SATURDAY, place: 'home' } });
    const part = household.must('session.move', { session: id, day: SATURDAY, tasks: [item('pip-pads')] }).session;
    expect(part.id).not.toBe(id);
    expect(all(household)).toEqual(['2026-11-28 home moved: pip-pads', '2026-11-29 home moved: pip-oil']);
    household.must('session.move', { session: part.id, day: SUNDAY });
    expect(all(household)).toEqual(['2026-11-29 home moved: pip-oil pip-pads']);
  });

  test('a task is taken out without another day, and is free again; the last one is not', () => {
    const household = twoCars();
    const [kept] = keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil'), item('pip-pads')] });
    const release = (...ids: readonly string[]) => household.call('session.release', { session: kept?.id ?? '', tasks: ids.map(item) });
    expect(release('pip-fluid')).toMatchObject({ refusal: { code: 'task-not-in-session' } });
    expect(release('pip-oil', 'pip-pads')).toMatchObject({ refusal: { code: 'session-emptied', values: { day: SATURDAY } } });
    expect(release('pip-oil')).toMatchObject({ value: { session: { id: kept?.id, state: 'kept', tasks: [item('pip-pads')] } } });
    expect(release('pip-pads')).toMatchObject({ refusal: { code: 'session-emptied' } });
    expect(all(household)).toEqual(['2026-11-28 home kept: pip-pads']);
    keep(household, { day: SUNDAY, place: 'home', tasks: [item('pip-oil')] });
    expect(household.call('session.release', { session: 'none', tasks: [item('pip-oil')] })).toMatchObject({ refusal: { code: 'unknown-session' } });
  });

  test('one whose day has passed is moved on, or ended; an ended one is history', () => {
    const household = twoCars();
    const [first, second] = keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil')] }, { day: SUNDAY, place: 'home', tasks: [item('pip-pads')] });
    expect(household.call('session.end', { session: first?.id ?? '', as: 'done' })).toMatchObject({ refusal: { code: 'session-ahead' } });
    household.on('2026-12-01');
    household.must('session.move', { session: first?.id ?? '', day: day('2026-12-05') });
    household.must('session.end', { session: second?.id ?? '', as: 'done', note: 'all well' });
    expect(all(household)).toEqual(['2026-11-29 home done: pip-pads', '2026-12-05 home moved: pip-oil']);
    expect(household.call('session.move', { session: second?.id ?? '', day: day('2026-12-05') })).toMatchObject({ refusal: { code: 'session-ended' } });
    household.must('session.end', { session: first?.id ?? '', as: 'cancelled' });
    keep(household, { day: day('2026-12-06'), place: 'home', tasks: [item('pip-oil')] });
  });

  test.each([
    { case: 'a day that has passed', session: { day: '2026-11-24' }, code: 'day-has-passed' },
    { case: 'a holiday', session: { day: '2026-12-26' }, code: 'place-closed-then' },
    { case: 'a garage on its closed weekday', session: { place: 'hill', day: '2026-12-13' }, code: 'place-closed-weekday' },
    { case: 'a car that is needed', session: { day: '2026-12-12' }, code: 'car-needed-then' },
    { case: 'a car that is away', session: { day: '2026-12-13' }, code: 'car-away-then' },
    { case: 'a place that is none', session: { place: 'moon' }, code: 'unknown-place' },
    { case: 'a task that is none', session: { tasks: [item('nothing')] }, code: 'unknown-item' },
    { case: 'a task twice', session: { tasks: [item('pip-pads'), item('pip-pads')] }, code: 'task-twice' },
    { case: 'a task that is kept elsewhere', session: { tasks: [item('pip-oil')] }, code: 'task-in-session' },
    { case: 'a test after its last valid day', session: { place: 'hill', day: '2026-12-18', tasks: [test1] }, code: 'after-legal-date' },
    { case: 'every everyday car at once', session: { day: '2026-12-05', tasks: [item('alder-oil')] }, code: 'all-cars-apart' },
  ])('$case is refused: $code', ({ session, code }) => {
    const household = twoCars();
    household.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage' });
    household.must('place-days.set', { place: 'home', from: day('2026-12-24'), to: day('2026-12-27'), reason: 'holiday' });
    household.must('car-days.set', { car: 'pip', from: day('2026-12-12'), note: 'a journey' });
    household.must('car-days.set', { car: 'pip', from: day('2026-12-13'), why: 'away' });
    keep(household, { day: day('2026-12-05'), place: 'home', tasks: [item('pip-oil')] });
    const before = household.entries.length;
    const asked = { day: '2026-11-29', place: 'home', tasks: [item('pip-pads')], ...session } as RequestOf<'session.keep'>['sessions'][number];
    expect(household.call('session.keep', { sessions: [asked] })).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('more tasks than a session holds are refused with a sentence, kept on a day and moved there', () => {
    const household = twoCars();
    const many = Array.from({ length: 102 }, (_, at) => `more-${at}`);
    for (const id of many) household.must('item.add', { id, car: 'pip', name: `Look ${id}`, interval: { repeat: { months: 12, distance: null } } });
    keep(household, { day: SATURDAY, place: 'home', tasks: many.slice(0, 60).map(item) });
    const refused = { ok: false, refusal: { code: 'session-too-full', values: { day: SATURDAY, n: 102, most: 100 } } };
    expect(household.call('session.keep', { sessions: [{ day: SATURDAY, place: 'home', tasks: many.slice(60).map(item) }] })).toMatchObject(refused);
    const [other] = keep(household, { day: SUNDAY, place: 'home', tasks: many.slice(60).map(item) });
    expect(household.call('session.move', { session: other?.id ?? '', day: SATURDAY })).toMatchObject(refused);
    expect(household.must('session.move', { session: other?.id ?? '', day: SATURDAY, tasks: many.slice(60, 100).map(item) }).session.tasks).toHaveLength(100);
  });

  test('a weekday at home and a shorter notice are the keeper\'s to judge', () => {
    const household = twoCars();
    keep(household, { day: day('2026-11-26'), place: 'home', tasks: [item('pip-oil')] }, { day: day('2026-11-27'), place: 'garage', tasks: [test1] });
    expect(all(household)).toEqual(['2026-11-26 home kept: pip-oil', '2026-11-27 garage kept: pip-test']);
  });

  test('an everyday car that is away leaves the other to be driven; one that is needed is there', () => {
    const household = twoCars();
    household.must('car-days.set', { car: 'alder', from: SATURDAY, why: 'away' });
    expect(household.call('session.keep', { sessions: [{ day: SATURDAY, place: 'home', tasks: [item('pip-oil')] }] })).toMatchObject({ refusal: { code: 'all-cars-apart', values: { day: SATURDAY } } });
    household.must('car-days.set', { car: 'alder', from: SUNDAY, why: 'needed' });
    keep(household, { day: SUNDAY, place: 'home', tasks: [item('pip-oil')] });
  });

  test('what has come to leave no car since it was kept does not stop another day from being kept', () => {
    const household = twoCars();
    const [kept] = keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil')] });
    household.must('car-days.set', { car: 'alder', from: SATURDAY, why: 'away' });
    keep(household, { day: SUNDAY, place: 'home', tasks: [item('pip-pads')] });
    household.must('session.move', { session: kept?.id ?? '', day: SUNDAY });
    expect(all(household)).toEqual(['2026-11-29 home kept: pip-pads pip-oil']);
  });

  test('a hobby car may be apart with an everyday one; a single everyday car binds nobody', () => {
    const household = twoCars();
    household.must('car.change', { id: 'alder', use: 'hobby' });
    keep(household, { day: SATURDAY, place: 'home', tasks: [item('pip-oil'), item('alder-oil')] });
  });
});
